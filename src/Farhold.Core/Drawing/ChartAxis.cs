using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>A round time on an axis: a whole step of the local clock, or the beginning of a day.</summary>
internal readonly record struct RoundTime(Instant At, LocalDateTime Local, bool Midnight)
{
    public string Text => Midnight ? TimeText.Day(Local.Date) : TimeText.Clock(Local.TimeOfDay);
}

/// <summary>Round times by the clock of a place, on days of any length.</summary>
internal static class ChartAxis
{
    private static readonly ImmutableArray<int> Minutes = [5, 15, 30, 60, 120, 180, 360, 720];
    private static readonly ImmutableArray<int> Days = [1, 2, 5, 10, 20, 50];

    /// <summary>From which days are counted, so that the same ones are labelled whatever part is shown.</summary>
    private static readonly LocalDate Start = new(2000, 1, 1);

    /// <summary>An hour that the clock shows twice is the first of the two; one that it skips is left out.</summary>
    /// <param name="perMinute">Pixels.</param>
    /// <param name="room">What a label takes, px.</param>
    public static ImmutableArray<RoundTime> Times(Instant from, Instant to, DateTimeZone zone, double perMinute, double room)
    {
        var step = Minutes.FirstOrDefault(m => m * perMinute >= room, 1440);
        var days = step < 1440 ? 1 : Days.FirstOrDefault(d => d * 1440 * perMinute >= room, Days[^1]);
        var times = ImmutableArray.CreateBuilder<RoundTime>();
        for (var date = from.InZone(zone).Date; zone.AtStartOfDay(date).ToInstant() <= to; date = date.PlusDays(1))
        {
            if (Period.DaysBetween(Start, date) % days != 0)
                continue;
            var midnight = zone.AtStartOfDay(date);
            Add(midnight.ToInstant(), midnight.LocalDateTime, true);
            for (var minute = step; minute < 1440; minute += step)
            {
                var local = date.AtMidnight().PlusMinutes(minute);
                if (zone.MapLocal(local) is { Count: > 0 } mapping)
                    Add(mapping.First().ToInstant(), local, false);
            }
        }

        return times.ToImmutable();

        void Add(Instant at, LocalDateTime local, bool isMidnight)
        {
            if (at >= from && at <= to && (times.Count == 0 || at > times[^1].At))
                times.Add(new(at, local, isMidnight));
        }
    }
}
