using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Exchange.Card;

/// <summary>Times of the card, in its zone: <c>4 May 03:50</c>. The year stands once, at its head.</summary>
public sealed class CardTimes(DateTimeZone zone)
{
    private static readonly ZonedDateTimePattern Whole = ZonedDateTimePattern.CreateWithInvariantCulture("d MMM uuuu HH:mm", null);

    public string Of(Instant at) => In(at, "d MMM HH:mm");

    /// <summary>One time, or the range in which it lies.</summary>
    public string Of(Happened happened)
    {
        if (happened.IsInstant || Of(happened.Earliest) == Of(happened.Latest))
            return Of(happened.Latest);
        var sameDay = happened.Earliest.InZone(zone).Date == happened.Latest.InZone(zone).Date;
        return $"between {Of(happened.Earliest)} and {(sameDay ? In(happened.Latest, "HH:mm") : Of(happened.Latest))}";
    }

    /// <summary><c>4 May 2031 09:00, Europe/Oslo (UTC+02); 4 May 2031 07:00 UTC</c>.</summary>
    public string Head(Instant at)
    {
        var utc = $"{Whole.Format(at.InUtc())} UTC";
        return zone == DateTimeZone.Utc ? utc : $"{Whole.Format(at.InZone(zone))}, {zone.Id} (UTC{zone.GetUtcOffset(at)}); {utc}";
    }

    private string In(Instant at, string pattern) => at.InZone(zone).ToString(pattern, CultureInfo.InvariantCulture);
}
