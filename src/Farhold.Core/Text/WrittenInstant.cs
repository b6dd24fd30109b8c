using System.Text;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Text;

/// <summary>Instants as the record writes them: RFC 3339, by us always in UTC with a final Z.</summary>
public static class WrittenInstant
{
    /// <summary>Years 1900 to 2500: wide enough for any wrong clock, narrow enough for safe sums.</summary>
    private const int FirstYear = 1899;
    private const int LastYear = 2500;
    private static readonly Instant Min = Instant.FromUtc(1900, 1, 1, 0, 0);
    private static readonly Instant Max = Instant.FromUtc(2500, 1, 1, 0, 0);

    public static string Write(Instant instant) => TimeText.Utc(instant);

    /// <inheritdoc cref="TryParse(ReadOnlySpan{byte})"/>
    public static Instant? TryParse(string text) => TryParse(Encoding.UTF8.GetBytes(text));

    /// <summary>The instant, or null if the text is none or lies outside the years 1900 to 2500.</summary>
    public static Instant? TryParse(ReadOnlySpan<byte> utf8)
    {
        var instant = Plain(utf8) ?? Any(utf8);
        return instant >= Min && instant < Max ? instant : null;
    }

    /// <summary>The common form <c>2031-05-04T02:10:00Z</c>, read without allocation.</summary>
    private static Instant? Plain(ReadOnlySpan<byte> s)
    {
        if (s.Length != 20 || s[4] != '-' || s[7] != '-' || s[10] != 'T' || s[13] != ':' || s[16] != ':' || s[19] != 'Z')
            return null;
        int year = Digits(s[..4]),
            month = Digits(s[5..7]),
            day = Digits(s[8..10]);
        int hour = Digits(s[11..13]),
            minute = Digits(s[14..16]),
            second = Digits(s[17..19]);
        if (
            (year | month | day | hour | minute | second) < 0
            || year < 1900
            || month is < 1 or > 12
            || day < 1
            || day > DateTime.DaysInMonth(year, month)
            || hour > 23
            || minute > 59
            || second > 59
        )
            return null;
        return Instant.FromUtc(year, month, day, hour, minute, second);
    }

    /// <summary>The number that digits alone write; −1 if anything else is among them.</summary>
    internal static int Digits(ReadOnlySpan<byte> s)
    {
        var value = 0;
        foreach (var c in s)
        {
            if (c is < (byte)'0' or > (byte)'9')
                return -1;
            value = (value * 10) + (c - '0');
        }

        return value;
    }

    private static Instant? Any(ReadOnlySpan<byte> utf8)
    {
        if (utf8.Length is < 16 or > 40)
            return null;
        Span<char> chars = stackalloc char[utf8.Length];
        for (var i = 0; i < utf8.Length; i++)
        {
            if (utf8[i] > 127)
                return null;
            chars[i] = (char)utf8[i];
        }

        var read = OffsetDateTimePattern.Rfc3339.Parse(chars.ToString());
        // An offset could carry the first and the last years that there are past what an instant holds.
        return read is { Success: true, Value: { Year: >= FirstYear and <= LastYear } value } ? value.ToInstant() : null;
    }
}
