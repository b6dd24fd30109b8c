using NodaTime;

namespace Farhold.WayOut.Astronomy;

/// <summary>The sun as seen from a place.</summary>
public static class Sun
{
    private const double Degree = Math.PI / 180;

    /// <summary>Angle the earth's radius fills at one astronomical unit, degrees.</summary>
    /// <remarks>Source: 8.794″, Meeus 1998, Astronomical Algorithms, chapter 40 (from memory).</remarks>
    private const double Parallax = 8.794 / 3600;

    public static SunPosition At(Instant instant, GeoPoint place)
    {
        var sun = SolarCoordinates.At(instant);
        var hour = HourAngle(instant, place, sun) * Degree;
        var (sinLatitude, cosLatitude) = Math.SinCos(place.Latitude * Degree);
        var (sinDeclination, cosDeclination) = Math.SinCos(sun.Declination);
        var up = (sinLatitude * sinDeclination) + (cosLatitude * cosDeclination * Math.Cos(hour));
        var east = -cosDeclination * Math.Sin(hour);
        var north = (cosLatitude * sinDeclination) - (sinLatitude * cosDeclination * Math.Cos(hour));
        var level = Math.Sqrt((east * east) + (north * north));
        var altitude = Math.Atan2(up, level) / Degree;
        return new(altitude - (Parallax / sun.Distance * level), Angles.Compass(Math.Atan2(east, north) / Degree));
    }

    public static Light LightAt(Instant instant, GeoPoint place) => At(instant, place).Light;

    internal static double Altitude(Instant instant, GeoPoint place) => At(instant, place).Altitude;

    /// <summary>The passage of the sun over the meridian nearest to an instant.</summary>
    internal static Instant TransitNear(Instant instant, GeoPoint place)
    {
        const int rounds = 4; // the equation of time moves by half a second in a quarter of an hour; two would do
        for (var round = 0; round < rounds; round++)
            instant -= Duration.FromHours(HourAngle(instant, place, SolarCoordinates.At(instant)) / 15);
        return instant;
    }

    /// <summary>Degrees west of the meridian, −180 to 180.</summary>
    private static double HourAngle(Instant instant, GeoPoint place, SolarCoordinates sun)
    {
        var minutes = instant.InUtc().TimeOfDay.TickOfDay / (double)NodaConstants.TicksPerMinute;
        return Angles.Signed(((minutes + sun.EquationOfTime) / 4) + place.Longitude - 180);
    }
}
