using System.Collections.Immutable;

namespace Farhold.WayOut;

/// <summary>One of several laws, each with its probability: a way chosen by weather or luck.</summary>
public sealed class Mixture : Distribution
{
    private readonly ImmutableArray<(double Probability, Distribution Law)> parts;

    /// <exception cref="ArgumentException">The probabilities don't add up to 1.</exception>
    public Mixture(params ImmutableArray<(double Probability, Distribution Law)> parts)
    {
        if (parts.Any(p => !(p.Probability >= 0)) || !(Math.Abs(parts.Sum(p => p.Probability) - 1) < 1e-9))
            throw new ArgumentException("The probabilities of a mixture are 0 or more and add up to 1.", nameof(parts));
        this.parts = [.. parts.Where(p => p.Probability > 0)];
    }

    public override double Mean => parts.Sum(p => p.Probability * p.Law.Mean);

    public override double Variance =>
        parts.Sum(p => p.Probability * (p.Law.Variance + (p.Law.Mean * p.Law.Mean))) - (Mean * Mean);

    public override double Cdf(double x) => parts.Sum(p => p.Probability * p.Law.Cdf(x));

    public override double Quantile(double p) =>
        Bisected(p, parts.Min(part => part.Law.Quantile(p)), parts.Max(part => part.Law.Quantile(p)));
}

/// <summary>The first of several independent numbers: whichever comes first.</summary>
public sealed class Least(params ImmutableArray<Distribution> laws) : Distribution
{
    public override double Mean => Quadrature.Mean(this);

    public override double Variance => Quadrature.Variance(this);

    public override double Cdf(double x) => 1 - laws.Aggregate(1.0, (product, law) => product * (1 - law.Cdf(x)));

    public override double Quantile(double p) =>
        Bisected(p, laws.Min(l => l.Quantile(1 - Math.Pow(1 - p, 1.0 / laws.Length))), laws.Min(l => l.Quantile(p)));
}

/// <summary>The last of several independent numbers: all are needed.</summary>
public sealed class Greatest(params ImmutableArray<Distribution> laws) : Distribution
{
    public override double Mean => Quadrature.Mean(this);

    public override double Variance => Quadrature.Variance(this);

    public override double Cdf(double x) => laws.Aggregate(1.0, (product, law) => product * law.Cdf(x));

    public override double Quantile(double p) =>
        Bisected(p, laws.Max(l => l.Quantile(p)), laws.Max(l => l.Quantile(Math.Pow(p, 1.0 / laws.Length))));
}

/// <summary>Moments without a closed form: the quantile over the normal score against its density, by the trapezium rule.</summary>
/// <remarks>The density and all its derivatives vanish at the ends, where that rule converges fastest; kinks leave about 1e-7 of the spread.</remarks>
internal static class Quadrature
{
    private const int Steps = 6000;
    private const double Last = 8;

    public static double Mean(Distribution law) => Expect(law, x => x);

    public static double Variance(Distribution law)
    {
        var mean = Mean(law);
        return Expect(law, x => (x - mean) * (x - mean));
    }

    private static double Expect(Distribution law, Func<double, double> of)
    {
        const double step = 2 * Last / Steps;
        var sum = 0.0;
        for (var i = 0; i <= Steps; i++)
        {
            var z = -Last + (i * step);
            sum += NormalLaw.Density(z) * of(law.AtScore(z));
        }

        return sum * step;
    }
}
