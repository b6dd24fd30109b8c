using NodaTime;

namespace Farhold.Rehearsal.Debriefs;

internal static class DebriefWords
{
    public static string Bleeding => InputWords.Name("bleeding");

    /// <summary>Under two minutes in seconds, else as everywhere.</summary>
    public static string Span(double seconds) =>
        seconds < 120
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Round(seconds)} s")
            : Say.Duration(Duration.FromSeconds(seconds));

    public static string Clock(double? seconds) => seconds is { } at ? RunReport.Clock(at) : DebriefTexts.NotAtAll;

    public static string Verdict(Verdict? verdict) => verdict is { } known ? VerdictWords.Head(known) : DebriefTexts.IgnoranceNothing;
}
