namespace Farhold.WayOut.Ground;

/// <summary>The map projection of UPS, before false easting and northing.</summary>
/// <remarks>Source: Snyder 1987, USGS Professional Paper 1395, pp. 160–163.</remarks>
internal static class PolarStereographic
{
    /// <summary>Scale at the pole.</summary>
    public const double Scale = 0.994;

    private static readonly double TwiceRadius = 2 * Scale * Wgs84.SemiMajorAxis / (Wgs84.AxisRatio * ConformalLatitude.PoleFactor);

    /// <returns>Metres from the pole along the meridians of 90 east and, in the north, of 180; in the south, of 0.</returns>
    public static (double East, double North) Forward(GeoPoint place, bool north)
    {
        var phi = SinCos.OfDegrees(north ? place.Latitude : -place.Latitude);
        var conformal = phi.Cos == 0 ? double.PositiveInfinity : ConformalLatitude.FromTangent(phi.Sin / phi.Cos);
        var radius = TwiceRadius / (ConformalLatitude.Hypot(1, conformal) + conformal);
        var lambda = SinCos.OfDegrees(place.Longitude);
        return (radius * lambda.Sin, radius * (north ? -lambda.Cos : lambda.Cos));
    }

    public static GeoPoint Reverse(double east, double northing, bool north)
    {
        var radius = ConformalLatitude.Hypot(east, northing);
        if (radius == 0)
            return new GeoPoint(north ? 90 : -90, 0);
        var t = radius / TwiceRadius;
        var latitude = new SinCos(ConformalLatitude.ToTangent(((1 / t) - t) / 2), 1).Degrees;
        return new GeoPoint(north ? latitude : -latitude, new SinCos(east, north ? -northing : northing).Degrees);
    }
}
