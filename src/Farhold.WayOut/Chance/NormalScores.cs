using System.Numerics;

namespace Farhold.WayOut.Chance;

/// <summary>
/// Normal scores from random bits, read from tables good to 1e-8: even cells in the middle, cells that halve with the share in the tails.
/// </summary>
internal static class NormalScores
{
    private const int CellBits = 10;
    private const int Cells = 1 << CellBits;

    /// <summary>Nearer the ends than a 32nd the quantile bends too much for even cells.</summary>
    private const int TailCells = Cells / 32;

    private const int FractionBits = Rng.UniformBits - CellBits;

    /// <summary>Cells of each halving of a tail, and halvings: a share below the last is worked out (two in a million).</summary>
    private const int TailCellBits = 6,
        FirstHalving = 5,
        LastHalving = 20;

    private const int TailFractionBits = 40;

    /// <summary>The four coefficients of each cell's cubic (Hermite, from values and slopes at both ends); the tails stay empty.</summary>
    private static readonly double[] Middle = MiddleTable();

    private static readonly double[] Lower = LowerTable();

    /// <summary>The score at the share of the law that <see cref="Rng.Uniform"/> makes of the same bits.</summary>
    public static double Of(ulong bits)
    {
        Span<ulong> one = [bits];
        Span<double> score = [0];
        Look(one, score);
        return score[0];
    }

    /// <summary>
    /// The scores of numbers <paramref name="stride"/> places apart, from the first of the generator on; each as <see cref="Of"/> has it.
    /// </summary>
    /// <param name="bits">As long as the scores; overwritten.</param>
    public static void Fill(Rng rng, ulong stride, Span<ulong> bits, Span<double> scores)
    {
        rng.Fill(stride, bits);
        Look(bits, scores);
    }

    // No call but in the tails, and nothing checked that can't be: this is the inner loop of every forecast.
    private static void Look(ReadOnlySpan<ulong> bits, Span<double> scores)
    {
        var c = Middle;
        unchecked
        {
            for (var k = 0; k < scores.Length && k < bits.Length; k++)
            {
                var b = bits[k];
                var cell = (int)(b >> (64 - CellBits));
                if ((uint)(cell - TailCells) >= Cells - (2 * TailCells))
                {
                    scores[k] = (long)b < 0 ? -Tail(~b) : Tail(b);
                    continue;
                }

                var t = ((long)((b << CellBits) >> (64 - FractionBits)) + 0.5) * (1.0 / (1UL << FractionBits));
                var at = 4 * cell;
                scores[k] = c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
            }
        }
    }

    /// <summary>Of the lower tail; the upper one is its mirror, since all bits turned make the share that is left of 1.</summary>
    private static double Tail(ulong bits)
    {
        unchecked
        {
            var halving = BitOperations.LeadingZeroCount(bits);
            if (halving >= LastHalving)
                return NormalLaw.Quantile(Rng.Uniformly(bits));
            var rest = bits << (halving + 1);
            var t = ((long)((rest << TailCellBits) >> (64 - TailFractionBits)) + 0.5) * (1.0 / (1UL << TailFractionBits));
            var at = 4 * (((halving - FirstHalving) << TailCellBits) + (int)(rest >> (64 - TailCellBits)));
            var c = Lower;
            return c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
        }
    }

    private static double[] MiddleTable()
    {
        var table = new double[4 * Cells];
        for (var i = TailCells; i < Cells - TailCells; i++)
            Cubic(table, i, (double)i / Cells, 1.0 / Cells);
        return table;
    }

    private static double[] LowerTable()
    {
        const int cells = 1 << TailCellBits;
        var table = new double[4 * cells * (LastHalving - FirstHalving)];
        for (var halving = FirstHalving; halving < LastHalving; halving++)
        {
            var least = Math.ScaleB(1, -halving - 1);
            for (var i = 0; i < cells; i++)
                Cubic(table, ((halving - FirstHalving) * cells) + i, least + (least * i / cells), least / cells);
        }

        return table;
    }

    private static void Cubic(double[] table, int cell, double from, double wide)
    {
        var (y0, y1) = (NormalLaw.Quantile(from), NormalLaw.Quantile(from + wide));
        var (m0, m1) = (wide / NormalLaw.Density(y0), wide / NormalLaw.Density(y1));
        var rise = y1 - y0;
        (table[4 * cell], table[(4 * cell) + 1]) = (y0, m0);
        (table[(4 * cell) + 2], table[(4 * cell) + 3]) = ((3 * rise) - (2 * m0) - m1, m0 + m1 - (2 * rise));
    }
}
