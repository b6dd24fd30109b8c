using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Exchange.Message;

/// <summary>Times of a short message: whole minutes in UTC, as short as the message's own instant allows.</summary>
/// <remarks>
/// Four digits are the hour and minute last gone by (for help, next to come), within a day of the message; six have the
/// day of the month before them, within thirteen days either way; twelve have year and month too. A range is two of them
/// with a dash, the second told from the first; with nothing after the dash it reaches up to the message's own minute.
/// What is read is the whole minute.
/// </remarks>
internal static class MessageTime
{
    /// <summary>A time is told to the minute: read, it lasts until the next.</summary>
    public static readonly Duration Minute = Duration.FromMinutes(1);

    private static readonly Duration Day = Duration.FromDays(1);
    private static readonly Duration Near = Duration.FromDays(13);
    private static readonly InstantPattern Short = InstantPattern.CreateWithInvariantCulture("HHmm");
    private static readonly InstantPattern Middle = InstantPattern.CreateWithInvariantCulture("ddHHmm");
    private static readonly InstantPattern Long = InstantPattern.CreateWithInvariantCulture("uuuuMMddHHmm");

    public static Instant Floor(Instant at) =>
        Instant.FromUnixTimeSeconds((long)Math.Floor(at.ToUnixTimeTicks() / (60.0 * NodaConstants.TicksPerSecond)) * 60);

    public static string Write(Instant at, Instant asOf, bool ahead = false)
    {
        var minute = Floor(at);
        var away = ahead ? minute - Floor(asOf) : Floor(asOf) - minute;
        return away >= Duration.Zero && away < Day ? Short.Format(minute)
            : away > -Near && away < Near ? Middle.Format(minute)
            : Long.Format(minute);
    }

    /// <param name="open">Leaves the end of a range open: shorter, and wider than what is known.</param>
    public static string Write(Happened when, Instant asOf, bool open = false)
    {
        var (first, last) = (Floor(when.Earliest), Floor(when.Latest));
        return first == last ? Write(first, asOf) : $"{Write(first, asOf)}-{(open ? "" : Write(last, first, ahead: true))}";
    }

    /// <returns>The minute's start, or null.</returns>
    public static Instant? Read(ReadOnlySpan<char> text, Instant asOf, bool ahead = false)
    {
        foreach (var c in text)
            if (!char.IsAsciiDigit(c))
                return null;
        var now = Floor(asOf);
        switch (text.Length)
        {
            case 4 when Clock(text) is { } clock:
                var today = now.InUtc().Date.AtStartOfDayInZone(DateTimeZone.Utc).ToInstant() + clock;
                return ahead ? (today < now ? today + Day : today)
                    : today > now ? today - Day
                    : today;
            case 6 when Clock(text[2..]) is { } clock:
                var day = Number(text[..2]);
                for (var days = 0; days <= 13; days++)
                    foreach (var date in (LocalDate[])[now.InUtc().Date.PlusDays(-days), now.InUtc().Date.PlusDays(days)])
                        if (date.Day == day)
                            return date.AtStartOfDayInZone(DateTimeZone.Utc).ToInstant() + clock;
                return null;
            case 12:
                var parsed = Long.Parse(text.ToString());
                return parsed.Success && parsed.Value.InUtc().Year is >= 1900 and <= 2499 ? parsed.Value : null;
            default:
                return null;
        }
    }

    /// <summary>From the start of the first minute to the end of the last.</summary>
    public static Happened? ReadRange(string text, Instant asOf)
    {
        var dash = text.IndexOf('-', StringComparison.Ordinal);
        if (dash < 0)
            return Read(text, asOf) is { } at ? Until(at, at) : null;
        if (Read(text.AsSpan(0, dash), asOf) is not { } first)
            return null;
        var last = dash == text.Length - 1 ? Floor(asOf) : Read(text.AsSpan(dash + 1), first, ahead: true);
        return last is { } end && end >= first ? Until(first, end) : null;
    }

    private static Happened Until(Instant first, Instant last) => new(first, last + Minute - Duration.FromSeconds(1));

    private static Duration? Clock(ReadOnlySpan<char> text)
    {
        var (hour, minute) = (Number(text[..2]), Number(text[2..]));
        return hour < 24 && minute < 60 ? Duration.FromMinutes((hour * 60) + minute) : null;
    }

    private static int Number(ReadOnlySpan<char> digits) => int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
}
