using System.Collections.Immutable;

namespace Farhold;

/// <summary>What a criterion does to the decision.</summary>
public enum Role
{
    /// <summary>Met: no attempt.</summary>
    Forbids,

    /// <summary>Not met: no attempt.</summary>
    Requires,

    /// <summary>Met: an attempt gains nothing.</summary>
    Awaits,
}

/// <summary>One question of a protocol, with its sentence and its sources.</summary>
/// <param name="Group">Criteria that together make up one thing, such as <c>shock</c>; null for none.</param>
/// <param name="Hard">Loosening it needs a named authority, and then every screen and print says so.</param>
/// <param name="Sources">Keys of the protocol's source list, at least one.</param>
public sealed record Criterion(
    string Id, Role Role, string? Group, bool Hard, string Text, ImmutableArray<string> Sources, Condition Condition);
