namespace Farhold.WayOut.Plans;

/// <summary>The law, in seconds, of a time as a plan or a route gives it.</summary>
internal static class TimeLaws
{
    public static Pert Of(ThreePoint three, double lambda) =>
        new(three.Low.TotalSeconds, three.Likely.TotalSeconds, three.High.TotalSeconds, lambda);

    /// <remarks>Where no lognormal passes all three, P10 and P90 hold and P50 gives way.</remarks>
    public static LogNormal Of(Percentiles tenths) => tenths.P50 is { } middle
        ? LogNormal.FromQuantiles(tenths.P10.TotalSeconds, middle.TotalSeconds, tenths.P90.TotalSeconds)
        : LogNormal.FromQuantiles(tenths.P10.TotalSeconds, tenths.P90.TotalSeconds);

    /// <exception cref="ArgumentException">A distance is no time.</exception>
    public static Distribution Of(Extent extent, double lambda) => extent switch
    {
        ThreePoint three => Of(three, lambda),
        Percentiles tenths => Of(tenths),
        _ => throw new ArgumentException("A distance is no time.", nameof(extent)),
    };
}
