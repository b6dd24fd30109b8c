using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Text;

/// <summary>Spans of time in the form of ISO 8601, written in hours, minutes and seconds: <c>PT1H2M</c>.</summary>
public static class IsoSpan
{
    /// <summary>The longest span that any file may give.</summary>
    public static readonly Duration Longest = Duration.FromDays(30);

    /// <summary>Whole seconds, rounded down.</summary>
    public static string Write(Duration span) => Write((long)Math.Floor(span.TotalSeconds));

    /// <summary>Whole seconds, the nearest.</summary>
    public static string WriteNearest(Duration span) => Write((long)Math.Round(span.TotalSeconds));

    /// <summary>
    /// A span of weeks, days, hours, minutes and seconds, these with a fraction where need be; null where the text is none, or
    /// where it has years or months, whose length differs.
    /// </summary>
    public static Duration? Read(string text)
    {
        try
        {
            var read = PeriodPattern.NormalizingIso.Parse(text);
            return read.Success && read.Value.Years == 0 && read.Value.Months == 0 ? read.Value.ToDuration() : null;
        }
        catch (OverflowException)
        {
            return null;
        }
    }

    private static string Write(long seconds)
    {
        if (seconds < 0)
            return "-" + Write(-seconds);
        var (h, m, s) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
        return seconds == 0
            ? "PT0S"
            : string.Create(CultureInfo.InvariantCulture, $"PT{(h > 0 ? h + "H" : "")}{(m > 0 ? m + "M" : "")}{(s > 0 ? s + "S" : "")}");
    }
}
