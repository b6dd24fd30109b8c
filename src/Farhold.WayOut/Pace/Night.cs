namespace Farhold.WayOut.Pace;

/// <summary>Speed in the dark against daylight.</summary>
/// <remarks>
/// Source: ratios of foot-march planning speeds, 4.0 to 3.2 and 2.5 to 1.6 km/h, read at
/// mtntactical.com/research/yet-calculating-movement-uneven-terrain; computed.
/// </remarks>
public static class Night
{
    public const double OnPath = 3.2 / 4.0;
    public const double OffPath = 1.6 / 2.5;

    /// <summary>By day, cross-country against road, from the same table.</summary>
    public const double CrossCountryByDay = 2.5 / 4.0;

    public static double SpeedFactor(Surface surface) => surface.OffPath ? OffPath : OnPath;
}
