using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Hours by the clock on some days of the week; those that run past midnight belong to the day on which they begin.</summary>
/// <param name="To">Not after <paramref name="From"/>: on the next day, a whole day later where both are the same.</param>
public sealed record OpenHours(ImmutableArray<IsoDayOfWeek> Days, LocalTime From, LocalTime To)
{
    private bool PastMidnight => To <= From;

    internal bool Contain(LocalDateTime clock) =>
        (Days.Contains(clock.DayOfWeek) && clock.TimeOfDay >= From && (PastMidnight || clock.TimeOfDay < To))
        || (PastMidnight && Days.Contains(clock.Date.PlusDays(-1).DayOfWeek) && clock.TimeOfDay < To);
}

/// <summary>Whether somebody can be reached now.</summary>
/// <param name="Changes">When that ends, or begins; null where it does neither within the next two weeks.</param>
public readonly record struct ContactState(bool Open, Instant? Changes);

/// <summary>When somebody can be reached, as the clocks of a zone show it.</summary>
public sealed record ContactHours(DateTimeZone Zone, ImmutableArray<OpenHours> Open)
{
    /// <summary>Longer than a week: where clocks skip an hour, the hours of one week may not exist.</summary>
    private const int DaysAhead = 15;

    public bool IsOpen(Instant at)
    {
        var clock = at.InZone(Zone).LocalDateTime;
        return Open.Any(o => o.Contain(clock));
    }

    public ContactState At(Instant now)
    {
        var open = IsOpen(now);
        return new(open, Edges(now).Where(e => e > now).Order().Select(e => (Instant?)e).FirstOrDefault(e => IsOpen(e!.Value) != open));
    }

    /// <summary>Every instant at which the answer may change: hours that begin or end, and clocks that are put on or back.</summary>
    private IEnumerable<Instant> Edges(Instant now)
    {
        var today = now.InZone(Zone).Date;
        for (var day = -1; day <= DaysAhead; day++)
            foreach (var time in Open.SelectMany(o => (LocalTime[])[o.From, o.To]).Distinct())
            {
                var shown = Zone.MapLocal(today.PlusDays(day) + time);
                if (shown.Count == 0)
                    continue;
                yield return shown.First().ToInstant();
                if (shown.Count == 2)
                    yield return shown.Last().ToInstant();
            }

        foreach (var interval in Zone.GetZoneIntervals(now, now + Duration.FromDays(DaysAhead)).Where(i => i.HasStart))
            yield return interval.Start;
    }
}
