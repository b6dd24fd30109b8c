namespace Farhold.WayOut.Ground;

/// <summary>An angle as its sine and cosine, perhaps both scaled by one positive factor.</summary>
internal readonly record struct SinCos(double Sin, double Cos)
{
    private const double DegreesPerRadian = 180 / Math.PI;

    public static SinCos OfRadians(double radians) => new(Math.Sin(radians), Math.Cos(radians));

    /// <remarks>Exact at every multiple of 90 degrees.</remarks>
    public static SinCos OfDegrees(double degrees, double correction = 0)
    {
        var reduced = degrees % 360;
        var quarter = Math.Round(reduced / 90);
        var (sin, cos) = OfRadians(Angles.Coarsen(reduced - (90 * quarter) + correction) / DegreesPerRadian);
        return ((int)quarter & 3) switch
        {
            0 => new(sin, cos),
            1 => new(cos, -sin),
            2 => new(-sin, -cos),
            _ => new(-cos, sin),
        };
    }

    /// <summary>The sine and cosine of the reduced latitude β, tan β = (1 − f) tan φ; never quite at a pole.</summary>
    public static SinCos OfReducedLatitude(double latitude)
    {
        var (sin, cos) = OfDegrees(latitude);
        var beta = new SinCos(Wgs84.AxisRatio * sin, cos).Normalised();
        return beta with { Cos = Math.Max(Angles.Tiny, beta.Cos) };
    }

    public double Radians => Math.Atan2(Sin, Cos);

    /// <summary>−180 to 180; exact at every multiple of 90.</summary>
    public double Degrees
    {
        get
        {
            var steep = Math.Abs(Sin) > Math.Abs(Cos);
            var (y, x) = steep ? (Cos, Sin) : (Sin, Cos);
            var back = x < 0;
            var angle = Math.Atan2(y, Math.Abs(x)) * DegreesPerRadian;
            return (steep, back) switch
            {
                (false, false) => angle,
                (false, true) => Math.CopySign(180, y) - angle,
                (true, false) => 90 - angle,
                (true, true) => angle - 90,
            };
        }
    }

    public SinCos Normalised()
    {
        var length = Math.Sqrt((Sin * Sin) + (Cos * Cos));
        return new(Sin / length, Cos / length);
    }

    public SinCos Plus(SinCos other) => new((Sin * other.Cos) + (Cos * other.Sin), (Cos * other.Cos) - (Sin * other.Sin));

    public SinCos Minus(SinCos other) => new((Sin * other.Cos) - (Cos * other.Sin), (Cos * other.Cos) + (Sin * other.Sin));

    /// <summary>The same, with a sine below zero raised to zero: an angle known to lie between 0 and π.</summary>
    public SinCos NotNegative() => this with { Sin = Math.Max(0, Sin) };
}
