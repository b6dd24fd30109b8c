using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>A debrief as it is shown.</summary>
/// <param name="Intro">What it is, and whether it is of the rehearsal as it was.</param>
/// <param name="Pictures">Each with all that it shows as a table.</param>
/// <param name="Changes">What may be asked what-if of: a word for the run, and a title.</param>
/// <param name="IsClean">It was carried to its end, and nothing was left to remark.</param>
public sealed record Debriefing(
    ImmutableArray<string> Intro,
    ImmutableArray<(string Title, ImmutableArray<string> Lines)> Parts,
    ImmutableArray<PictureShown> Pictures,
    ImmutableArray<(string Word, string Title)> Changes,
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

/// <summary>What one change would have come to, so far.</summary>
/// <param name="Courses">As it was and with the change, with the same luck.</param>
/// <param name="Counts">The same of <paramref name="Done"/> casualties alike; empty before the first.</param>
public sealed record WhatIfShown(string Title, ImmutableArray<string> Courses, ImmutableArray<string> Counts, int Done, int Count)
{
    /// <summary>A dot for each casualty alike; null before the first.</summary>
    public PictureShown? Dots { get; init; }
}
