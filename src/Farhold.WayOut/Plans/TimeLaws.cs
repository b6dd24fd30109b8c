namespace Farhold.WayOut.Plans;

/// <summary>The law, in seconds, of a time as a plan or a route gives it.</summary>
internal static class TimeLaws
{
    public static Pert Of(ThreePoint three, double lambda) =>
        new(three.Low.TotalSeconds, three.Likely.TotalSeconds, three.High.TotalSeconds, lambda);

    /// <remarks>All that is given holds: where no lognormal passes the three, one with two spreads does.</remarks>
    public static Distribution Of(Percentiles tenths)
    {
        var (low, high) = (tenths.P10.TotalSeconds, tenths.P90.TotalSeconds);
        if (tenths.P50?.TotalSeconds is not { } middle)
            return LogNormal.FromQuantiles(low, high);
        var one = LogNormal.FromQuantiles(low, middle, high);
        return Math.Abs(one.Quantile(0.5) - middle) <= 1e-6 * middle ? one : new SplitLogNormal(low, middle, high);
    }

    public static LogNormal Of(Prior prior) => LogNormal.FromQuantiles(60 * prior.P10Minutes, 60 * prior.P50Minutes, 60 * prior.P90Minutes);

    /// <exception cref="ArgumentException">A distance is no time.</exception>
    public static Distribution Of(Extent extent, double lambda) =>
        extent switch
        {
            ThreePoint three => Of(three, lambda),
            Percentiles tenths => Of(tenths),
            _ => throw new ArgumentException("A distance is no time.", nameof(extent)),
        };
}
