namespace Farhold.WayOut.Ground;

/// <summary>The direct problem: one place, a bearing, a length.</summary>
/// <remarks>Source: Karney 2013, section 3; equation numbers are that paper's.</remarks>
internal static class GeodesicDirect
{
    public static GeodesicEnd Solve(GeoPoint start, double azimuth, double metres)
    {
        var alpha1 = SinCos.OfDegrees(Angles.Signed(azimuth));
        var beta1 = SinCos.OfReducedLatitude(Angles.Coarsen(start.Latitude));
        var alpha0 = EquatorAzimuth(alpha1, beta1);

        var sigma1 = new SinCos(beta1.Sin, beta1.Sin != 0 || alpha1.Cos != 0 ? beta1.Cos * alpha1.Cos : 1);
        var omega1 = new SinCos(alpha0.Sin * beta1.Sin, sigma1.Cos);
        sigma1 = sigma1.Normalised();

        var eps = GeodesicSeries.Epsilon(alpha0.Cos * alpha0.Cos * Wgs84.SecondEccentricitySquared);
        var sigma12 = Arc(eps, sigma1, metres);
        var sigma2 = sigma1.Plus(SinCos.OfRadians(sigma12));

        var beta2 = new SinCos(alpha0.Cos * sigma2.Sin, Hypot(alpha0.Sin, alpha0.Cos * sigma2.Cos));
        if (beta2.Cos == 0)
        {
            beta2 = beta2 with { Cos = Angles.Tiny };
            sigma2 = sigma2 with { Cos = Angles.Tiny };
        }

        var alpha2 = new SinCos(alpha0.Sin, alpha0.Cos * sigma2.Cos);
        var omega12 = new SinCos(alpha0.Sin * sigma2.Sin, sigma2.Cos).Minus(omega1).Radians;
        var longitude12 = (omega12 + Lag(eps, alpha0.Sin, sigma1, sigma2, sigma12)) * 180 / Math.PI;

        var latitude = new SinCos(beta2.Sin, Wgs84.AxisRatio * beta2.Cos).Degrees;
        var longitude = Angles.Signed(start.Longitude + Angles.Signed(longitude12));
        return new(new GeoPoint(latitude, longitude), Angles.Compass(alpha2.Degrees));
    }

    /// <summary>Azimuth of the geodesic where it crosses the equator northwards (5).</summary>
    public static SinCos EquatorAzimuth(SinCos alpha, SinCos beta) => new(alpha.Sin * beta.Cos, Hypot(alpha.Cos, alpha.Sin * beta.Sin));

    /// <summary>How far the longitude on the ellipsoid lags behind that on the auxiliary sphere, radians (8).</summary>
    public static double Lag(double eps, double sinAlpha0, SinCos sigma1, SinCos sigma2, double sigma12)
    {
        Span<double> c3 = stackalloc double[GeodesicSeries.Size];
        GeodesicSeries.Longitude(eps, c3);
        var wave = GeodesicSeries.SineSum(c3, sigma2) - GeodesicSeries.SineSum(c3, sigma1);
        return -Wgs84.Flattening * GeodesicSeries.LongitudeScale(eps) * sinAlpha0 * (sigma12 + wave);
    }

    /// <summary>Arc on the auxiliary sphere that belongs to a length, by the reverted series (20).</summary>
    private static double Arc(double eps, SinCos sigma1, double metres)
    {
        Span<double> c1 = stackalloc double[GeodesicSeries.Size];
        Span<double> reverted = stackalloc double[GeodesicSeries.Size];
        GeodesicSeries.Distance(eps, c1);
        GeodesicSeries.ArcOfDistance(eps, reverted);
        var b11 = GeodesicSeries.SineSum(c1, sigma1);
        var tau1 = sigma1.Plus(SinCos.OfRadians(b11));
        var tau12 = metres / (Wgs84.SemiMinorAxis * (1 + GeodesicSeries.DistanceScaleMinusOne(eps)));
        var tau2 = tau1.Plus(SinCos.OfRadians(tau12));
        return tau12 + GeodesicSeries.SineSum(reverted, tau2) + b11;
    }

    internal static double Hypot(double x, double y) => Math.Sqrt((x * x) + (y * y));
}
