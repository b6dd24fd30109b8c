namespace Farhold.Signs;

/// <summary>How far each reading repeats its predecessor's distance from the course of the sign.</summary>
/// <remarks>
/// Signs wander: readings close in time err alike, and a wander looks like a trend. The course taken off is a parabola and
/// not a line, since otherwise a fall that speeds up would pass for wandering and be hidden (design; measured both ways).
/// </remarks>
internal static class SerialRepeat
{
    /// <summary>Variance of a trend in such readings over that in independent ones: (1 + r)/(1 − r), 1 to 19.</summary>
    /// <param name="points">In order of time.</param>
    /// <remarks>Source: Bayley and Hammersley 1946 (from memory), r taken as 0 if negative and 0.9 if more.</remarks>
    internal static double Widening((double Hours, double Value)[] points)
    {
        var middle = points.Average(p => p.Hours);
        var one = points.Select(_ => 1.0).ToArray();
        var line = Without(points.Select(p => p.Hours - middle).ToArray(), one);
        var bend = Without(Without(line.Select(h => h * h).ToArray(), one), line);
        var values = points.Select(p => p.Value).ToArray();
        var off = Without(Without(Without(values, one), line), bend);

        // What is left of a perfect course is rounding, which repeats in any way it likes.
        var all = Dot(off, off);
        if (all <= 1e-20 * Dot(values, values))
            return 1;
        var r = Math.Clamp(off.Zip(off.Skip(1), (last, next) => last * next).Sum() / all, 0, 0.9);
        return (1 + r) / (1 - r);
    }

    private static double[] Without(double[] a, double[] direction)
    {
        var length = Dot(direction, direction);
        if (length <= 1e-20)
            return a;
        var share = Dot(a, direction) / length;
        return [.. a.Zip(direction, (x, d) => x - (share * d))];
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
}
