namespace Farhold.WayOut.Plans;

/// <summary>Reads a time nobody is sure of: in three points, or as the times beaten in one, five and nine of ten cases.</summary>
internal static class TimeFields
{
    private static readonly string[] threePoint = ["low", "likely", "high"];
    private static readonly string[] percentiles = ["p10", "p50", "p90"];

    public static bool HasThree(PlacedFields fields) => threePoint.Any(fields.Has);

    public static bool HasTenths(PlacedFields fields) => percentiles.Any(fields.Has);

    public static ThreePoint? Three(PlacedFields fields)
    {
        foreach (var name in threePoint)
            fields.Missing(name, "a time has low, likely and high.");
        var (low, likely, high) = (fields.Time("low"), fields.Time("likely"), fields.Time("high"));
        if (low > likely)
            fields.Refuse("likely", "'likely' is under 'low': the three times rise.");
        if (likely > high)
            fields.Refuse("high", "'high' is under 'likely': the three times rise.");
        return low is { } a && likely is { } m && high is { } b ? new(a, m, b) : null;
    }

    public static Percentiles? Tenths(PlacedFields fields)
    {
        fields.Missing("p10", "the time beaten in one of ten cases.");
        fields.Missing("p90", "the time beaten in nine of ten cases.");
        var (p10, p50, p90) = (fields.Time("p10"), fields.Time("p50"), fields.Time("p90"));
        if (p10 == NodaTime.Duration.Zero)
            fields.Refuse("p10", "'p10' is above 0.");
        if (p10 > (p50 ?? p90) || p50 > p90)
            fields.Refuse(p10 > p50 ? "p50" : "p90", "'p10', 'p50' and 'p90' rise.");
        return p10 is { } low && p90 is { } high ? new(low, p50, high) : null;
    }

    /// <summary>Either form, not both.</summary>
    public static Extent? Either(PlacedFields fields)
    {
        if (!fields.IsObject)
            return null;
        if (HasThree(fields) && HasTenths(fields))
            fields.Refuse(percentiles.First(fields.Has), "A time is given as low, likely and high, or as p10 and p90, not as both.");
        return HasTenths(fields) ? Tenths(fields) : Three(fields);
    }
}
