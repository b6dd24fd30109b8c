namespace Farhold.WayOut.Astronomy;

/// <summary>Where the centre of the sun stands in the sky.</summary>
/// <param name="Altitude">Degrees above a flat horizon, as it would be without air.</param>
/// <param name="Azimuth">Degrees from true north in [0, 360).</param>
public readonly record struct SunPosition(double Altitude, double Azimuth)
{
    public Light Light => LightSteps.At(Altitude);

    /// <summary>The altitude as the air lifts it, degrees, at sea level and usual temperature.</summary>
    /// <remarks>
    /// Source: NOAA Global Monitoring Laboratory, solar calculation details (coefficients from memory). Near the horizon
    /// real air differs by tenths of a degree.
    /// </remarks>
    public double ApparentAltitude => Altitude + (ArcSeconds(Altitude) / 3600);

    private static double ArcSeconds(double altitude)
    {
        var tangent = Math.Tan(altitude * Math.PI / 180);
        return altitude switch
        {
            > 85 => 0,
            > 5 => (58.1 / tangent) - (0.07 / Math.Pow(tangent, 3)) + (0.000086 / Math.Pow(tangent, 5)),
            > -0.575 => 1735 + (altitude * (-518.2 + (altitude * (103.4 + (altitude * (-12.79 + (altitude * 0.711))))))),
            _ => -20.774 / tangent,
        };
    }
}
