using System.Collections.Immutable;
using NodaTime;
using NodaTime.TimeZones;

namespace Farhold.Care;

/// <summary>A time of darkness or sleep.</summary>
public readonly record struct NightSpan(Instant From, Instant To);

/// <summary>Day and night where the casualty is, and when the watch changes: what lets comfort wait so that people sleep.</summary>
/// <remarks>Nobody tells: <see cref="None"/>, and nothing ever waits.</remarks>
/// <param name="Nights">In order, none touching another.</param>
/// <param name="Changes">Instants at which someone gets up anyway, in order.</param>
public sealed record Rhythm(ImmutableArray<NightSpan> Nights, ImmutableArray<Instant> Changes)
{
    /// <summary>When people sleep if nobody says otherwise (design).</summary>
    public static readonly LocalTime UsualFrom = new(22, 0);

    /// <summary>When they get up if nobody says otherwise (design).</summary>
    public static readonly LocalTime UsualTo = new(6, 0);

    /// <summary>Widest night (design): as long as the shipped protocol lets any task of comfort wait.</summary>
    public static readonly Duration LongestNight = Duration.FromHours(12);

    public static readonly Rhythm None = new([], []);

    /// <summary>Nights by the clock of a place, from two days before an instant to four days after it.</summary>
    /// <remarks>An hour that the clock skips begins after the gap; one that it shows twice is the first of the two.</remarks>
    /// <exception cref="ArgumentException">Both hours are the same, or further apart than <see cref="LongestNight"/>.</exception>
    public static Rhythm ByClock(DateTimeZone zone, LocalTime from, LocalTime to, Instant around)
    {
        if (!CanBeANight(from, to))
            throw new ArgumentException(
                $"A night begins and ends at different hours, at most {LongestNight.TotalHours} h apart.",
                nameof(to)
            );
        var resolver = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);
        Instant At(LocalDate day, LocalTime time) => zone.ResolveLocal(day + time, resolver).ToInstant();
        var today = around.InZone(zone).Date;
        return new(
            [
                .. Enumerable
                    .Range(-2, 7)
                    .Select(d => today.PlusDays(d))
                    .Select(d => new NightSpan(At(d, from), At(to > from ? d : d.PlusDays(1), to))),
            ],
            []
        );
    }

    /// <summary>Whether two hours of the clock make a night that is not too wide.</summary>
    public static bool CanBeANight(LocalTime from, LocalTime to)
    {
        var ticks = to.TickOfDay - from.TickOfDay;
        return from != to && Duration.FromTicks(ticks < 0 ? ticks + NodaConstants.TicksPerDay : ticks) <= LongestNight;
    }

    public Rhythm With(ImmutableArray<RosterShift> watches) => this with { Changes = [.. watches.Select(w => w.From).Order()] };

    public bool IsNight(Instant at) => Nights.Any(n => n.From <= at && at < n.To);

    /// <summary>
    /// The latest time between two at which someone is up: a change of watch or the end of a night. Null where there is none.
    /// </summary>
    public Instant? LastUp(Instant from, Instant to) =>
        Changes.Concat(Nights.Select(n => n.To)).Where(c => c >= from && c <= to).Select(c => (Instant?)c).DefaultIfEmpty(null).Max();
}
