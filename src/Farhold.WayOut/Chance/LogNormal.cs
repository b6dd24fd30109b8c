namespace Farhold.WayOut.Chance;

/// <summary>A number whose logarithm is normal, set off by a shift.</summary>
public sealed class LogNormal : Distribution
{
    private readonly double mu,
        shift;

    private LogNormal(double mu, double sigma, double shift)
    {
        this.mu = Finite(mu, nameof(mu));
        Sigma = Finite(sigma, nameof(sigma));
        this.shift = Finite(shift, nameof(shift));
        ArgumentOutOfRangeException.ThrowIfNegative(sigma);
    }

    /// <summary>Mean of the logarithms, without the shift.</summary>
    public double Mu => mu;

    /// <summary>Standard deviation of the logarithms.</summary>
    public double Sigma { get; }

    public double Median => shift + Math.Exp(mu);

    public override double Mean => shift + Math.Exp(mu + (Sigma * Sigma / 2));

    public override double Variance => double.ExpM1(Sigma * Sigma) * Math.Exp((2 * mu) + (Sigma * Sigma));

    public static LogNormal FromMedian(double median, double sigma) => new(Math.Log(Positive(median, nameof(median))), sigma, 0);

    /// <summary>Through P10 and P90; the middle is then their geometric mean.</summary>
    public static LogNormal FromQuantiles(double p10, double p90)
    {
        Ordered(p10, p90);
        return new((Math.Log(Positive(p10, nameof(p10))) + Math.Log(p90)) / 2, Math.Log(p90 / p10) / (2 * NormalLaw.Z90), 0);
    }

    /// <summary>Through P10, P50 and P90, shifted as far as the three ask for.</summary>
    /// <remarks>Where the middle is not below the mean of the ends no shift fits, and P50 gives way.</remarks>
    public static LogNormal FromQuantiles(double p10, double p50, double p90)
    {
        Ordered(p10, p50);
        Ordered(p50, p90);
        Positive(p10, nameof(p10));
        if (p10 == p90)
            return FromMedian(p50, 0);
        var bend = p10 + p90 - (2 * p50);
        var shift = bend > 0 ? ((p10 * p90) - (p50 * p50)) / bend : double.NegativeInfinity;
        // A shift below 0 would let a time be negative.
        return shift > 0 && shift < p10
            ? new(Math.Log(p50 - shift), Math.Log((p90 - shift) / (p10 - shift)) / (2 * NormalLaw.Z90), shift)
            : FromQuantiles(p10, p90);
    }

    public static LogNormal FromMedianAndP90(double p50, double p90)
    {
        Ordered(p50, p90);
        return FromMedian(p50, Math.Log(p90 / p50) / NormalLaw.Z90);
    }

    public static LogNormal FromMean(double mean, double standardDeviation)
    {
        var variance = double.LogP1(Math.Pow(standardDeviation / Positive(mean, nameof(mean)), 2));
        return new(Math.Log(mean) - (variance / 2), Math.Sqrt(variance), 0);
    }

    /// <summary>Fitted to positive figures: mean and sample standard deviation of their logarithms.</summary>
    public static LogNormal Fitted(IReadOnlyCollection<double> figures)
    {
        var logs = figures.Select(f => Math.Log(Positive(f, nameof(figures)))).ToArray();
        var mean = logs.Average();
        return new(mean, Math.Sqrt(logs.Sum(l => (l - mean) * (l - mean)) / (logs.Length - 1)), 0);
    }

    public override double Cdf(double x) =>
        x <= shift ? 0
        : Sigma == 0 ? (x >= Median ? 1 : 0)
        : NormalLaw.Cdf((Math.Log(x - shift) - mu) / Sigma);

    public override double Quantile(double p) => Sigma == 0 ? Median : AtScore(NormalLaw.Quantile(p));

    public override double AtScore(double z) => shift + Columns.Exp(mu + (Sigma * z));

    /// <summary>Adds a sample for each score, mixed from its own and a shared one, as drawing and adding one by one would.</summary>
    internal void AddTo(Span<double> to, ReadOnlySpan<double> scores, double own, ReadOnlySpan<double> other, double all) =>
        Columns.AddExp(to, scores, own, other, all, mu, Sigma, shift);

    internal override void AtScores(Span<double> scores) => Columns.Exp(scores, mu, Sigma, shift);

    private static double Positive(double value, string name) =>
        value > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "A lognormal law takes figures above 0.");

    private static void Ordered(double low, double high) => ArgumentOutOfRangeException.ThrowIfLessThan(high, low);
}
