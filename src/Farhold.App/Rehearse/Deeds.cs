using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>What a trainee can do for the casualty that no entry says.</summary>
public static class Deeds
{
    public const string Wrap = "wrap";

    public static ImmutableArray<string> All { get; } = [Wrap];
}
