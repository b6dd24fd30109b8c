namespace Farhold.WayOut.Chance;

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

    private readonly double low,
        width;
    private double[]? table;

    public Pert(double low, double likely, double high, double lambda = 4)
    {
        this.low = Finite(low, nameof(low));
        width = Finite(high, nameof(high)) - low;
        ArgumentOutOfRangeException.ThrowIfLessThan(likely, low);
        ArgumentOutOfRangeException.ThrowIfLessThan(high, likely);
        Finite(lambda, nameof(lambda));
        ArgumentOutOfRangeException.ThrowIfNegative(lambda);
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

        // One loop without calls: what interprets it, as a browser does, pays for each.
        var c = table ??= Tabulated();
        unchecked
        {
            for (var i = 0; i < scores.Length; i++)
            {
                var place = (scores[i] + LastScore) * CellsPerScore;
                place =
                    place > 0
                        ? place < Cells
                            ? place
                            : Cells
                        : 0;
                var cell = (int)place;
                var t = place - cell;
                var at = 4 * cell;
                scores[i] = c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
            }
        }
    }

    private static double Looked(double[] c, double z)
    {
        var place = (z + LastScore) * CellsPerScore;
        place =
            place > 0
                ? place < Cells
                    ? place
                    : Cells
                : 0;
        var cell = (int)place;
        var (t, at) = (place - cell, 4 * cell);
        return c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
    }

    /// <summary>
    /// The four coefficients of each cell's cubic, and of one more that stays at the greatest; slopes limited so that no cell turns back
    /// (Fritsch and Carlson 1980).
    /// </summary>
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

        return Cubics(nodes);
    }

    private static double[] Cubics(double[] nodes)
    {
        var cubics = new double[4 * (Cells + 1)];
        for (var i = 0; i < Cells; i++)
        {
            double y0 = nodes[2 * i],
                m0 = nodes[(2 * i) + 1],
                rise = nodes[(2 * i) + 2] - y0,
                m1 = nodes[(2 * i) + 3];
            (cubics[4 * i], cubics[(4 * i) + 1]) = (y0, m0);
            (cubics[(4 * i) + 2], cubics[(4 * i) + 3]) = ((3 * rise) - (2 * m0) - m1, m0 + m1 - (2 * rise));
        }

        cubics[4 * Cells] = nodes[2 * Cells];
        return cubics;
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
