using System.Globalization;
using NodaTime;
using NodaTime.TimeZones;

namespace Farhold.App.Phone;

/// <summary>Instants on the phone's 24 h clock, and clock times back to instants.</summary>
public sealed class PhoneClock(DateTimeZone zone)
{
    public DateTimeZone Zone => zone;

    /// <summary><c>02:14</c>, or <c>3 May 02:14</c> if it is not the day of <paramref name="now"/>.</summary>
    public string Show(Instant at, Instant now)
    {
        var local = at.InZone(zone).LocalDateTime;
        var clock = TimeText.Clock(local.TimeOfDay);
        return local.Date == now.InZone(zone).Date ? clock : $"{TimeText.Day(local.Date)} {clock}";
    }

    public string Show(Happened happened, Instant now) => happened.IsInstant
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
