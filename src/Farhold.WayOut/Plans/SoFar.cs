using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>What is known to have become of a leg.</summary>
/// <param name="Path">Where it stands in the plan: "3", "3.2.1".</param>
/// <param name="At">When it was begun, done or given up.</param>
/// <param name="Share">Of a leg under way, how much of its ground was covered at <paramref name="At"/>; null where nobody knows.</param>
public sealed record LegMark(string Path, StageState State, Instant At, double? Share = null)
{
    /// <summary>Of a leg partly covered, when it was begun.</summary>
    public Instant? Since { get; init; }
}

/// <summary>How a plan has gone until now.</summary>
/// <remarks>Of several marks of one leg in one state the last written counts.</remarks>
public sealed record SoFar(ImmutableArray<LegMark> Marks, Instant Now)
{
    internal LegMark? Of(string path, StageState state) => Marks.LastOrDefault(m => m.Path == path && m.State == state && m.At <= Now);

    /// <summary>Whether anything is known of a leg at this place or within it.</summary>
    internal bool Knows(string path) =>
        Marks.Any(m => m.At <= Now && (m.Path == path || m.Path.StartsWith($"{path}.", StringComparison.Ordinal)));

    /// <summary>Whether something within is under way or done.</summary>
    internal bool Comes(string path) =>
        Marks.Any(m => m.At <= Now && m.State != StageState.Failed && m.Path.StartsWith($"{path}.", StringComparison.Ordinal));

    internal bool Fails(string path) => FailedAt(path) is not null;

    /// <summary>When something within was first given up.</summary>
    internal Instant? FailedAt(string path) =>
        Marks
            .Where(m => m.At <= Now && m.State == StageState.Failed && m.Path.StartsWith($"{path}.", StringComparison.Ordinal))
            .Select(m => (Instant?)m.At)
            .Min();
}
