using NodaTime;

namespace Farhold.Values;

/// <summary>When something happened: an instant, or only known to lie between two.</summary>
/// <remarks>
/// Both ends belong to the interval. Equality compares both ends. <c>default</c> is the Unix epoch, an instant
/// like any other. There is deliberately no order on the type: whether one thing came before another can be
/// unknown, and callers must say which side they judge on.
/// </remarks>
public readonly record struct Happened
{
    /// <exception cref="ArgumentException"><paramref name="latest"/> is before <paramref name="earliest"/>.</exception>
    public Happened(Instant earliest, Instant latest)
    {
        if (latest < earliest)
            throw new ArgumentException($"The latest time {latest} is before the earliest {earliest}.", nameof(latest));
        Earliest = earliest;
        Latest = latest;
    }

    public Instant Earliest { get; }

    public Instant Latest { get; }

    public bool IsInstant => Earliest == Latest;

    public static Happened At(Instant instant) => new(instant, instant);

    /// <summary>True only if every possible time of this is before every possible time of the other.</summary>
    public bool SurelyBefore(Happened other) => Latest < other.Earliest;

    /// <summary>How long ago this was at <paramref name="now"/>; the part after it counts as not yet begun, zero.</summary>
    public Elapsed Until(Instant now) => new(Max(now - Latest), Max(now - Earliest));

    /// <summary>The same, with neither end later than <paramref name="limit"/>.</summary>
    public Happened NotAfter(Instant limit) => new(Instant.Min(Earliest, limit), Instant.Min(Latest, limit));

    private static Duration Max(Duration d) => d < Duration.Zero ? Duration.Zero : d;
}
