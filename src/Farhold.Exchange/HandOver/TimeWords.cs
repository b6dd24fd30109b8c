using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>Times for the next hands: on the clock of a zone and in UTC, to the minute, with the day where it is another one.</summary>
public sealed class TimeWords(DateTimeZone zone, Instant now)
{
    private readonly LocalDate today = now.InZone(zone).Date;

    /// <summary><c>04:10 (02:10 UTC)</c>; in UTC only <c>02:10 UTC</c>.</summary>
    public string At(Instant instant)
    {
        var local = instant.InZone(zone).LocalDateTime;
        var utc = instant.InUtc().LocalDateTime;
        var onClock = (local.Date == today ? "" : TimeText.Day(local.Date) + " ") + TimeText.Clock(local.TimeOfDay);
        if (local == utc)
            return $"{onClock} UTC";
        return $"{onClock} ({(utc.Date == local.Date ? "" : TimeText.Day(utc.Date) + " ")}{TimeText.Clock(utc.TimeOfDay)} UTC)";
    }

    /// <summary>Likewise, or <c>between … and …</c>.</summary>
    public string At(Happened when) =>
        At(when.Earliest) == At(when.Latest) ? At(when.Latest) : HandOverTexts.BetweenTimes(At(when.Earliest), At(when.Latest));

    /// <summary>The instant all is told as of, with its full date.</summary>
    public string AsOf() => $"{TimeText.Date(today)} {At(now)}";

    /// <summary><c>10 min ago</c>, or a range.</summary>
    public string Ago(Happened when) => HandOverTexts.Ago(Say.Elapsed(when.Until(now)));
}
