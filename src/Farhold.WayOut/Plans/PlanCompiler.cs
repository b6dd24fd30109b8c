using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Turns legs into steps, noting on the way what they rest on.</summary>
internal sealed class PlanCompiler(Plan plan, DarkClock? dark)
{
    /// <summary>Spread of a walking time about its rule: standard deviation of the logarithm.</summary>
    public const double UsualSpread = 0.25;

    private readonly Copula copula = new(plan.Correlation);

    public List<LegPlace> Places { get; } = [];

    public List<Basis> Rests { get; } =
    [
        new(string.Create(CultureInfo.InvariantCulture, $"Legs share their luck (weather, light, ground, party) with correlation {plan.Correlation:0.##}"),
            Evidence.Assumption, "one common factor"),
    ];

    public List<Draw> Draws { get; } = plan.Correlation > 0 ? [new("luck shared by all legs", 0, 0, null)] : [];

    public ImmutableArray<Step> Steps(ImmutableArray<Leg> legs, string path)
    {
        var steps = ImmutableArray.CreateBuilder<Step>();
        for (var i = 0; i < legs.Length; i++)
            steps.Add(legs[i] is Choice choice ? Chosen(choice, $"{path}{i + 1}") : Travelled((Travel)legs[i], $"{path}{i + 1}"));
        return steps.ToImmutable();
    }

    private ChoiceStep Chosen(Choice choice, string path)
    {
        var label = choice.Name ?? choice.Kind switch
        {
            ChoiceKind.Branches => "one of " + Ways(choice),
            ChoiceKind.First => "whichever comes first of " + Ways(choice),
            _ => "all of " + Ways(choice),
        };
        var index = Place(path, label, null);
        if (choice.Kind == ChoiceKind.Branches)
            Draws.Add(new(label, choice.Slot, ChoiceStep.Which, [.. choice.Ways.Select((_, w) => choice.Ways.Take(w + 1).Sum(x => x.Probability))]));
        var ways = choice.Ways.Select((way, w) =>
        {
            if (choice.Kind == ChoiceKind.First && way.Probability is > 0 and < 1)
                Draws.Add(new($"whether {way.Name ?? $"way {w + 1}"} comes", choice.Slot, ChoiceStep.FirstWay + w, [way.Probability, 1]));
            return (way.Probability, Steps(way.Legs, $"{path}.{w + 1}."));
        });
        return new(index, choice.Slot, choice.Kind, [.. ways]);
    }

    private static string Ways(Choice choice) =>
        string.Join(", ", choice.Ways.Select((way, w) => way.Name ?? (way.Legs.FirstOrDefault() is { } leg ? Label(leg) : $"way {w + 1}")));

    private TravelStep Travelled(Travel leg, string path)
    {
        var label = Label(leg);
        var index = Place(path, label, leg.Mode);
        var parts = Parts(leg).ToImmutableArray();
        var hold = leg.Hold is { } h ? TimeLaws.Of(h.Time, plan.Lambda) : null;
        if (leg.Hold is { Probability: > 0 } held)
        {
            if (held.Probability < 1)
                Draws.Add(new($"{label}: whether weather holds it", leg.Slot, TravelStep.Held, [held.Probability, 1]));
            Draws.Add(new($"{label}: how long weather holds it", leg.Slot, TravelStep.HeldFor, null));
        }

        for (var p = 0; p < parts.Length; p++)
            if (parts[p].Law.Variance > 0)
                Draws.Add(new($"{label}: {parts[p].Name}", leg.Slot, TravelStep.FirstPart + p, null));
        if (leg is { Mode: TravelMode.Aircraft, Window: FlightWindow.AnyHour })
            Rests.Add(new($"{label}: flies at any hour, as the plan says nothing else", Evidence.Assumption, "the plan"));
        return new(index, leg.Slot, leg.Hold?.Probability ?? 0, hold, leg.Window == FlightWindow.Daylight, parts, copula, dark);
    }

