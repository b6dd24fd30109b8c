using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>Naismith, with 10 minutes off for every 300 m of gentle descent (5 to 12 degrees) and 10 on for steep (over 12).</summary>
/// <remarks>
/// Source: Langmuir's correction, read at docsbay.net/naismiths-rule. It belongs to single legs: over the totals of a route it
/// gives other answers. The limits are jumps, so two nearly equal legs can differ by 20 minutes for 300 m.
/// </remarks>
public static class Langmuir
{
    private const double GentleFromDegrees = 5;
    private const double SteepFromDegrees = 12;

    public static Duration Time(Stretch leg, double flatKmh = 5) =>
        Naismith.Time(leg, flatKmh) + (Duration.FromMinutes(10 * leg.DescentM / 300) * Sign(leg.Falling));

    private static int Sign(Stretch falling)
    {
        if (falling.DescentM == 0)
            return 0;
        var degrees = double.RadiansToDegrees(Math.Atan2(falling.DescentM, 1000 * falling.DistanceKm));
        return degrees < GentleFromDegrees ? 0
            : degrees <= SteepFromDegrees ? -1
            : 1;
    }
}
