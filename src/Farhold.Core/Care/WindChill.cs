namespace Farhold.Care;

/// <summary>How soon bare skin can freeze, in minutes.</summary>
/// <param name="From">0 in the last band: in less than <paramref name="To"/>.</param>
public readonly record struct FrostbiteTime(int From, int To);

/// <summary>How cold moving air feels on the bare face of somebody healthy, dry and awake.</summary>
/// <remarks>
/// Index of 2001 of the North American weather services. Its US form was read in a copy of the National Weather Service's chart; the metric
/// form and the limits within which it holds are from memory.
/// </remarks>
public static class WindChill
{
    public const double ColdestAirC = -50;
    public const double WarmestAirC = 10;
    public const double LeastWindKmh = 5;
    public const double MostWindKmh = 100;

    /// <summary>Above this wind, skin freezes sooner than the bands say (Environment Canada, read in a copy).</summary>
    public const double SoonerFromKmh = 50;

    /// <summary>Felt temperature, °C; null where the index does not hold.</summary>
    public static double? FeltC(double airC, double windKmh) =>
        airC is >= ColdestAirC and <= WarmestAirC && windKmh is >= LeastWindKmh and <= MostWindKmh ? Index(airC, windKmh) : null;

    /// <summary>Felt temperature by which frostbite is judged: never warmer than the air, and at the limit where the index ends.</summary>
    /// <param name="windKmh">Null: not known; the air alone counts, and it may be worse.</param>
    public static double ColdestC(double airC, double? windKmh) =>
        airC > WarmestAirC || windKmh is not >= LeastWindKmh ? airC : Math.Min(airC, Index(airC, Math.Min(windKmh.Value, MostWindKmh)));

    /// <summary>How soon bare skin can freeze; null where it hardly does.</summary>
    /// <remarks>
    /// Environment Canada's table of hazards, read in a copy: -28 to -39: 10 to 30 min, -40 to -47: 5 to 10, -48 to -54: 2 to 5, -55 and
    /// colder: under 2. The chart of the National Weather Service, read in a copy, says within 30 min from -18 °F (-27.8 °C). What lies
    /// between two bands counts as the colder one.
    /// </remarks>
    public static FrostbiteTime? Frostbite(double feltC) =>
        feltC switch
        {
            < -54 => new(0, 2),
            < -47 => new(2, 5),
            < -39 => new(5, 10),
            < -27 => new(10, 30),
            _ => null,
        };

    private static double Index(double airC, double windKmh)
    {
        var power = Math.Pow(windKmh, 0.16);
        return 13.12 + (0.6215 * airC) - (11.37 * power) + (0.3965 * airC * power);
    }
}
