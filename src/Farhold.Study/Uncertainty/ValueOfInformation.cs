using MathNet.Numerics.LinearAlgebra;

namespace Farhold.Study.Uncertainty;

/// <summary>What it would be worth, a casualty, to know one figure before choosing a policy.</summary>
/// <remarks>
/// M. Strong, J. E. Oakley, A. Brennan, Medical Decision Making 34 (2014) 311: the net benefit of each policy is regressed on the figure
/// over the outer draws; the mean of the greatest fitted value less the greatest mean. The figure counts by its share of draws below, and
/// the curve is cubic with two knots. Noise of the regression makes it a little too large, never below 0.
/// </remarks>
public static class ValueOfInformation
{
    private static readonly double[] Knots = [1.0 / 3, 2.0 / 3];

    /// <param name="benefits">For each policy, one number a draw.</param>
    /// <param name="shares">Of the figure, one a draw: 0 to 1.</param>
    public static double OfOne(double[][] benefits, double[] shares)
    {
        ArgumentNullException.ThrowIfNull(benefits);
        ArgumentNullException.ThrowIfNull(shares);
        var design = Matrix<double>.Build.Dense(shares.Length, 4 + Knots.Length, (row, column) => Basis(shares[row], column));
        var solver = design.QR();
        var fitted = benefits.Select(b => design * solver.Solve(Vector<double>.Build.Dense(b))).ToArray();
        var best = 0.0;
        for (var draw = 0; draw < shares.Length; draw++)
            best += fitted.Max(f => f[draw]);
        return Math.Max(0, (best / shares.Length) - benefits.Max(b => b.Average()));
    }

    /// <summary>To know all figures: an upper bound, itself too large by the noise within the draws.</summary>
    public static double OfAll(double[][] benefits)
    {
        ArgumentNullException.ThrowIfNull(benefits);
        var draws = benefits[0].Length;
        return Enumerable.Range(0, draws).Average(i => benefits.Max(b => b[i])) - benefits.Max(b => b.Average());
    }

    private static double Basis(double x, int column)
    {
        if (column < 4)
            return Math.Pow(x, column);
        var over = Math.Max(0, x - Knots[column - 4]);
        return over * over * over;
    }
}