    private List<Part> Parts(Travel leg)
    {
        var whole = leg.Dark == DarkRule.Stop ? 0.0 : 1;
        switch (leg.Extent)
        {
            case ThreePoint three:
                return [new("time", TimeLaws.Of(three, plan.Lambda), whole)];
            case Percentiles tenths:
                return [new("time", Tenths(leg, tenths), whole)];
            case Measured measured:
                var stretch = measured.Stretch ?? throw new ArgumentException($"Track '{measured.Track}' has not been measured.", nameof(leg));
                return leg.Mode switch
                {
                    TravelMode.Walk => Walked(leg, measured, stretch),
                    TravelMode.Carry => Carried(leg, measured, stretch),
                    _ => Ridden(leg, measured, stretch, whole),
                };
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private List<Part> Walked(Travel leg, Measured m, Stretch stretch)
    {
        var rule = m.Rule ?? PaceRules.Default;
        var surface = m.Surface ?? Surfaces.Path;
        var spread = m.Spread ?? (rule.Id == "campbell" ? CampbellSpread(stretch) : UsualSpread);
        var seconds = rule.Time(stretch).TotalSeconds / (surface.SpeedFactor * Snow.SpeedFactor(m.SnowCm));
        Rests.Add(new($"Walking by {rule.Name}. {rule.Caution}", rule.Mark, rule.Source));
        Rests.Add(new(
            string.Create(CultureInfo.InvariantCulture, $"Walkers differ by a spread of {spread:0.##} (log)"), Evidence.Assumption, "no one rule says how much"));
        if (surface != Surfaces.Path)
            Rests.Add(new(string.Create(CultureInfo.InvariantCulture, $"On {surface.Name}: speed times {surface.SpeedFactor:0.00}"), surface.Mark, surface.Source));
        return Moving("pace", seconds, spread, DarkRate(leg, surface));
    }

    private static double CampbellSpread(Stretch stretch) => stretch.DistanceKm == 0 ? 0
        : Math.Log(Campbell.Time(stretch, 10) / Campbell.Time(stretch, 90)) / (2 * NormalLaw.Z90);

    private List<Part> Carried(Travel leg, Measured m, Stretch stretch)
    {
        var surface = m.Surface ?? Surfaces.Path;
        var carry = new LitterCarry(stretch, surface, m.Bearers, m.Wheel, m.SnowCm);
        Rests.AddRange(carry.Rests());
        var parts = new List<Part>();
        if (m.Packaging)
        {
            Rests.Add(new("Getting the casualty onto the litter: 20 to 60 min, about 30", Evidence.Assumption, "no source found"));
            parts.Add(new("packaging", LogNormal.FromQuantiles(20 * 60, 30 * 60, 60 * 60), 1));
        }

        if (m.RopePitches > 0)
        {
            Rests.Add(new("Ropes: 20 to 60 min a pitch, all pitches alike", Evidence.Assumption, "no source found"));
            parts.Add(new("ropes", LogNormal.FromQuantiles(m.RopePitches * 20 * 60, m.RopePitches * 60 * 60), 1));
        }

        if (carry.EquivalentKm > 0)
            parts.Add(new("pace", carry.TimeSeconds(), DarkRate(leg, surface)));
        return parts;
    }

    private List<Part> Ridden(Travel leg, Measured m, Stretch stretch, double darkRate)
    {
        var speed = m.SpeedKmh is { } given ? TravelSpeed.Given(given)
            : leg.Mode == TravelMode.Aircraft ? TravelSpeed.InFlight
            : TravelSpeed.OnGround(m.Surface);
        Rests.Add(new(speed.What, speed.Mark, speed.Source));
        var parts = new List<Part>();
        if (speed.FixedMinutes > 0)
            parts.Add(new("fixed", new Constant(60 * speed.FixedMinutes), 1));
        if (stretch.DistanceKm > 0)
            parts.Add(new("speed", speed.TimeSeconds(stretch.DistanceKm), darkRate));
        return parts;
    }

    private static List<Part> Moving(string name, double seconds, double spread, double darkRate) =>
        seconds > 0 ? [new(name, LogNormal.FromMedian(seconds, spread), darkRate)] : [];

    private double DarkRate(Travel leg, Surface surface)
    {
        if (leg.Dark == DarkRule.Stop)
            return 0;
        Rests.Add(dark is null
            ? new("No place given, so light is unknown: on foot all is timed as in the dark", Evidence.Assumption, "the worse of the two")
            : new("In the dark on foot: speed times 0.8 on a path, 0.64 off it", Evidence.Computed, "foot-march planning speeds, mtntactical.com"));
        return Night.SpeedFactor(surface);
    }

    private LogNormal Tenths(Travel leg, Percentiles t)
    {
        var law = TimeLaws.Of(t);
        if (Priors.Behind(leg) is { } prior)
            Rests.Add(new(
                string.Create(CultureInfo.InvariantCulture, $"{Label(leg)}: {prior.P10Minutes:0}, {prior.P50Minutes:0} and {prior.P90Minutes:0} min in one, five and nine of ten cases, as suggested"),
                prior.Mark, prior.Source));
        if (t.P50 is { } middle && Math.Abs((law.Quantile(0.5) / middle.TotalSeconds) - 1) > 0.02)
            Rests.Add(new($"{Label(leg)}: p10 and p90 hold, p50 gives way, as no lognormal passes all three", Evidence.Assumption, "the plan"));
        return law;
    }

    private int Place(string path, string label, TravelMode? mode)
    {
        Places.Add(new(path, label, mode));
        return Places.Count - 1;
    }

    private static string Label(Leg leg) => leg.Name ?? (leg is Travel travel
        ? TravelReader.Word(travel.Mode) + (travel.Extent is Measured { Stretch: { } s }
            ? string.Create(CultureInfo.InvariantCulture, $" {s.DistanceKm:0.#} km") : "")
        : "choice");
}
