using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>A debrief as it is shown.</summary>
/// <param name="Intro">What it is, and whether it is of the rehearsal as it was.</param>
/// <param name="IsClean">Nothing was left to remark.</param>
public sealed record Debriefing(
    ImmutableArray<string> Intro,
    ImmutableArray<(string Title, ImmutableArray<string> Lines)> Parts,
    bool IsClean
);
