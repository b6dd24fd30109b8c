using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>Walking speed on a footpath by slope.</summary>
/// <remarks>
/// Source: Tobler 1993, read at friendlywiki.com (Tobler's hiking function). Fastest, 6 km/h, at a slope of −0.05; off paths
/// times 0.6. Says nothing of loads or darkness.
/// </remarks>
public static class Tobler
{
    public const double OffPath = 0.6;

    /// <param name="slope">Rise over run, negative downhill.</param>
    public static double SpeedKmh(double slope) => 6 * Math.Exp(-3.5 * Math.Abs(slope + 0.05));

    public static Duration Time(Stretch stretch, double factor = 1) =>
        Duration.FromHours((Hours(stretch.Rising) + Hours(stretch.Falling)) / factor);

    private static double Hours(Stretch part) => part.DistanceKm / SpeedKmh(part.Slope);
}
