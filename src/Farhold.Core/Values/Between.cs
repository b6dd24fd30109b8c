namespace Farhold.Values;

/// <summary>A number known only to lie between two, both included.</summary>
public readonly record struct Between
{
    /// <exception cref="ArgumentException">An end is not a number, or they are the wrong way round.</exception>
    public Between(double low, double high)
    {
        if (!(low <= high))
            throw new ArgumentException($"A range needs low ≤ high; got {low} and {high}.", nameof(high));
        (Low, High) = (low, high);
    }

    public double Low { get; }

    public double High { get; }

    public bool IsExact => Low == High;

    public static Between Exactly(double value) => new(value, value);

    /// <summary>The least range that holds both.</summary>
    public static Between Hull(Between a, Between b) => new(Math.Min(a.Low, b.Low), Math.Max(a.High, b.High));

    public static Between operator +(Between a, Between b) => new(a.Low + b.Low, a.High + b.High);

    public static Between Add(Between left, Between right) => left + right;
}
