using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Durations as ISO 8601 of days, hours, minutes and seconds: PT1H20M.</summary>
public static class DurationText
{
    /// <returns>Nothing where the text is no such duration, or a part has more than seven digits.</returns>
    public static Duration? Read(string text)
    {
        if (text.Length < 3 || text[0] != 'P')
            return null;
        var (at, inTime, last, sum) = (1, false, -1, Duration.Zero);
        while (at < text.Length)
        {
            if (text[at] == 'T' && !inTime)
            {
                (at, inTime) = (at + 1, true);
                if (at == text.Length)
                    return null;
                continue;
            }

            var start = at;
            while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] == '.'))
                at++;
            if (at == text.Length || !Number(text.AsSpan(start, at - start), text[at] == 'S', out var number))
                return null;
            var rank = inTime ? "HMS".IndexOf(text[at], StringComparison.Ordinal) + 1 : text[at] == 'D' ? 0 : -1;
            if (rank <= last || (inTime && rank == 0))
                return null;
            sum += rank switch
            {
                0 => Duration.FromDays(number),
                1 => Duration.FromHours(number),
                2 => Duration.FromMinutes(number),
                _ => Duration.FromSeconds(number),
            };
            (last, at) = (rank, at + 1);
        }

        return last < 0 ? null : sum;
    }

    /// <summary>Whole seconds, rounded; hours above 23 stay hours.</summary>
    public static string Write(Duration duration)
    {
        var seconds = (long)Math.Round(duration.TotalSeconds);
        var (sign, rest) = seconds < 0 ? ("-", -seconds) : ("", seconds);
        var (hours, minutes) = (rest / 3600, rest / 60 % 60);
        var text = (hours > 0 ? $"{hours}H" : "") + (minutes > 0 ? $"{minutes}M" : "") + (rest % 60 > 0 ? $"{rest % 60}S" : "");
        return sign + "PT" + (text.Length > 0 ? text : "0S");
    }

    /// <summary>Digits, and a fraction after them for seconds only.</summary>
    private static bool Number(ReadOnlySpan<char> text, bool fraction, out double number)
    {
        number = 0;
        var point = text.IndexOf('.');
        var whole = point < 0 ? text : text[..point];
        return whole.Length is > 0 and <= 7
            && (point < 0 || (fraction && text[(point + 1)..] is { Length: > 0 and <= 9 } rest && !rest.Contains('.')))
            && double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);
    }
}
