namespace Farhold.WayOut.Ground;

/// <summary>Arithmetic on angles in degrees that must not lose their last bits.</summary>
internal static class Angles
{
    /// <summary>Small enough to change nothing, large enough to divide by: the square root of the least normal double.</summary>
    public const double Tiny = 1.4916681462400413E-154;

    /// <summary>Rounds angles below 1/16 degree to multiples of 2⁻⁵⁷ (0.7 pm on the ground), so that none is tiny but not zero.</summary>
    public static double Coarsen(double degrees)
    {
        const double limit = 1 / 16.0;
        var size = Math.Abs(degrees);
        return size < limit ? Math.CopySign(limit - (limit - size), degrees) : degrees;
    }

    /// <summary>The same direction in [−180, 180].</summary>
    public static double Signed(double degrees) => Math.IEEERemainder(degrees, 360);

    /// <summary>The same direction in [0, 360).</summary>
    public static double Compass(double degrees)
    {
        var turned = degrees % 360;
        if (turned < 0)
            turned += 360;
        return turned >= 360 ? 0 : turned + 0.0;
    }

    /// <summary><paramref name="to"/> − <paramref name="from"/> in [−180, 180], with what rounding took from it.</summary>
    public static (double Difference, double Error) Difference(double from, double to)
    {
        var (sum, lost) = ExactSum(Signed(-from), Signed(to));
        (sum, lost) = ExactSum(Signed(sum), lost);
        if (sum == 0 || Math.Abs(sum) == 180)
            sum = Math.CopySign(sum, lost == 0 ? to - from : -lost);
        return (sum, lost);
    }

    private static (double Sum, double Lost) ExactSum(double u, double v)
    {
        var sum = u + v;
        var up = sum - v;
        var vp = sum - up;
        return (sum, sum == 0 ? 0 : 0 - (up - u + (vp - v)));
    }
}
