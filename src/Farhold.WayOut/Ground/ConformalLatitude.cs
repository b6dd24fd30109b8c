namespace Farhold.WayOut.Ground;

/// <summary>Between the tangent of the latitude, τ = tan φ, and that of the conformal latitude, τ′ = tan χ.</summary>
/// <remarks>Source: Karney 2011, J. Geodesy 85:475–485, eq. 7–9 and 19–21.</remarks>
internal static class ConformalLatitude
{
    private static readonly double E = Math.Sqrt(Wgs84.EccentricitySquared);

    /// <summary>τ′/τ near the pole is one over this: exp(e atanh e).</summary>
    public static readonly double PoleFactor = Math.Exp(EAtanh(1));

    public static double FromTangent(double tau)
    {
        var secant = Hypot(1, tau);
        var sigma = Math.Sinh(EAtanh(tau / secant));
        return (Hypot(1, sigma) * tau) - (sigma * secant);
    }

    public static double ToTangent(double conformal)
    {
        const int rounds = 5; // two are enough; more cost nothing
        const double tolerance = 1.5e-9;
        const double ratio = 1 - Wgs84.EccentricitySquared;
        var tau = Math.Abs(conformal) > 70 ? conformal * PoleFactor : conformal / ratio;
        if (!(Math.Abs(tau) < 1e8))
            return tau;
        for (var round = 0; round < rounds; round++)
        {
            var reached = FromTangent(tau);
            var step = (conformal - reached) * (1 + (ratio * tau * tau)) / (ratio * Hypot(1, tau) * Hypot(1, reached));
            tau += step;
            if (!(Math.Abs(step) >= tolerance * Math.Max(1, Math.Abs(conformal))))
                break;
        }

        return tau;
    }

    internal static double Hypot(double x, double y) => Math.Sqrt((x * x) + (y * y));

    private static double EAtanh(double x) => E * Math.Atanh(E * x);
}
