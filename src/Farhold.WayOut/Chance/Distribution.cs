namespace Farhold.WayOut.Chance;

/// <summary>What is known of a number before it happens. Units are the caller's.</summary>
public abstract class Distribution
{
    private protected Distribution() { }

    public abstract double Mean { get; }

    public abstract double Variance { get; }

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
