namespace Farhold.WayOut.Ground;

/// <summary>Where the search for the starting azimuth begins.</summary>
/// <remarks>Source: Karney 2013, section 5: the sphere for most pairs, the astroid for nearly opposite ones.</remarks>
internal static class GeodesicGuess
{
    private static readonly double SqrtEpsilon = Math.Sqrt(Math.BitIncrement(1.0) - 1);

    /// <summary>Arcs below this, radians, are so short that the sphere is as good as the series.</summary>
    private static readonly double ShortArc = 0.1 * SqrtEpsilon / Math.Sqrt(Wgs84.Flattening * (1 - (Wgs84.Flattening / 2)) / 2);

    /// <param name="shortPath">The whole answer, where the places are so close that no search is needed.</param>
    public static SinCos Azimuth(GeodesicPair pair, out GeodesicPath? shortPath)
    {
        shortPath = null;
        var (beta1, beta2) = (pair.Beta1, pair.Beta2);
        var difference = beta2.Minus(beta1);
        var sum = beta2.Plus(beta1);
        var near = difference.Cos >= 0 && difference.Sin < 0.5 && beta2.Cos * pair.Lambda12 < 0.5;
        var stretch = near ? MeanStretch(beta1, beta2) : 1;
        var omega = near ? SinCos.OfRadians(pair.Lambda12 / (Wgs84.AxisRatio * stretch)) : pair.DirectionLambda12;

        var alpha1 = new SinCos(
            beta2.Cos * omega.Sin,
            omega.Cos >= 0
                ? difference.Sin + (beta2.Cos * beta1.Sin * omega.Sin * omega.Sin / (1 + omega.Cos))
                : sum.Sin - (beta2.Cos * beta1.Sin * omega.Sin * omega.Sin / (1 - omega.Cos))
        );
        var arc = new SinCos(
            Math.Sqrt((alpha1.Sin * alpha1.Sin) + (alpha1.Cos * alpha1.Cos)),
            (beta1.Sin * beta2.Sin) + (beta1.Cos * beta2.Cos * omega.Cos)
        );

        if (near && arc.Sin < ShortArc)
        {
            var alpha2 = new SinCos(
                beta1.Cos * omega.Sin,
                difference.Sin - (beta1.Cos * beta2.Sin * (omega.Cos >= 0 ? omega.Sin * omega.Sin / (1 + omega.Cos) : 1 - omega.Cos))
            );
            shortPath = pair.Restore(arc.Radians * Wgs84.SemiMinorAxis * stretch, alpha1, alpha2);
            return alpha1;
        }

        var plain = arc.Cos >= 0 || arc.Sin >= 6 * Wgs84.ThirdFlattening * Math.PI * beta1.Cos * beta1.Cos;
        var guess = plain ? alpha1 : NearlyOpposite(pair, sum.Sin);
        return guess.Sin > 0 ? guess.Normalised() : new SinCos(1, 0);
    }

    private static double MeanStretch(SinCos beta1, SinCos beta2)
    {
        var sines = (beta1.Sin + beta2.Sin) * (beta1.Sin + beta2.Sin);
        var cosines = (beta1.Cos + beta2.Cos) * (beta1.Cos + beta2.Cos);
        return Math.Sqrt(1 + (Wgs84.SecondEccentricitySquared * sines / (sines + cosines)));
    }

    // x and y put the point opposite the first at the origin, and the ends of its cut at x = −1 and 0 (eq. 53).
    private static SinCos NearlyOpposite(GeodesicPair pair, double sinSum)
    {
        var eps = GeodesicSeries.Epsilon(pair.Beta1.Sin * pair.Beta1.Sin * Wgs84.SecondEccentricitySquared);
        var scaleX = Wgs84.Flattening * pair.Beta1.Cos * GeodesicSeries.LongitudeScale(eps) * Math.PI;
        var scaleY = scaleX * pair.Beta1.Cos;
        var x = Math.Atan2(-pair.DirectionLambda12.Sin, -pair.DirectionLambda12.Cos) / scaleX;
        var y = sinSum / scaleY;

        var onTheCut = y > -200 * (SqrtEpsilon * SqrtEpsilon) && x > -1 - (1000 * SqrtEpsilon);
        if (onTheCut)
        {
            var sin = Math.Min(1, -x);
            return new(sin, -Math.Sqrt(1 - (sin * sin)));
        }

        var k = Astroid(x, y);
        var omega = SinCos.OfRadians(scaleX * -x * k / (1 + k));
        return new(pair.Beta2.Cos * omega.Sin, sinSum - (pair.Beta2.Cos * pair.Beta1.Sin * omega.Sin * omega.Sin / (1 + omega.Cos)));
    }

    /// <summary>The positive root of k⁴ + 2k³ − (x² + y² − 1)k² − 2y²k − y² = 0 (eq. 55), by the steps of eq. 63–65.</summary>
    private static double Astroid(double x, double y)
    {
        double p = x * x,
            q = y * y,
            r = (p + q - 1) / 6;
        if (q == 0 && r <= 0)
            return 0;

        double s = p * q / 4,
            r2 = r * r,
            r3 = r * r2;
        var discriminant = s * (s + (2 * r3));
        var u = r;
        if (discriminant >= 0)
        {
            var cube = s + r3;
            var t = Math.Cbrt(cube + Math.CopySign(Math.Sqrt(discriminant), cube));
            u += t + (t != 0 ? r2 / t : 0);
        }
        else
        {
            u += 2 * r * Math.Cos(Math.Atan2(Math.Sqrt(-discriminant), -(s + r3)) / 3);
        }

        var v = Math.Sqrt((u * u) + q);
        var uv = u < 0 ? q / (v - u) : u + v;
        var w = (uv - q) / (2 * v);
        return uv / (Math.Sqrt(uv + (w * w)) + w);
    }
}
