using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>A debrief as it is shown.</summary>
/// <param name="Intro">What it is, and whether it is of the rehearsal as it was.</param>
/// <param name="IsClean">Nothing was left to remark.</param>
public sealed record Debriefing(
    ImmutableArray<string> Intro,
    ImmutableArray<(string Title, ImmutableArray<string> Lines)> Parts,
    bool IsClean
)
{
    /// <summary>From the plain text of the debrief: a block of lines, then a title and indented lines for each part.</summary>
    public static Debriefing Read(string text, bool isClean)
    {
        var blocks = text.Split("\n\n", StringSplitOptions.RemoveEmptyEntries)
            .Select(b => b.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            .ToArray();
        return new([.. blocks[0]], [.. blocks[1..].Select(b => (b[0], b[1..].Select(l => l.Trim()).ToImmutableArray()))], isClean);
    }
}
