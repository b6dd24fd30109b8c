using System.Collections.Immutable;

namespace Farhold.WayOut.Ground;

/// <summary>Gathers warnings; of one kind it keeps the first place and counts the rest.</summary>
internal sealed class TrackWarnings
{
    private readonly Dictionary<TrackWarningKind, (int Line, int Column, int Count, Func<int, string> Text)> found = [];

    /// <param name="text">The sentence for a number of cases.</param>
    public void Add(TrackWarningKind kind, int line, int column, Func<int, string> text) =>
        found[kind] = found.TryGetValue(kind, out var first) ? first with { Count = first.Count + 1 } : (line, column, 1, text);

    public ImmutableArray<TrackWarning> InFileOrder() =>
        [
            .. found
                .OrderBy(w => (w.Value.Line, w.Value.Column, w.Key))
                .Select(w => new TrackWarning(w.Key, w.Value.Line, w.Value.Column, w.Value.Text(w.Value.Count))),
        ];
}
