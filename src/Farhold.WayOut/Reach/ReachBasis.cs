using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.WayOut.Reach;

/// <summary>What a reach profile rests on, and what to beware of.</summary>
internal static class ReachBasis
{
    public static ImmutableArray<Basis> Rests(Route route)
    {
        var moving = route.Moving;
        var rests = ImmutableArray.CreateBuilder<Basis>();
        rests.Add(
            new(
                "At each point one way is chosen for all trials: the one whose time is beaten in nine of ten",
                Evidence.Assumption,
                "whoever sets out does not know what will delay them"
            )
        );
        rests.Add(
            new(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Delays hit all ways together (weather, light, ground, party), with correlation {route.Correlation:0.##}"
                ),
                Evidence.Assumption,
                "one common factor"
            )
        );
        if (moving.Mode == TravelMode.Walk)
        {
            rests.Add(
                new(
                    $"Walking by {moving.Rule.Name}, step by step along the route. {moving.Rule.Caution}",
                    moving.Rule.Mark,
                    moving.Rule.Source
                )
            );
            rests.Add(
                new(
                    string.Create(CultureInfo.InvariantCulture, $"Walkers differ by a spread of {moving.Spread:0.##} (log)"),
                    Evidence.Assumption,
                    "no one rule says how much"
                )
            );
        }
        else
        {
            rests.AddRange(new LitterCarry(new Stretch(1, 1), moving.Surface, moving.Bearers, SnowCm: moving.SnowCm).Rests());
            rests.AddRange(BearerLimits.Rests);
            if (moving.Packaging)
                rests.Add(new("Getting the casualty onto the litter: 20 to 60 min, about 30", Evidence.Assumption, "no source found"));
        }

        if (moving.Dark == DarkRule.Stop)
            rests.Add(new("On foot the party halts in the dark", Evidence.Assumption, "the route"));
        else
            rests.Add(
                new(
                    moving.Mode == TravelMode.Carry
                        ? string.Create(CultureInfo.InvariantCulture, $"In the dark on foot: speed times {LitterCarry.InTheDark:0.##}")
                        : "In the dark on foot: speed times 0.8 on a path, 0.64 off it",
                    Evidence.Computed,
                    "foot-march planning speeds, mtntactical.com"
                )
            );
        if (route.Hands is null)
            rests.Add(
                new(
                    "The party at hand sets out at once, without waiting for more people",
                    Evidence.Assumption,
                    "the route gives no 'hands'"
                )
            );
        if (route.Call.IsEmpty)
            rests.Add(new("Help is on its way from the moment of the injury", Evidence.Assumption, "the route gives no 'call'"));
        if (route.Helicopter is { } helicopter)
            rests.Add(
                new(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"A helicopter comes to any point with probability {helicopter.Probability:0.##}, whatever the ground; the "
                            + $"party moves meanwhile"
                    ),
                    Evidence.Assumption,
                    "the route"
                )
            );
        return rests.ToImmutable();
    }

    public static ImmutableArray<string> Cautions(Route route, Darkness? darkness)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (darkness is null || route.Start is null)
            cautions.Add("The route does not say when: on foot all is timed as in the dark.");
        if (route.Moving is { Mode: TravelMode.Carry, Bearers: null })
            cautions.Add("The route does not say how many bearers: a full party of 18 or more is assumed, fewer are slower.");
        if (route.Call.IsEmpty && (route.Hands is not null || route.Helicopter is not null || !route.PickUps.IsEmpty))
            cautions.Add("No time is counted until the call for help gets through.");
        cautions.Add("Times count from the injury, a tourniquet tightened at once; the casualty is moved by the same party all the way.");
        cautions.AddRange(route.Track.Cautions);
        return cautions.ToImmutable();
    }
}
