using System.Globalization;
using NodaTime;
using NodaTime.TimeZones;

namespace Farhold.App.Words;

/// <summary>Instants on the phone's 24 h clock, and clock times back to instants.</summary>
public sealed class PhoneClock(DateTimeZone zone, Texts texts)
{
    public DateTimeZone Zone => zone;

    /// <summary>
    /// In the words of the language: <c>02:14</c>; <c>3 May 02:14</c> or <c>3 May 2031 02:14</c> if it is not the day, or not the year,
    /// of <paramref name="now"/>.
    /// </summary>
    public string Show(Instant at, Instant now)
    {
        var local = at.InZone(zone).LocalDateTime;
        var clock = TimeText.Clock(local.TimeOfDay);
        return IsToday(at, now) ? clock
            : local.Year == now.InZone(zone).Year ? $"{texts.Day(local.Date)} {clock}"
            : Dated(at);
    }

    public bool IsToday(Instant at, Instant now) => at.InZone(zone).Date == now.InZone(zone).Date;

    /// <summary>With its day and year, whatever day it is: <c>3 May 2031 02:14</c>.</summary>
    public string Dated(Instant at)
    {
        var local = at.InZone(zone).LocalDateTime;
        return $"{texts.DayAndYear(local.Date)} {TimeText.Clock(local.TimeOfDay)}";
    }

    /// <summary>Its day and year: <c>3 May 2031</c>.</summary>
    public string Day(Instant at) => texts.DayAndYear(at.InZone(zone).Date);

    public string Show(Happened happened, Instant now) =>
        happened.IsInstant
            ? Show(happened.Earliest, now)
            : string.Create(CultureInfo.InvariantCulture, $"{Show(happened.Earliest, now)} – {Show(happened.Latest, now)}");

    /// <summary>The last time the clock showed <paramref name="time"/> at or before <paramref name="limit"/>, less whole days.</summary>
    public Instant LastBefore(LocalTime time, Instant limit, int daysEarlier = 0)
    {
        var day = limit.InZone(zone).Date;
        var at = On(day, time);
        if (at > limit)
            day = day.PlusDays(-1);
        return On(day.PlusDays(-daysEarlier), time);
    }

    // A time the clock showed twice is taken as the earlier one (it is worse for the limb); one it skipped, just after the gap.
    private Instant On(LocalDate day, LocalTime time) =>
        zone.ResolveLocal(day + time, Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter))
            .ToInstant();
}
