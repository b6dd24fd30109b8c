namespace Farhold.WayOut.Ground;

/// <summary>The shortest path between two places.</summary>
/// <param name="StartAzimuth">Bearing at the start, degrees from true north in [0, 360).</param>
/// <param name="EndAzimuth">Bearing at the end, still pointing onwards.</param>
public readonly record struct GeodesicPath(double Metres, double StartAzimuth, double EndAzimuth);

/// <summary>Where a path of a given bearing and length ends.</summary>
/// <param name="Azimuth">Bearing at the end, pointing onwards, degrees in [0, 360).</param>
public readonly record struct GeodesicEnd(GeoPoint Place, double Azimuth);

/// <summary>Distances and bearings on WGS-84, anywhere on the globe, exact to some nanometres.</summary>
/// <remarks>Source: Karney 2013, J. Geodesy 87:43–55. Heights play no part: these are lengths on the ellipsoid.</remarks>
public static class Geodesic
{
    /// <remarks>Between one place and itself the bearings mean nothing; between opposite poles any would do.</remarks>
    public static GeodesicPath Between(GeoPoint from, GeoPoint to) => GeodesicInverse.Solve(from, to);

    public static double Metres(GeoPoint from, GeoPoint to) => GeodesicInverse.Solve(from, to).Metres;

    /// <param name="azimuth">Degrees from true north; any finite number.</param>
    /// <param name="metres">Negative goes backwards.</param>
    /// <exception cref="ArgumentOutOfRangeException">Bearing or length is not finite.</exception>
    public static GeodesicEnd From(GeoPoint start, double azimuth, double metres)
    {
        if (!double.IsFinite(azimuth))
            throw new ArgumentOutOfRangeException(nameof(azimuth), azimuth, "A bearing is a finite number of degrees.");
        if (!double.IsFinite(metres))
            throw new ArgumentOutOfRangeException(nameof(metres), metres, "A length is a finite number of metres.");
        return GeodesicDirect.Solve(start, azimuth, metres);
    }
}
