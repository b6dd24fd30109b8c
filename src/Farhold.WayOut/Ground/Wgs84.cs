namespace Farhold.WayOut.Ground;

/// <summary>The WGS-84 ellipsoid and what follows from it.</summary>
/// <remarks>Source: NGA.STND.0036, 2014, semi-major axis and inverse flattening, exact by definition (citation from memory).</remarks>
internal static class Wgs84
{
    /// <summary>Metres.</summary>
    public const double SemiMajorAxis = 6378137;

    public const double Flattening = 1 / 298.257223563;

    /// <summary>Ratio of the axes, b/a.</summary>
    public const double AxisRatio = 1 - Flattening;

    /// <summary>Metres.</summary>
    public const double SemiMinorAxis = SemiMajorAxis * AxisRatio;

    /// <summary>e².</summary>
    public const double EccentricitySquared = Flattening * (2 - Flattening);

    /// <summary>e′² = e²/(1 − e²).</summary>
    public const double SecondEccentricitySquared = EccentricitySquared / (AxisRatio * AxisRatio);

    /// <summary>n = f/(2 − f).</summary>
    public const double ThirdFlattening = Flattening / (2 - Flattening);
}
