using NodaTime;

namespace Farhold.Values;

/// <summary>A span of time known only to lie between two values, both at least zero.</summary>
/// <remarks><c>default</c> is exactly zero. A limit is judged on the side that is worse for the casualty: see each use.</remarks>
public readonly record struct Elapsed
{
    /// <exception cref="ArgumentException">An end is negative, or <paramref name="max"/> is below <paramref name="min"/>.</exception>
    public Elapsed(Duration min, Duration max)
    {
        if (min < Duration.Zero || max < min)
            throw new ArgumentException($"An elapsed time needs 0 ≤ min ≤ max; got {min} and {max}.", nameof(max));
        Min = min;
        Max = max;
    }

    public Duration Min { get; }

    public Duration Max { get; }

    public static Elapsed Exactly(Duration d) => new(d, d);

    public static Elapsed operator +(Elapsed a, Elapsed b) => new(a.Min + b.Min, a.Max + b.Max);

    public static Elapsed Add(Elapsed left, Elapsed right) => left + right;
}
