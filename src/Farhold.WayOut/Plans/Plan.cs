using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>How the casualty gets from one place to the next.</summary>
public enum TravelMode
{
    Walk,
    Carry,
    Vehicle,
    Boat,
    Aircraft,
    Wait,
}

/// <summary>Degrees on WGS 84, south and west negative.</summary>
public readonly record struct PlanPlace(double LatDeg, double LonDeg);

/// <summary>A way to higher care: legs one after another from a start. Its last leg ends at higher care.</summary>
/// <param name="Correlation">How much all legs share one luck (weather, light, ground, party), 0 to 1.</param>
/// <param name="Lambda">How strongly three-point times heap on the likeliest; 4 is classical PERT.</param>
public sealed record Plan(
    string? Id,
    string? Title,
    Instant Start,
    PlanPlace? From,
    DateTimeZone? TimeZone,
    double Correlation,
    double Lambda,
    ImmutableArray<Leg> Legs
)
{
    public const double ClassicalLambda = 4;

    public static double UsualCorrelation { get; } = PriorTable.Figure("delays-together").Value;
    public static double UsualWeather { get; } = PriorTable.Figure("weather-together").Value;

    /// <summary>How much one weather decides what comes, what is held and what closes, 0 to 1.</summary>
    public double Weather { get; init; } = UsualWeather;

    /// <summary>GPX files named by legs, in order; the edge reads them and calls <see cref="WithTracks"/>.</summary>
    public IEnumerable<string> Tracks =>
        Legs.SelectMany(Leg.Inside)
            .OfType<Travel>()
            .Select(leg => leg.Extent)
            .OfType<Measured>()
            .Select(m => m.Track)
            .OfType<string>()
            .Distinct();

    /// <summary>Every leg, choices and what they hold, in the order written.</summary>
    public IEnumerable<Leg> All => Legs.SelectMany(Leg.Inside);

    /// <summary>Whether some leg can't be timed without knowing when it is dark.</summary>
    public bool NeedsLight => All.OfType<Travel>().Any(leg => leg.Dark == DarkRule.Stop || leg.Window == FlightWindow.Daylight);

    /// <param name="measure">The stretch of a track; nothing leaves the leg unmeasured.</param>
    public Plan WithTracks(Func<string, Stretch?> measure) =>
        Mapped(leg =>
            leg is Travel { Extent: Measured { Track: { } track, Stretch: null } m } travel
                ? travel with
                {
                    Extent = m with { Stretch = measure(track) },
                }
                : leg
        );

    /// <summary>The same plan with each leg, innermost first, replaced; what becomes nothing is left out.</summary>
    public Plan Mapped(Func<Leg, Leg?> change) => this with { Legs = Leg.Mapped(Legs, change) };
}

/// <summary>A part of the way. A closed family.</summary>
public abstract record Leg
{
    private protected Leg(int slot, string? name) => (Slot, Name) = (slot, name);

    /// <summary>Its place among the random numbers of a trial; kept when the plan is changed (common random numbers).</summary>
    public int Slot { get; init; }

    /// <summary>What people call it; null where nobody named it.</summary>
    public string? Name { get; init; }

    internal static IEnumerable<Leg> Inside(Leg leg) =>
        leg is Choice choice ? choice.Ways.SelectMany(way => way.Legs).SelectMany(Inside).Prepend(leg) : [leg];

    internal static ImmutableArray<Leg> Mapped(ImmutableArray<Leg> legs, Func<Leg, Leg?> change) =>
        [
            .. legs.Select(leg =>
                    change(
                        leg is Choice choice
                            ? choice with
                            {
                                Ways = [.. choice.Ways.Select(way => way with { Legs = Mapped(way.Legs, change) })],
                            }
                            : leg
                    )
                )
                .OfType<Leg>(),
        ];
}

/// <summary>One leg by one mode.</summary>
/// <param name="Hold">Weather that may keep it from starting.</param>
public sealed record Travel(int Slot, string? Name, TravelMode Mode, Extent Extent, DarkRule Dark, FlightWindow Window, Hold? Hold)
    : Leg(Slot, Name);

