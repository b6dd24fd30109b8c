using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>Walking and running speed by slope for each tenth of a large public of hikers; a higher decile is faster.</summary>
/// <remarks>
/// Source: Campbell and others 2019, Applied Geography 106:93–107, coefficients read at
/// rdrr.io/github/kbvernon/hiker/src/R/hiking_functions.R. The one rule here that knows how much people differ.
/// </remarks>
public static class Campbell
{
    private static readonly ImmutableArray<(double A, double B, double C, double D, double E)> Deciles =
    [
        (-1.568, 13.328, 38.892, 0.404, -0.003),
        (-1.71, 10.154, 36.905, 0.557, -0.004),
        (-1.858, 8.412, 39.994, 0.645, -0.004),
        (-1.958, 8.96, 50.34, 0.649, -0.005),
        (-2.171, 10.064, 63.66, 0.628, -0.005),
        (-2.459, 11.311, 79.287, 0.599, -0.005),
        (-2.823, 12.784, 98.697, 0.566, -0.005),
        (-3.371, 15.395, 134.409, 0.443, -0.005),
        (-3.06, 16.653, 138.875, 0.823, -0.0139),
    ];

    /// <param name="slopeDegrees">Negative downhill; the fit was made on −30 to 30.</param>
    /// <param name="decile">10, 20 … 90.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such decile.</exception>
    public static double SpeedMs(double slopeDegrees, int decile)
    {
        if (decile is < 10 or > 90 || decile % 10 != 0)
            throw new ArgumentOutOfRangeException(nameof(decile), decile, "A decile is 10, 20 and so on to 90.");
        var (a, b, c, d, e) = Deciles[(decile / 10) - 1];
        var x = (slopeDegrees - a) / b;
        return (c / (Math.PI * b * (1 + (x * x)))) + d + (e * slopeDegrees);
    }

    public static Duration Time(Stretch stretch, int decile = 50) =>
        Duration.FromSeconds(Seconds(stretch.Rising, decile) + Seconds(stretch.Falling, decile));

    // Beyond the fitted slopes the straight-line tail falls towards 0, so the last fitted speed stands in for it.
    private static double Seconds(Stretch part, int decile) =>
        1000 * part.DistanceKm / SpeedMs(double.Clamp(double.RadiansToDegrees(Math.Atan(part.Slope)), -30, 30), decile);
}
