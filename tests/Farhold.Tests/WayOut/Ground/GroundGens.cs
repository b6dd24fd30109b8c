using CsCheck;

namespace Farhold.Tests.WayOut.Ground;

public static class GroundGens
{
    /// <summary>Anywhere, the poles, the equator and the antimeridian more often than by chance.</summary>
    public static readonly Gen<GeoPoint> Place = Gen.Select(
        Gen.Frequency((8, Gen.Double[-90, 90]), (1, OneOf(-90.0, 90.0, 0.0, 84.0, -80.0)), (1, Gen.Double[-1e-6, 1e-6])),
        Gen.Frequency((8, Gen.Double[-180, 180]), (1, OneOf(-180.0, 180.0, 0.0, 6.0, 3.0)), (1, Gen.Double[179.999, 180])),
        (latitude, longitude) => new GeoPoint(latitude, longitude)
    );

    private static Gen<double> OneOf(params double[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}
