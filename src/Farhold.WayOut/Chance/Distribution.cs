namespace Farhold.WayOut;

/// <summary>What is known of a number before it happens. Units are the caller's.</summary>
public abstract class Distribution
{
    private protected Distribution()
    {
    }

    public abstract double Mean { get; }

    public abstract double Variance { get; }

    public double StandardDeviation => Math.Sqrt(Variance);

    /// <summary>P(X ≤ x).</summary>
    public abstract double Cdf(double x);

    /// <summary>The least x that P(X ≤ x) reaches p, for p between 0 and 1.</summary>
    public abstract double Quantile(double p);

    /// <summary>The value as far out as a standard normal score: the quantile of Φ(z), never falling as z grows but for rounding.</summary>
    public virtual double AtScore(double z) => Quantile(NormalLaw.Cdf(z));

    /// <summary><see cref="AtScore"/> of each, in place; it allocates nothing.</summary>
    internal virtual void AtScores(Span<double> scores)
    {
        for (var i = 0; i < scores.Length; i++)
            scores[i] = AtScore(scores[i]);
    }

    private protected static double Finite(double value, string name) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "A distribution takes finite figures.");

    /// <summary>The quantile of a continuous law from its distribution function, by bisection between two bounds.</summary>
    private protected double Bisected(double p, double low, double high)
    {
        for (var step = 0; step < 200 && high - low > 1e-14 * Math.Max(Math.Abs(low), Math.Abs(high)); step++)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high)
                break;
            if (Cdf(middle) < p)
                low = middle;
            else
                high = middle;
        }

        return high;
    }
}

/// <summary>Always the same.</summary>
public sealed class Constant(double value) : Distribution
{
    private readonly double value = Finite(value, nameof(value));

    public override double Mean => value;

    public override double Variance => 0;

    public override double Cdf(double x) => x >= value ? 1 : 0;

    public override double Quantile(double p) => value;

    public override double AtScore(double z) => value;
}

/// <summary>Anywhere between two ends, all alike.</summary>
public sealed class Uniform : Distribution
{
    private readonly double low, width;

    public Uniform(double low, double high)
    {
        this.low = Finite(low, nameof(low));
        width = Finite(high, nameof(high)) - low;
        ArgumentOutOfRangeException.ThrowIfLessThan(high, low);
    }

    public override double Mean => low + (width / 2);

    public override double Variance => width * width / 12;

    public override double Cdf(double x) => x >= low + width ? 1 : x <= low ? 0 : (x - low) / width;

    public override double Quantile(double p) => low + (width * p);
}

/// <summary>Straight up from the least to the likeliest and straight down to the greatest.</summary>
public sealed class Triangular : Distribution
{
    private readonly double low, likely, high;

    public Triangular(double low, double likely, double high)
    {
        this.low = Finite(low, nameof(low));
        this.likely = Finite(likely, nameof(likely));
        this.high = Finite(high, nameof(high));
        ArgumentOutOfRangeException.ThrowIfLessThan(likely, low);
        ArgumentOutOfRangeException.ThrowIfLessThan(high, likely);
    }

    public override double Mean => (low + likely + high) / 3;

    public override double Variance =>
        ((low * low) + (likely * likely) + (high * high) - (low * likely) - (low * high) - (likely * high)) / 18;

    public override double Cdf(double x) =>
        x >= high ? 1
        : x <= low ? 0
        : x <= likely ? (x - low) * (x - low) / ((high - low) * (likely - low))
        : 1 - ((high - x) * (high - x) / ((high - low) * (high - likely)));

    public override double Quantile(double p)
    {
        var width = high - low;
        return width == 0 ? low
            : p * width <= likely - low ? low + Math.Sqrt(p * width * (likely - low))
            : high - Math.Sqrt((1 - p) * width * (high - likely));
    }
}

/// <summary>The bell curve; reaches below 0, so not for times on its own.</summary>
public sealed class Normal : Distribution
{
    private readonly double mean, deviation;

    public Normal(double mean, double standardDeviation)
    {
        this.mean = Finite(mean, nameof(mean));
        deviation = Finite(standardDeviation, nameof(standardDeviation));
        ArgumentOutOfRangeException.ThrowIfNegative(standardDeviation);
    }

    public override double Mean => mean;

    public override double Variance => deviation * deviation;

    public override double Cdf(double x) => deviation == 0 ? (x >= mean ? 1 : 0) : NormalLaw.Cdf((x - mean) / deviation);

    public override double Quantile(double p) => deviation == 0 ? mean : AtScore(NormalLaw.Quantile(p));

    public override double AtScore(double z) => mean + (deviation * z);
}

/// <summary>Waiting for what comes at a steady rate.</summary>
public sealed class Exponential : Distribution
{
    private readonly double mean;

    public Exponential(double mean)
    {
        this.mean = Finite(mean, nameof(mean));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mean);
    }

    public override double Mean => mean;

    public override double Variance => mean * mean;

    public override double Cdf(double x) => x <= 0 ? 0 : -double.ExpM1(-x / mean);

    public override double Quantile(double p) => -mean * double.LogP1(-p);

    // Through the upper tail, whose digits 1 − Φ(z) would lose.
    public override double AtScore(double z) => -mean * Math.Log(NormalLaw.Cdf(-z));
}
