namespace Farhold.WayOut;

/// <summary>Normal scores from random bits: a table in the middle, <see cref="NormalLaw.Quantile"/> in the tails; good to 1e-8.</summary>
internal static class NormalScores
{
    private const int CellBits = 10;
    private const int Cells = 1 << CellBits;

    /// <summary>Nearer the ends the quantile bends too much for the table.</summary>
    private const int TailCells = Cells / 32;

    private const int FractionBits = Rng.UniformBits - CellBits;

    /// <summary>The four coefficients of each cell's cubic (Hermite, from values and slopes at both ends); the tails stay empty.</summary>
    private static readonly double[] cubics = Tabulated();

    /// <summary>The score at the share of the law that <see cref="Rng.Uniform"/> makes of the same bits.</summary>
    public static double Of(ulong bits)
    {
        var cell = (int)(bits >> (64 - CellBits));
        if (cell is < TailCells or >= Cells - TailCells)
            return NormalLaw.Quantile(Rng.Uniformly(bits));
        var (t, c, at) = (Fraction(bits), cubics, 4 * cell);
        return c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
    }

    /// <summary>The scores of numbers <paramref name="stride"/> places apart, from the first of the generator on; each as <see cref="Of"/> has it.</summary>
    /// <param name="bits">As long as the scores; overwritten.</param>
    public static void Fill(Rng rng, ulong stride, Span<ulong> bits, Span<double> scores)
    {
        rng.Fill(stride, bits);
        var c = cubics;
        // No call but in the tails, and nothing checked that can't be: this is the inner loop of every forecast.
        unchecked
        {
            for (var k = 0; k < scores.Length; k++)
            {
                var b = bits[k];
                var cell = (int)(b >> (64 - CellBits));
                if ((uint)(cell - TailCells) >= Cells - (2 * TailCells))
                {
                    scores[k] = NormalLaw.Quantile(Rng.Uniformly(b));
                    continue;
                }

                var t = ((long)((b << CellBits) >> (64 - FractionBits)) + 0.5) * (1.0 / (1UL << FractionBits));
                var at = 4 * cell;
                scores[k] = c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
            }
        }
    }

    /// <summary>How far into its cell, 0 to 1; no digit is lost.</summary>
    private static double Fraction(ulong bits) =>
        ((long)((bits << CellBits) >> (64 - FractionBits)) + 0.5) * (1.0 / (1UL << FractionBits));

    private static double[] Tabulated()
    {
        var table = new double[4 * Cells];
        for (var i = TailCells; i < Cells - TailCells; i++)
        {
            var (y0, y1) = (NormalLaw.Quantile((double)i / Cells), NormalLaw.Quantile((i + 1.0) / Cells));
            var (m0, m1) = (1 / (NormalLaw.Density(y0) * Cells), 1 / (NormalLaw.Density(y1) * Cells));
            var rise = y1 - y0;
            (table[4 * i], table[(4 * i) + 1]) = (y0, m0);
            (table[(4 * i) + 2], table[(4 * i) + 3]) = ((3 * rise) - (2 * m0) - m1, m0 + m1 - (2 * rise));
        }

        return table;
    }
}
