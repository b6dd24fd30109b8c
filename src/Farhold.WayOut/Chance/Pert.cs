namespace Farhold.WayOut;

/// <summary>A beta law between a least and a greatest figure, heaped on the likeliest.</summary>
/// <remarks>
/// Source: modified PERT, read at rdocumentation.org (mc2d pert) and vosesoftware.com; lambda 4 is classical, 2 to 4 suits guesses.
/// Sampling reads a table over the normal score, good to 2e-6 of the width; <see cref="Quantile"/> is exact.
/// </remarks>
public sealed class Pert : Distribution
{
    private const double LastScore = 5.5;
    private const int CellsPerScore = 10;
    private const int Cells = (int)(2 * LastScore * CellsPerScore);

    private readonly double low, width;
    private double[]? table;

    public Pert(double low, double likely, double high, double lambda = 4)
    {
        this.low = Finite(low, nameof(low));
        width = Finite(high, nameof(high)) - low;
        ArgumentOutOfRangeException.ThrowIfLessThan(likely, low);
        ArgumentOutOfRangeException.ThrowIfLessThan(high, likely);
        ArgumentOutOfRangeException.ThrowIfNegative(Finite(lambda, nameof(lambda)));
        Alpha = width > 0 ? 1 + (lambda * (likely - low) / width) : 1;
        Beta = width > 0 ? 1 + (lambda * (high - likely) / width) : 1;
    }

    public double Alpha { get; }

    public double Beta { get; }

    public override double Mean => low + (width * Alpha / (Alpha + Beta));

    public override double Variance => width * width * Alpha * Beta / ((Alpha + Beta) * (Alpha + Beta) * (Alpha + Beta + 1));

    /// <summary>The variance of classical PERT, ((greatest − least) / 6)²: an approximation to <see cref="Variance"/>.</summary>
    public double ClassicalVariance => width * width / 36;

    public override double Cdf(double x) => width == 0 ? (x >= low ? 1 : 0) : BetaLaw.Cdf((x - low) / width, Alpha, Beta);

    public override double Quantile(double p) => width == 0 ? low : low + (width * BetaLaw.Quantile(p, Alpha, Beta));

    public override double AtScore(double z) => width == 0 ? low : Looked(table ??= Tabulated(), z);

    internal override void AtScores(Span<double> scores)
    {
        if (width == 0)
        {
            scores.Fill(low);
            return;
        }

        var nodes = table ??= Tabulated();
        for (var i = 0; i < scores.Length; i++)
            scores[i] = Looked(nodes, scores[i]);
    }

    /// <summary>Cubic Hermite between two nodes; each holds a value and its slope times the cell.</summary>
    private static double Looked(double[] nodes, double z)
    {
        var place = (z + LastScore) * CellsPerScore;
        if (!(place > 0))
            return nodes[0];
        if (place >= Cells)
            return nodes[2 * Cells];
        var cell = (int)place;
        var t = place - cell;
        var at = 2 * cell;
        double y0 = nodes[at], m0 = nodes[at + 1], rise = nodes[at + 2] - y0, m1 = nodes[at + 3];
        return y0 + (t * (m0 + (t * ((3 * rise) - (2 * m0) - m1 + (t * (m0 + m1 - (2 * rise)))))));
    }

    /// <summary>Value and slope at each node, shape 2 × (cells + 1); slopes limited so that no cell turns back (Fritsch and Carlson 1980).</summary>
    private double[] Tabulated()
    {
        var nodes = new double[2 * (Cells + 1)];
        var logNorm = BetaLaw.LogNorm(Alpha, Beta);
        Fill(nodes, Alpha, Beta, logNorm, upper: false);
        Fill(nodes, Beta, Alpha, logNorm, upper: true);
        for (var i = 0; i < Cells; i++)
        {
            var most = 3 * Math.Max(0, nodes[(2 * i) + 2] - nodes[2 * i]);
            nodes[(2 * i) + 1] = Math.Min(nodes[(2 * i) + 1], most);
            nodes[(2 * i) + 3] = Math.Min(nodes[(2 * i) + 3], most);
        }

        return nodes;
    }

    // Each half from its own tail inwards, so that neither loses digits; the last node found is the next one's guess.
    private void Fill(double[] nodes, double a, double b, double logNorm, bool upper)
    {
        const int middle = Cells / 2;
        var guess = a / (a + b);
        for (var step = 0; step <= middle; step++)
        {
            var z = -(double)step / CellsPerScore;
            var x = BetaLaw.Lower(NormalLaw.Cdf(z), a, b, logNorm, guess);
            var density = Math.Exp(logNorm + ((a - 1) * Math.Log(x)) + ((b - 1) * double.LogP1(-x)));
            var slope = width * NormalLaw.Density(z) / density / CellsPerScore;
            var at = 2 * (upper ? middle + step : middle - step);
            nodes[at] = upper ? low + (width * (1 - x)) : low + (width * x);
            nodes[at + 1] = slope;
            guess = x;
        }
    }
}
