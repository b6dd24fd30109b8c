using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Text;

/// <summary>Spans of time in the form of ISO 8601, of hours, minutes and seconds: <c>PT1H2M</c>.</summary>
public static class IsoSpan
{
    private static readonly Duration Max = Duration.FromDays(30);

    /// <summary>Whole seconds, rounded down.</summary>
    public static string Write(Duration span)
    {
        var seconds = (long)Math.Floor(span.TotalSeconds);
        var (h, m, s) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
        return seconds == 0 ? "PT0S" : string.Create(CultureInfo.InvariantCulture,
            $"PT{(h > 0 ? h + "H" : "")}{(m > 0 ? m + "M" : "")}{(s > 0 ? s + "S" : "")}");
    }

    /// <summary>A span above zero and at most 30 days without years or months, or null.</summary>
    public static Duration? TryParse(string text)
    {
        try
        {
            var read = PeriodPattern.NormalizingIso.Parse(text);
            if (!read.Success || read.Value.Years != 0 || read.Value.Months != 0)
                return null;
            var span = read.Value.ToDuration();
            return span > Duration.Zero && span <= Max ? span : null;
        }
        catch (OverflowException)
        {
            return null;
        }
    }
}
