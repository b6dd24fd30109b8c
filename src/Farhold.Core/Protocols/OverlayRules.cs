using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>What a signed local protocol may loosen. A protocol lists which of them; everything else nobody may loosen.</summary>
public enum Loosens
{
    /// <summary>In no list: hard criteria, the time limit, the watch, what forbids and what is required.</summary>
    Nothing,
    Window,
    Soon,
    SoonProbability,

    /// <summary>How long a value stays fresh that no hard criterion and no sign of shock asks about.</summary>
    Freshness,
    CareFreshness,

    /// <summary>Criteria that are soft signs of shock.</summary>
    SoftSigns,

    /// <summary>Criteria that ask for advice first, those that are hard left out.</summary>
    Asks,

    /// <summary>Criteria by which an attempt gains nothing.</summary>
    Awaits,
    StepTimes,
    Tasks,
}

/// <summary>How far a local protocol may go, either way.</summary>
/// <param name="Window">The shortest and the longest; null where no bound is named.</param>
/// <param name="Soon">The longest, which is the tightest, and the shortest.</param>
/// <param name="Freshness">The shortest, by input.</param>
public sealed record OverlayRules(
    (Duration? Tightest, Duration? Loosest) Window,
    (Duration? Tightest, Duration? Loosest) Limit,
    (Duration? Tightest, Duration? Loosest) Soon,
    (double? Tightest, double? Loosest) SoonProbability,
    ImmutableSortedDictionary<string, Duration> Freshness,
    ImmutableSortedDictionary<string, Duration> CareFreshness,
    ImmutableArray<Loosens> Loosens
)
{
    /// <summary>No value may stay fresh longer than this many times what it does underneath (design).</summary>
    public const int FreshnessTimes = 2;

    /// <summary>Where a protocol says nothing: no number may be changed without a signature, and none loosened with one.</summary>
    public static readonly OverlayRules None = new(
        default,
        default,
        default,
        default,
        ImmutableSortedDictionary<string, Duration>.Empty,
        ImmutableSortedDictionary<string, Duration>.Empty,
        []
    );
}
