namespace Farhold.WayOut.Ground;

/// <summary>A place on the WGS-84 ellipsoid, in degrees.</summary>
/// <remarks>
/// North and east are positive. The longitude lies in [−180, 180): 180 is kept as −180, so that one place has one
/// value. <c>default</c> is 0, 0: open sea south of Ghana, a place like any other.
/// </remarks>
public readonly record struct GeoPoint
{
    /// <param name="latitude">−90 to 90.</param>
    /// <param name="longitude">−180 to 180.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is outside its range or not a number.</exception>
    public GeoPoint(double latitude, double longitude)
    {
        if (!(Math.Abs(latitude) <= 90))
            throw new ArgumentOutOfRangeException(nameof(latitude), latitude, "A latitude lies between −90 and 90 degrees.");
        if (!(Math.Abs(longitude) <= 180))
            throw new ArgumentOutOfRangeException(nameof(longitude), longitude, "A longitude lies between −180 and 180 degrees.");

        // Adding zero turns −0 into 0, which would otherwise reach signs of azimuths.
        Latitude = latitude + 0.0;
        Longitude = longitude == 180 ? -180 : longitude + 0.0;
    }

    public double Latitude { get; }

    public double Longitude { get; }

    public override string ToString() => CoordinateText.Format(this, CoordinateStyle.Decimal);
}
