namespace Farhold.WayOut.Ground;

/// <summary>Two places turned and mirrored so that only one case is left to solve: the first lies in the south and is
/// at least as far from the equator as the second, which lies to its east.</summary>
/// <param name="Beta1">Reduced latitude of the first, in [−π/2, 0].</param>
/// <param name="Lambda12">Difference of longitude in [0, π], radians.</param>
/// <param name="ToAntimeridian">180 degrees less that difference, degrees.</param>
/// <param name="Swapped">The places were exchanged.</param>
/// <param name="EastSign">−1 where east and west were exchanged; likewise north and south.</param>
internal readonly record struct GeodesicPair(
    SinCos Beta1,
    SinCos Beta2,
    double Lambda12,
    SinCos DirectionLambda12,
    double ToAntimeridian,
    bool FirstAtPole,
    bool Swapped,
    double EastSign,
    double NorthSign
)
{
    public double Stretch1 => Stretch(Beta1);

    public double Stretch2 => Stretch(Beta2);

    public static GeodesicPair Of(GeoPoint from, GeoPoint to)
    {
        var (latitude1, latitude2) = (Angles.Coarsen(from.Latitude), Angles.Coarsen(to.Latitude));
        var (longitude12, lost) = Angles.Difference(from.Longitude, to.Longitude);
        var eastSign = Math.CopySign(1, longitude12);
        longitude12 *= eastSign;
        lost *= eastSign;

        var swapped = Math.Abs(latitude1) < Math.Abs(latitude2);
        if (swapped)
            (latitude1, latitude2) = (latitude2, latitude1);

        var northSign = Math.CopySign(1, -latitude1);
        latitude1 *= northSign;
        latitude2 *= northSign;

        var (beta1, beta2) = Equalised(SinCos.OfReducedLatitude(latitude1), SinCos.OfReducedLatitude(latitude2));
        return new(
            beta1,
            beta2,
            longitude12 * Math.PI / 180,
            SinCos.OfDegrees(longitude12, lost),
            180 - longitude12 - lost,
            latitude1 == -90,
            swapped,
            eastSign,
            northSign
        );
    }

    public GeodesicPath Restore(double metres, SinCos alpha1, SinCos alpha2)
    {
        if (Swapped)
            (alpha1, alpha2) = (alpha2, alpha1);
        var north = Swapped ? -NorthSign : NorthSign;
        return new(metres + 0.0, Bearing(alpha1, north), Bearing(alpha2, north));
    }

    private double Bearing(SinCos alpha, double north) => Angles.Compass(new SinCos(alpha.Sin * EastSign, alpha.Cos * north).Degrees);

    // Two latitudes of one size must not differ in their last bit, or the search meets a singular point.
    private static (SinCos Beta1, SinCos Beta2) Equalised(SinCos beta1, SinCos beta2)
    {
        if (beta1.Cos < -beta1.Sin)
        {
            if (beta2.Cos == beta1.Cos)
                beta2 = beta2 with { Sin = Math.CopySign(beta1.Sin, beta2.Sin) };
        }
        else if (Math.Abs(beta2.Sin) == -beta1.Sin)
        {
            beta2 = beta2 with { Cos = beta1.Cos };
        }

        return (beta1, beta2);
    }

    private static double Stretch(SinCos beta) => Math.Sqrt(1 + (Wgs84.SecondEccentricitySquared * beta.Sin * beta.Sin));
}
