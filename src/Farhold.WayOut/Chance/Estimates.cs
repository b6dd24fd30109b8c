namespace Farhold.WayOut.Chance;

/// <summary>A quantile of a sample with its 95 % interval.</summary>
/// <param name="Low">Lower end of the interval, an order statistic.</param>
/// <param name="Trials">How many figures it rests on.</param>
public readonly record struct QuantileEstimate(double P, double Value, double Low, double High, int Trials)
{
    /// <summary>From figures in rising order, definition 7 of Hyndman and Fan 1996 (American Statistician 50:361–365).</summary>
    /// <remarks>Interval: order statistics around n·p, by the normal approximation to the binomial count below the quantile.</remarks>
    /// <exception cref="ArgumentException">There are no figures.</exception>
    public static QuantileEstimate Of(ReadOnlySpan<double> sorted, double p)
    {
        if (sorted.IsEmpty)
            throw new ArgumentException("A quantile needs at least one figure.", nameof(sorted));
        var n = sorted.Length;
        var half = 1.959963984540054 * Math.Sqrt(n * p * (1 - p));
        var below = Math.Clamp((int)Math.Floor((n * p) - half) - 1, 0, n - 1);
        var above = Math.Clamp((int)Math.Ceiling((n * p) + half), 0, n - 1);
        return new(p, At(sorted, p), sorted[below], sorted[above], n);
    }

    internal static double At(ReadOnlySpan<double> sorted, double p)
    {
        var place = (sorted.Length - 1) * p;
        var whole = (int)place;
        var next = Math.Min(whole + 1, sorted.Length - 1);
        // Between two that never came there is no middle: infinity minus infinity is no number.
        // Exactly at one of them there is nothing to add, even where the next never came.
        return place == whole || sorted[whole] == sorted[next]
            ? sorted[whole]
            : sorted[whole] + ((place - whole) * (sorted[next] - sorted[whole]));
    }
}

/// <summary>A probability counted in a sample, with its standard error and 95 % interval.</summary>
public readonly record struct ProbabilityEstimate(int Hits, int Trials)
{
    public double Value => (double)Hits / Trials;

    public double StandardError => Math.Sqrt(Value * (1 - Value) / Trials);

    public double Low => Wilson(-1);

    public double High => Wilson(1);

    /// <summary>Wilson 1927 (JASA 22:209–212): never empty, even when nothing or everything was hit.</summary>
    private double Wilson(int side)
    {
        const double z = 1.959963984540054;
        double n = Trials,
            share = z * z / n;
        var middle = Value + (share / 2);
        var half = z * Math.Sqrt((Value * (1 - Value) / n) + (share / (4 * n)));
        return Math.Clamp((middle + (side * half)) / (1 + share), 0, 1);
    }
}
