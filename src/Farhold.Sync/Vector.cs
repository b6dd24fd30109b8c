using System.Collections.Immutable;

namespace Farhold.Sync;

/// <summary>How many lines of a device are held from its first on without a gap, and what they are.</summary>
/// <param name="Length">From 1.</param>
/// <param name="Running">
/// The first 8 bytes of Dₙ, where D₀ is 32 zero bytes and Dₙ = SHA-256(Dₙ₋₁ ‖ SHA-256(line n)). Of several lines under one number the
/// first in the order of bytes counts.
/// </param>
public readonly record struct Prefix(int Length, ulong Running);

/// <summary>All that one side holds of a casualty: two sides with equal vectors hold the same lines.</summary>
/// <param name="Have">By device; one without its first line is not in it.</param>
/// <param name="Odd"><see cref="LineHash.Short"/> of every line that no prefix counts.</param>
public sealed record Vector(ImmutableSortedDictionary<string, Prefix> Have, ImmutableSortedSet<ulong> Odd)
{
    public static readonly Vector Empty = new(
        ImmutableSortedDictionary.Create<string, Prefix>(StringComparer.Ordinal),
        ImmutableSortedSet<ulong>.Empty
    );

    public Prefix this[string device] => Have.GetValueOrDefault(device);

    public bool Equals(Vector? other) => other is not null && Have.SequenceEqual(other.Have) && Odd.SequenceEqual(other.Odd);

    public override int GetHashCode() => HashCode.Combine(Have.Count, Odd.Count);
}
