namespace Farhold.WayOut.Ground;

/// <summary>A place on the UTM grid, or on the UPS grid around a pole.</summary>
/// <param name="Zone">1 to 60; 0 is UPS.</param>
/// <param name="North">The northern hemisphere, whose northings count from the equator.</param>
/// <param name="Easting">Metres, false easting included; likewise the northing.</param>
/// <remarks>
/// Source: NGA.SIG.0012 2.0.0, 2014: zones, their exceptions in Norway and Svalbard, false origins (citation from memory).
/// </remarks>
public readonly record struct GridPosition(int Zone, bool North, double Easting, double Northing)
{
    private const double UtmFalseEasting = 500_000;
    private const double UtmFalseNorthingSouth = 10_000_000;
    private const double UpsFalseOrigin = 2_000_000;

    public static GridPosition Of(GeoPoint place)
    {
        var zone = ZoneOf(place);
        var north = place.Latitude >= 0;
        if (zone == 0)
        {
            var (x, y) = PolarStereographic.Forward(place, north);
            return new(0, north, UpsFalseOrigin + x, UpsFalseOrigin + y);
        }

        var (east, fromEquator) = TransverseMercator.Forward(place, CentralMeridian(zone));
        return new(zone, north, UtmFalseEasting + east, fromEquator + (north ? 0 : UtmFalseNorthingSouth));
    }

    public GeoPoint ToGeoPoint() =>
        Zone == 0
            ? PolarStereographic.Reverse(Easting - UpsFalseOrigin, Northing - UpsFalseOrigin, North)
            : TransverseMercator.Reverse(Easting - UtmFalseEasting, Northing - (North ? 0 : UtmFalseNorthingSouth), CentralMeridian(Zone));

    /// <summary>1 to 60, or 0 beyond 84 north and 80 south.</summary>
    public static int ZoneOf(GeoPoint place)
    {
        if (place.Latitude is < -80 or >= 84)
            return 0;
        var longitude = (int)Math.Floor(place.Longitude);
        var zone = (longitude + 186) / 6;
        return MgrsLetters.BandOf(place.Latitude) switch
        {
            'V' when zone == 31 && longitude >= 3 => 32,
            'X' when longitude is >= 0 and < 42 => (2 * ((longitude + 183) / 12)) + 1,
            _ => zone,
        };
    }

    private static int CentralMeridian(int zone) => (6 * zone) - 183;
}
