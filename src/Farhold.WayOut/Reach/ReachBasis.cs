using System.Collections.Immutable;

namespace Farhold.WayOut.Reach;

/// <summary>What a reach profile rests on, and what to beware of.</summary>
internal static class ReachBasis
{
    public static ImmutableArray<Basis> Rests(Route route)
    {
        var moving = route.Moving;
        var rests = ImmutableArray.CreateBuilder<Basis>();
        rests.Add(new(ReachTexts.OneWay, Evidence.Assumption, ReachTexts.OneWaySource));
        rests.Add(new(ReachTexts.DelaysRest(Say.Number(route.Correlation)), Evidence.Assumption, PaceTexts.CommonFactor));
        if (moving.Mode == TravelMode.Walk)
        {
            rests.Add(new(ReachTexts.WalkingBy(moving.Rule.Name, moving.Rule.Caution), moving.Rule.Mark, moving.Rule.Source));
            rests.Add(new(PaceTexts.WalkersDiffer(Say.Number(moving.Spread)), Evidence.Assumption, PaceTexts.NoRule));
        }
        else
        {
            rests.AddRange(new LitterCarry(new Stretch(1, 1), moving.Surface, moving.Bearers, SnowCm: moving.SnowCm).Rests());
            rests.AddRange(BearerLimits.Rests);
            if (moving.Packaging)
                rests.Add(Priors.OntoLitter);
        }

        if (moving.Dark == DarkRule.Stop)
            rests.Add(new(ReachTexts.HaltsInTheDark, Evidence.Assumption, ReachTexts.TheRoute));
        else
            rests.Add(
                new(
                    moving.Mode == TravelMode.Carry ? PaceTexts.InTheDark(Say.Number(LitterCarry.InTheDark)) : ReachTexts.WalkInTheDark,
                    Evidence.Computed,
                    PaceTexts.SourceMarches
                )
            );
        if (route.Hands is null)
            rests.Add(new(ReachTexts.SetsOutAtOnce, Evidence.Assumption, ReachTexts.NoHands));
        if (route.Call.IsEmpty)
            rests.Add(new(ReachTexts.HelpAtOnce, Evidence.Assumption, ReachTexts.NoCall));
        if (route.Helicopter is { } helicopter)
            rests.Add(new(ReachTexts.Helicopter(Say.Number(helicopter.Probability)), Evidence.Assumption, ReachTexts.TheRoute));
        return rests.ToImmutable();
    }

    public static ImmutableArray<string> Cautions(Route route, Darkness? darkness)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        if (darkness is null || route.Start is null)
            cautions.Add(ReachTexts.NoStart);
        if (route.Moving is { Mode: TravelMode.Carry, Bearers: null })
            cautions.Add(ReachTexts.BearersUnknown);
        if (route.Call.IsEmpty && (route.Hands is not null || route.Helicopter is not null || !route.PickUps.IsEmpty))
            cautions.Add(ReachTexts.CallNotCounted);
        cautions.Add(ReachTexts.FromInjury);
        cautions.AddRange(route.Track.Cautions);
        return cautions.ToImmutable();
    }
}
