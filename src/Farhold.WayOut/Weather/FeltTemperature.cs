namespace Farhold.WayOut;

/// <summary>How cold or hot air feels to someone healthy, dressed and awake. A bleeding casualty is worse off than either says.</summary>
public static class FeltTemperature
{
    /// <summary>Wind chill, °C; the air's own temperature where the formula does not hold.</summary>
    /// <param name="airC">It holds up to 10 °C (limit from memory).</param>
    /// <param name="windKmh">At 10 m above ground; it holds from 5 km/h (limit from memory).</param>
    /// <remarks>Metric form of 2001, as used in Canada (from memory); its US form was read in a copy of the NWS chart.</remarks>
    public static double WindChillC(double airC, double windKmh) => airC > 10 || windKmh < 5
        ? airC
        : Chill(airC, windKmh, 13.12, 0.6215, 11.37, 0.3965);

    /// <summary>Wind chill, °F, in its US form; the air's own temperature where it does not hold.</summary>
    /// <param name="airF">It holds up to 50 °F.</param>
    /// <param name="windMph">It holds above 3 mph.</param>
    /// <remarks>Source: National Weather Service chart of 2001, read in a copy; limits from memory.</remarks>
    public static double WindChillF(double airF, double windMph) => airF > 50 || windMph <= 3
        ? airF
        : Chill(airF, windMph, 35.74, 0.6215, 35.75, 0.4275);

    /// <summary>Heat index, °F.</summary>
    /// <param name="humidityPercent">Relative, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">The humidity is outside its range.</exception>
    /// <remarks>
    /// Source: National Weather Service, "The Heat Index Equation" (Rothfusz 1990), simple form below 80 °F, regression with the
    /// dry and humid adjustments from there. Its chart differs from it by up to 1 °F.
    /// </remarks>
    public static double HeatIndexF(double airF, double humidityPercent)
    {
        if (!(humidityPercent is >= 0 and <= 100))
            throw new ArgumentOutOfRangeException(nameof(humidityPercent), humidityPercent, "A relative humidity is 0 to 100 percent.");
        var (t, r) = (airF, humidityPercent);
        var simple = (t + (0.5 * (t + 61 + (1.2 * (t - 68)) + (0.094 * r)))) / 2;
        return simple < 80 ? simple : Regression(t, r) + Adjustment(t, r);
    }

    /// <summary>Heat index, °C; see <see cref="HeatIndexF"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The humidity is outside its range.</exception>
    public static double HeatIndexC(double airC, double humidityPercent) => (HeatIndexF((airC * 1.8) + 32, humidityPercent) - 32) / 1.8;

    private static double Chill(double air, double wind, double constant, double perDegree, double perWind, double perBoth)
    {
        var power = Math.Pow(wind, 0.16);
        return constant + (perDegree * air) - (perWind * power) + (perBoth * air * power);
    }

    private static double Regression(double t, double r) =>
        -42.379 + (2.04901523 * t) + (10.14333127 * r) - (0.22475541 * t * r) - (0.00683783 * t * t) - (0.05481717 * r * r)
        + (0.00122874 * t * t * r) + (0.00085282 * t * r * r) - (0.00000199 * t * t * r * r);

    private static double Adjustment(double t, double r) => (t, r) switch
    {
        ( >= 80 and <= 112, < 13) => -((13 - r) / 4) * Math.Sqrt((17 - Math.Abs(t - 95)) / 17),
        ( >= 80 and <= 87, > 85) => (r - 85) / 10 * ((87 - t) / 5),
        _ => 0,
    };
}