/// <summary>Several ways at one point of the plan.</summary>
public sealed record Choice(int Slot, string? Name, ChoiceKind Kind, ImmutableArray<Way> Ways) : Leg(Slot, Name)
{
    /// <summary>Of <see cref="ChoiceKind.Until"/>, until when to wait, from the plan's start; null for ever.</summary>
    public Duration? Until { get; init; }

    /// <summary>Of <see cref="ChoiceKind.Try"/>, when it closes, from the plan's start; null never.</summary>
    public Extent? Closes { get; init; }

    /// <summary>Whether its three ways are what is waited for or tried, what goes on from there, and what is done otherwise.</summary>
    public bool IsElse => Kind is ChoiceKind.Until or ChoiceKind.Try;
}

public enum ChoiceKind
{
    /// <summary>Luck picks one, by their probabilities.</summary>
    Branches,

    /// <summary>All set out; whichever arrives first counts. The probability of a way is its chance to come at all.</summary>
    First,

    /// <summary>All are needed; the last to arrive counts.</summary>
    All,

    /// <summary>
    /// The first way is waited for, until a moment; if it is there by then the second goes on from there, if not the third sets out.
    /// </summary>
    Until,

    /// <summary>
    /// The first way is tried: it succeeds by its probability and if its end is reached before it closes. If it does, the second goes on
    /// from there. If not, the party is back where it was tried from, as late as it went far, and the third sets out.
    /// </summary>
    Try,
}

/// <param name="Probability">Of being the way taken, or of coming at all, by the kind of choice.</param>
public sealed record Way(string? Name, double Probability, ImmutableArray<Leg> Legs);

public enum DarkRule
{
    /// <summary>It goes on in the dark, more slowly on foot.</summary>
    Allowed,

    /// <summary>It halts at nightfall and goes on at first light.</summary>
    Stop,
}

public enum FlightWindow
{
    AnyHour,

    /// <summary>Flies only by daylight, its landing included.</summary>
    Daylight,
}

/// <summary>A delay that may come before a leg, in three points.</summary>
public sealed record Hold(double Probability, ThreePoint Time);

/// <summary>How long a leg is. A closed family.</summary>
public abstract record Extent
{
    private protected Extent() { }
}

/// <summary>Least, likeliest and greatest time.</summary>
public sealed record ThreePoint(Duration Low, Duration Likely, Duration High) : Extent;

/// <summary>Times beaten in one, five and nine of ten cases; P50 may be left out.</summary>
public sealed record Percentiles(Duration P10, Duration? P50, Duration P90) : Extent;

/// <summary>Ground to cover, from figures or a track.</summary>
/// <param name="Stretch">Null until the track has been measured.</param>
/// <param name="Surface">Null for the usual: a path on foot, a road by vehicle.</param>
/// <param name="Spread">Standard deviation of the logarithm of a walking time; null for the usual one.</param>
/// <param name="Packaging">Whether getting the casualty onto the litter belongs to this leg.</param>
public sealed record Measured(
    string? Track,
    Stretch? Stretch,
    PaceRule? Rule,
    Surface? Surface,
    double SnowCm,
    double? Spread,
    double? SpeedKmh,
    int? Bearers,
    bool Wheel,
    int RopePitches,
    bool Packaging
) : Extent
{
    /// <summary>More hands on their way to a carry; null where nobody joins.</summary>
    public Joining? Joining { get; init; }

    /// <summary>Halts of a carry for the casualty's care; null where there are none.</summary>
    public Halts? Halts { get; init; }
}

/// <summary>Bearers who join a carry wherever it then is.</summary>
/// <param name="Time">From the plan's start until they are there.</param>
public sealed record Joining(int Bearers, Extent Time);

/// <param name="Every">On the move between two halts.</param>
/// <param name="For">How long a halt lasts.</param>
public sealed record Halts(Duration Every, Duration For);
