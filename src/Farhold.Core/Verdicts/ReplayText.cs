using NodaTime;

namespace Farhold.Verdicts;

/// <summary>A replay as a table, a row a turn, written as the turns are found.</summary>
public static class ReplayText
{
    /// <summary>Characters of a line where nothing else is known.</summary>
    public const int UsualWidth = 110;

    private const int TimeWidth = 16;
    private const int LeastWidth = 60;

    /// <param name="width">Characters of a line, at least 60 (less is taken as that).</param>
    public static void Write(
        CareRecord record,
        Rulebook rules,
        Instant until,
        IReadOnlyList<Refusal> refused,
        TextWriter to,
        int width = UsualWidth
    )
    {
        to.Write($"{VerdictWords.Caution}\n");
        foreach (var line in RulesWords.Of(rules))
            to.Write($"{line}\n");
        if (refused.Count > 0)
            to.Write(VerdictTexts.ReplayLocalRefused(rules.Protocol.Named) + "\n");
        to.Write(VerdictTexts.ReplayHindsight + "\n");
        to.Write("\n");
        var left = Math.Max(width, LeastWidth) - TimeWidth - 4;
        var table = new TextTable(to, TimeWidth, left / 2, left - (left / 2));
        table.Row(VerdictTexts.ReplayTime, VerdictTexts.ReplayChanged, VerdictTexts.ReplayBecause);
        table.Rule();
        foreach (var turn in Replay.Of(record, rules, until))
            table.Row(
                Say.Minute(turn.At) + (turn.JustAfter ? "\n" + VerdictTexts.ReplayJustAfter : ""),
                string.Join('\n', turn.After.Since(turn.Before)),
                string.Join('\n', turn.Because)
            );
        to.Write("\n" + VerdictTexts.ReplayUpTo(Say.Time(until)) + "\n");
    }
}
