namespace Farhold.WayOut.Ground;

/// <summary>What a starting azimuth leads to: the geodesic up to the second latitude, and by how much it misses.</summary>
/// <param name="Miss">Longitude reached less longitude wanted, radians.</param>
internal readonly record struct GeodesicTrial(GeodesicArc Arc, SinCos Alpha2, double Miss)
{
    public static GeodesicTrial Of(GeodesicPair pair, SinCos alpha1)
    {
        var (beta1, beta2) = (pair.Beta1, pair.Beta2);
        if (beta1.Sin == 0 && alpha1.Cos == 0)
            alpha1 = alpha1 with { Cos = -Angles.Tiny };
        var alpha0 = GeodesicDirect.EquatorAzimuth(alpha1, beta1);
        var alpha2 = SecondAzimuth(beta1, beta2, alpha1, alpha0.Sin);

        var sigma1 = new SinCos(beta1.Sin, alpha1.Cos * beta1.Cos);
        var sigma2 = new SinCos(beta2.Sin, alpha2.Cos * beta2.Cos);
        var omega1 = sigma1 with { Sin = alpha0.Sin * beta1.Sin };
        var omega2 = sigma2 with { Sin = alpha0.Sin * beta2.Sin };
        (sigma1, sigma2) = (sigma1.Normalised(), sigma2.Normalised());

        var sigma12 = sigma2.Minus(sigma1).NotNegative().Radians;
        var excess = omega2.Minus(omega1).NotNegative().Minus(pair.DirectionLambda12).Radians;
        var eps = GeodesicSeries.Epsilon(alpha0.Cos * alpha0.Cos * Wgs84.SecondEccentricitySquared);
        var lag = GeodesicDirect.Lag(eps, alpha0.Sin, sigma1, sigma2, sigma12);
        return new(new GeodesicArc(eps, sigma1, sigma2, sigma12), alpha2, excess + lag);
    }

    /// <summary>Change of the longitude reached with the starting azimuth (Karney 2013, eq. 46).</summary>
    public double Slope(GeodesicPair pair) =>
        Alpha2.Cos == 0
            ? -2 * Wgs84.AxisRatio * pair.Stretch1 / pair.Beta1.Sin
            : Arc.ReducedLength(pair) * Wgs84.AxisRatio / (Alpha2.Cos * pair.Beta2.Cos);

    // Written so that latitudes of one size give exactly mirrored azimuths (eq. 45).
    private static SinCos SecondAzimuth(SinCos beta1, SinCos beta2, SinCos alpha1, double sinAlpha0)
    {
        if (beta2.Cos == beta1.Cos && Math.Abs(beta2.Sin) == -beta1.Sin)
            return new(alpha1.Sin, Math.Abs(alpha1.Cos));
        var difference =
            beta1.Cos < -beta1.Sin ? (beta2.Cos - beta1.Cos) * (beta1.Cos + beta2.Cos) : (beta1.Sin - beta2.Sin) * (beta1.Sin + beta2.Sin);
        var northward = alpha1.Cos * beta1.Cos;
        var sin = beta2.Cos != beta1.Cos ? sinAlpha0 / beta2.Cos : alpha1.Sin;
        return new(sin, Math.Sqrt((northward * northward) + difference) / beta2.Cos);
    }
}
