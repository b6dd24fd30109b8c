using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>The criteria of a protocol that are signs of shock, and what they ask about: sorted out once, asked at every look.</summary>
internal sealed class ShockSigns(ImmutableArray<Criterion> criteria)
{
    /// <summary>All that makes up shock, but for what asks about a limb.</summary>
    public ImmutableArray<Criterion> Whole { get; } = [.. criteria.Where(c => c.Group == Criterion.ShockGroup && !c.Condition.AsksOfLimb)];

    /// <summary>Those that are read off the casualty.</summary>
    public ImmutableArray<Criterion> Seen { get; } = [.. criteria.Where(c => c.IsSign)];

    /// <summary>What has to be known at a look.</summary>
    public ImmutableArray<Input> Needed { get; } =
    [.. criteria.Where(c => c.IsSign).SelectMany(c => Asked(c.Condition)).Where(i => i.IsSign && i != Input.ShockIndex).Distinct()];

    /// <summary>All that a sign asks about, but for what only counts where it was measured.</summary>
    private static IEnumerable<Input> Asked(Condition condition) =>
        condition switch
        {
            Condition.All all => all.Parts.SelectMany(Asked),
            Condition.Any any => any.Parts.SelectMany(Asked),
            Condition.Not not => Asked(not.Part),
            Condition.Compare { Measured: true } => [],
            _ => condition.Inputs,
        };
}
