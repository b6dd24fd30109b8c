using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>The polynomial behind the times on Swiss footpath signposts: minutes per km by slope.</summary>
/// <remarks>
/// Source: geoblocks/tracktime, src/walking.js, second copy in agreement. Flat 4.2 km/h. From 40 % of slope on that source takes a
/// straight line instead, with a small jump (66.94 to 68.00 min/km up, 36.54 to 36.00 down).
/// </remarks>
public static class SwissSignpost
{
    /// <summary>Constant term first, slope in tenths.</summary>
    private static readonly double[] Coefficients =
    [
        14.271,
        3.6991,
        2.5922,
        -1.4384,
        0.32105,
        0.81542,
        -0.090261,
        -0.20757,
        0.010192,
        0.028588,
        -0.00057466,
        -0.0021842,
        1.5176e-5,
        8.6894e-5,
        -1.3584e-7,
        -1.4026e-6,
    ];

    /// <param name="slope">Rise over run, negative downhill.</param>
    public static double MinutesPerKm(double slope)
    {
        var tenths = 10 * slope;
        if (tenths >= 4)
            return 17 * tenths;
        if (tenths <= -4)
            return -9 * tenths;
        var sum = 0.0;
        for (var i = Coefficients.Length - 1; i >= 0; i--)
            sum = (sum * tenths) + Coefficients[i];
        return sum;
    }

    public static Duration Time(Stretch stretch) => Duration.FromMinutes(Minutes(stretch.Rising) + Minutes(stretch.Falling));

    private static double Minutes(Stretch part) => part.DistanceKm * MinutesPerKm(part.Slope);
}
