namespace Farhold.App.WayOut;

/// <summary>How a leg's time is told.</summary>
public enum LegMeasure
{
    /// <summary>Least, likeliest and longest.</summary>
    Times,

    /// <summary>As suggested: beaten in one, five and nine of ten cases.</summary>
    Tenths,

    /// <summary>Distance, climb and descent.</summary>
    Ground,
}

/// <summary>A leg while it is being made.</summary>
/// <param name="Slot">Of the leg that is changed; null for a new one.</param>
/// <param name="Was">The leg that is changed: what the form does not ask stays.</param>
public sealed record LegDraft(LegRow Row, int? Slot, TravelMode Mode, LegMeasure Measure, Travel? Was = null)
{
    public string Name { get; init; } = "";

    public ThreeTimes Times { get; init; }

    public double? Km { get; init; }

    public double? AscentM { get; init; }

    public double? DescentM { get; init; }

    public double? SpeedKmh { get; init; }

    public int? Bearers { get; init; }

    public Surface? Surface { get; init; }

    public PaceRule? Rule { get; init; }

    /// <summary>Whether getting onto the litter is part of it.</summary>
    public bool Packaging { get; init; }

    public DarkRule Dark { get; init; }

    public FlightWindow Window { get; init; }

    /// <summary>How likely weather keeps it from starting; null where that is left out.</summary>
    public double? HoldChance { get; init; }

    public ThreeTimes HoldTimes { get; init; }

    public static LegDraft New(LegRow row, TravelMode mode, Plan? plan) =>
        new(row, null, mode, mode is TravelMode.Walk or TravelMode.Carry ? LegMeasure.Ground : LegMeasure.Times)
        {
            Packaging = mode == TravelMode.Carry && plan?.All.OfType<Travel>().Any(leg => leg.Mode == TravelMode.Carry) != true,
        };

    public static LegDraft Of(Travel leg, LegRow row)
    {
        var draft = new LegDraft(
            row,
            leg.Slot,
            leg.Mode,
            leg.Extent switch
            {
                ThreePoint => LegMeasure.Times,
                Percentiles => LegMeasure.Tenths,
                _ => LegMeasure.Ground,
            },
            leg
        )
        {
            Name = leg.Name ?? "",
            Dark = leg.Dark,
            Window = leg.Window,
            HoldChance = leg.Hold is { Probability: > 0 } held ? held.Probability : null,
            HoldTimes = leg.Hold is { } hold ? ThreeTimes.Of(hold.Time) : default,
        };
        return leg.Extent switch
        {
            ThreePoint t => draft with { Times = ThreeTimes.Of(t) },
            Percentiles p => draft with { Times = new(p.P10.TotalMinutes, p.P50?.TotalMinutes, p.P90.TotalMinutes) },
            Measured m => draft with
            {
                Km = m.Stretch?.DistanceKm,
                AscentM = m.Stretch?.AscentM,
                DescentM = m.Stretch?.DescentM,
                SpeedKmh = m.SpeedKmh,
                Bearers = m.Bearers,
                Surface = m.Surface,
                Rule = m.Rule,
                Packaging = m.Packaging,
            },
            _ => draft,
        };
    }

    public LegDraft With(Prior prior) =>
        this with
        {
            Measure = LegMeasure.Tenths,
            Name = prior.What,
            Times = new(prior.P10Minutes, prior.P50Minutes, prior.P90Minutes),
        };

    /// <summary>Null while something it needs is missing.</summary>
    public Travel? Leg(int newSlot)
    {
        if (Extent() is not { } extent || (HoldChance is not null && HoldTimes.Points is null))
            return null;
        return new(
            Slot ?? newSlot,
            Name.Trim() is { Length: > 0 } name ? name : null,
            Mode,
            extent,
            Mode == TravelMode.Wait ? DarkRule.Allowed : Dark,
            Mode == TravelMode.Aircraft ? Window : FlightWindow.AnyHour,
            HoldChance is { } chance ? new(chance, HoldTimes.Points!) : null
        );
    }

    private Extent? Extent() =>
        Measure switch
        {
            LegMeasure.Times => Times.Points,
            LegMeasure.Tenths => Times.Tenths,
            _ => Ground(),
        };

    private Measured? Ground()
    {
        if (Km is not { } km || (Mode == TravelMode.Boat && SpeedKmh is null) || Mode == TravelMode.Wait)
            return null;
        var was = Was?.Extent as Measured ?? new(null, null, null, null, 0, null, null, null, false, 0, false);
        var carry = Mode == TravelMode.Carry;
        var walk = Mode == TravelMode.Walk;
        return was with
        {
            Track = null,
            Stretch = new(km, AscentM ?? 0, DescentM ?? 0),
            Rule = walk ? Rule : null,
            Surface = Surface,
            SpeedKmh = walk || carry ? null : SpeedKmh,
            Bearers = carry ? Bearers : was.Bearers,
            Packaging = carry && Packaging,
        };
    }
}
