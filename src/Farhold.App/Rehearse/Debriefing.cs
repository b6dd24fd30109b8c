using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>A debrief as it is shown.</summary>
/// <param name="Intro">What it is, and whether it is of the rehearsal as it was.</param>
/// <param name="Pictures">Each with all that it shows as a table.</param>
/// <param name="IsClean">Nothing was left to remark.</param>
public sealed record Debriefing(
    ImmutableArray<string> Intro,
    ImmutableArray<(string Title, ImmutableArray<string> Lines)> Parts,
    ImmutableArray<PictureShown> Pictures,
    bool IsClean
);

/// <param name="Svg">Its colours are those of <c>charts.css</c>.</param>
/// <param name="Key">What its lines and fills are.</param>
/// <param name="Rows">Of as many cells as there are heads.</param>
public sealed record PictureShown(
    string Title,
    string Svg,
    ImmutableArray<string> Key,
    ImmutableArray<string> Heads,
    ImmutableArray<ImmutableArray<string>> Rows
);
