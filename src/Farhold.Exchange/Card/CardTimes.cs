using System.Globalization;
using NodaTime;

namespace Farhold.Exchange.Card;

/// <summary>Times of the card, in its zone: <c>4 May 03:50</c>. The year stands once, at its head.</summary>
public sealed class CardTimes(DateTimeZone zone)
{
    public string Of(Instant at) => $"{TimeText.Day(at.InZone(zone).Date)} {Clock(at)}";

    /// <summary>One time, or the range in which it lies.</summary>
    public string Of(Happened happened)
    {
        if (happened.IsInstant || Of(happened.Earliest) == Of(happened.Latest))
            return Of(happened.Latest);
        var sameDay = happened.Earliest.InZone(zone).Date == happened.Latest.InZone(zone).Date;
        return CardTexts.BetweenTimes(Of(happened.Earliest), sameDay ? Clock(happened.Latest) : Of(happened.Latest));
    }

    /// <summary><c>4 May 2031 09:00, Europe/Oslo (UTC+02); 4 May 2031 07:00 UTC</c>.</summary>
    public string Head(Instant at)
    {
        var utc = $"{Whole(at.InUtc())} UTC";
        return zone == DateTimeZone.Utc ? utc : $"{Whole(at.InZone(zone))}, {zone.Id} (UTC{zone.GetUtcOffset(at)}); {utc}";
    }

    private static string Whole(ZonedDateTime at) =>
        string.Create(CultureInfo.InvariantCulture, $"{TimeText.Day(at.Date)} {at.Year:0000} {TimeText.Clock(at.TimeOfDay)}");

    private string Clock(Instant at) => TimeText.Clock(at.InZone(zone).TimeOfDay);
}
