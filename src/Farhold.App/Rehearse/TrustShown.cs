using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>How far a rehearsal can be trusted, as it is shown.</summary>
/// <param name="Heads">Of the columns of the tables.</param>
/// <param name="Groups">Published figures beside the model's, a table each: its title, and rows of a cell for each head.</param>
public sealed record TrustShown(
    ImmutableArray<(string Title, ImmutableArray<string> Lines)> Parts,
    ImmutableArray<string> Heads,
    ImmutableArray<(string Title, ImmutableArray<ImmutableArray<string>> Rows)> Groups
);
