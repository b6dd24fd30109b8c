using System.Numerics;

namespace Farhold.WayOut.Ground;

/// <summary>The map projection of UTM, before false easting and northing, to sixth order in n.</summary>
/// <remarks>
/// Source: Krüger 1912, in the form of Karney 2011, J. Geodesy 85:475–485, eq. 35 and 36. Within UTM zones the error is
/// some nanometres. Only the side of the globe that faces the central meridian is covered.
/// </remarks>
internal static class TransverseMercator
{
    /// <summary>Scale on the central meridian of UTM.</summary>
    public const double Scale = 0.9996;

    private const double N = Wgs84.ThirdFlattening;

    /// <summary>Radius of the circle as long as a meridian, metres (eq. 14).</summary>
    private static readonly double Radius = Wgs84.SemiMajorAxis / (1 + N) * InN(256, 1, 0, 4, 0, 64, 0, 256);

    // Index j − 1; each row a polynomial in n, highest power first, to be multiplied by n to the power j.
    private static readonly double[] Alpha = Powers(
        InN(151200, 31564, -66675, 34440, 47250, -100800, 75600),
        InN(1935360, -1983433, 863232, 748608, -1161216, 524160),
        InN(725760, 670412, 406647, -533952, 184464),
        InN(7257600, 6601661, -7732800, 2230245),
        InN(7983360, -13675556, 3438171),
        InN(319334400, 212378941)
    );

    private static readonly double[] Beta = Powers(
        InN(2419200, 384796, -382725, -6720, 932400, -1612800, 1209600),
        InN(3870720, -1118711, 1695744, -1174656, 258048, 80640),
        InN(362880, 22276, -16929, -15984, 12852),
        InN(7257600, -830251, -158400, 197865),
        InN(15966720, -435388, 453717),
        InN(638668800, 20648693)
    );

    /// <returns>Metres east of the central meridian and north of the equator.</returns>
    public static (double East, double North) Forward(GeoPoint place, double centralMeridian)
    {
        var phi = SinCos.OfDegrees(place.Latitude);
        var lambda = SinCos.OfDegrees(Angles.Difference(centralMeridian, place.Longitude).Difference);
        var conformal = ConformalLatitude.FromTangent(phi.Sin / phi.Cos);
        var zeta = new Complex(Math.Atan2(conformal, lambda.Cos), Math.Asinh(lambda.Sin / ConformalLatitude.Hypot(conformal, lambda.Cos)));
        zeta += SineSum(Alpha, zeta);
        return (Radius * Scale * zeta.Imaginary, Radius * Scale * zeta.Real);
    }

    public static GeoPoint Reverse(double east, double north, double centralMeridian)
    {
        var zeta = new Complex(north, east) / (Radius * Scale);
        zeta -= SineSum(Beta, zeta);
        var sinh = Math.Sinh(zeta.Imaginary);
        var cos = Math.Max(0, Math.Cos(zeta.Real));
        var conformal = Math.Sin(zeta.Real) / ConformalLatitude.Hypot(sinh, cos);
        var latitude = new SinCos(ConformalLatitude.ToTangent(conformal), 1).Degrees;
        return new GeoPoint(latitude, Angles.Signed(new SinCos(sinh, cos).Degrees + centralMeridian));
    }

    /// <summary>Σ c[j − 1] sin 2jζ by Clenshaw's recurrence.</summary>
    private static Complex SineSum(double[] c, Complex zeta)
    {
        var twiceCos = 2 * Complex.Cos(2 * zeta);
        Complex b = 0,
            previous = 0;
        for (var j = c.Length - 1; j >= 0; j--)
            (b, previous) = ((twiceCos * b) - previous + c[j], b);
        return Complex.Sin(2 * zeta) * b;
    }

    private static double[] Powers(params double[] rows) => [.. rows.Select((row, j) => row * Math.Pow(N, j + 1))];

    private static double InN(double divisor, params double[] numerators) =>
        numerators.Aggregate(0.0, (sum, coefficient) => (sum * N) + coefficient) / divisor;
}
