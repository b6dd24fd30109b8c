namespace Farhold.WayOut;

/// <summary>The normal quantile for drawing: a table in the middle, <see cref="NormalLaw.Quantile"/> in the tails; good to 1e-8.</summary>
internal static class NormalScores
{
    private const int Cells = 1024;

    /// <summary>Nearer the ends the quantile bends too much for the table.</summary>
    private const int TailCells = Cells / 32;

    /// <summary>Value and slope times the cell at each node, shape 2 × (cells + 1); the tails stay empty.</summary>
    private static readonly double[] nodes = Tabulated();

    public static double Of(double u)
    {
        var place = u * Cells;
        var cell = (int)place;
        if (cell < TailCells || cell >= Cells - TailCells)
            return NormalLaw.Quantile(u);
        var t = place - cell;
        var at = nodes.AsSpan(2 * cell, 4);
        double y0 = at[0], m0 = at[1], rise = at[2] - y0, m1 = at[3];
        return y0 + (t * (m0 + (t * ((3 * rise) - (2 * m0) - m1 + (t * (m0 + m1 - (2 * rise)))))));
    }

    private static double[] Tabulated()
    {
        var table = new double[2 * (Cells + 1)];
        for (var i = TailCells; i <= Cells - TailCells; i++)
        {
            table[2 * i] = NormalLaw.Quantile((double)i / Cells);
            table[(2 * i) + 1] = 1 / (NormalLaw.Density(table[2 * i]) * Cells);
        }

        return table;
    }
}
