namespace Farhold.WayOut.Plans;

/// <summary>Reads a time nobody is sure of: in three points, or as the times beaten in one, five and nine of ten cases.</summary>
internal static class TimeFields
{
    private const string InThreePoints = "a time, as is each of low, likely and high";

    private static readonly string[] ThreePoint = ["low", "likely", "high"];
    private static readonly string[] Percentiles = ["p10", "p50", "p90"];

    public static bool HasThree(LocatedObject fields) => ThreePoint.Any(fields.Has);

    public static bool HasTenths(LocatedObject fields) => Percentiles.Any(fields.Has);

    public static ThreePoint? Three(LocatedObject fields)
    {
        foreach (var name in ThreePoint)
            fields.Required(name, InThreePoints);
        var (low, likely, high) = (fields.SpanOrMinutes("low"), fields.SpanOrMinutes("likely"), fields.SpanOrMinutes("high"));
        if (low > likely)
            fields.Refuse("likely", "likely is under low: the three times rise");
        if (likely > high)
            fields.Refuse("high", "high is under likely: the three times rise");
        return low is { } a && likely is { } m && high is { } b ? new(a, m, b) : null;
    }

    public static Percentiles? Tenths(LocatedObject fields)
    {
        fields.Required("p10", "the time beaten in one of ten cases");
        fields.Required("p90", "the time beaten in nine of ten cases");
        var (p10, p50, p90) = (fields.SpanOrMinutes("p10"), fields.SpanOrMinutes("p50"), fields.SpanOrMinutes("p90"));
        if (p10 == NodaTime.Duration.Zero)
            fields.Refuse("p10", "p10 has to be above 0");
        if (p10 > (p50 ?? p90) || p50 > p90)
            fields.Refuse(p10 > p50 ? "p50" : "p90", "p10, p50 and p90 have to rise");
        return p10 is { } low && p90 is { } high ? new(low, p50, high) : null;
    }

    /// <summary>Either form, not both.</summary>
    public static Extent? Either(LocatedObject fields)
    {
        if (!fields.IsObject)
            return null;
        if (HasThree(fields) && HasTenths(fields))
            fields.Refuse(Percentiles.First(fields.Has), "a time is given as low, likely and high, or as p10 and p90, not as both");
        return HasTenths(fields) ? Tenths(fields) : Three(fields);
    }
}
