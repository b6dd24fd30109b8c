namespace Farhold.Signs;

/// <summary>A line through one sign, little moved by single bad readings.</summary>
/// <param name="Points">How many readings it rests on, after thinning.</param>
/// <param name="SlopePerHour">Median of the slopes of all pairs at different times, units of the sign per hour.</param>
/// <param name="SlopeLow">Lower end of the 99 % interval of the slope.</param>
/// <param name="SlopeHigh">Upper end.</param>
/// <param name="Intercept">Of the line at hour 0: median value less slope × median hour.</param>
/// <param name="Tau">Kendall's tau-b, −1 to 1; 0 where every value is the same.</param>
/// <param name="PValue">Two-sided, of Kendall's test by the normal approximation with ties, no continuity correction.</param>
/// <param name="SpanHours">From the first reading to the last.</param>
public sealed record TrendLine(
    int Points,
    double SlopePerHour,
    double SlopeLow,
    double SlopeHigh,
    double Intercept,
    double Tau,
    double PValue,
    double SpanHours)
{
    /// <summary>How far the line moves over the readings, units of the sign.</summary>
    public double Change => SlopePerHour * SpanHours;
}

/// <summary>The Theil–Sen line: it stands as long as fewer than 29 % of many readings are wrong (Sen 1968).</summary>
/// <remarks>
/// Sources: Theil 1950; Sen 1968, J Am Stat Assoc 63:1379 (slope, and interval from the variance of Kendall's statistic
/// with ties); intercept, Conover 1980 (all from memory). Agrees with <c>scipy.stats.theilslopes</c> and
/// <c>kendalltau</c> on the committed figures. The interval takes readings as independent, and with fewer than six it
/// is the whole range of slopes and holds less often than it says; <see cref="Course"/> allows for both.
/// </remarks>
public static class Trend
{
    /// <summary>More readings than this are thinned to this many, evenly by order, first and last kept.</summary>
    public const int MostPoints = 600;

    /// <summary>The line, or null if no two readings are at different times.</summary>
    /// <param name="readings">Hours from any fixed start, and values; in any order, times may repeat.</param>
    /// <exception cref="ArgumentException">An hour or value is not finite.</exception>
    public static TrendLine? Of(IReadOnlyList<(double Hours, double Value)> readings) =>
        PairSlopes.Of(readings) is { } pairs ? Line(pairs) : null;

    private static TrendLine Line(PairSlopes pairs)
    {
        var ties = pairs.Ties;
        var (low, high) = pairs.Interval(Gauss.TwoSided1Percent * Math.Sqrt(ties.SlopeVariance));
        return new(
            pairs.Points.Length,
            pairs.Median,
            low,
            high,
            PairSlopes.MedianOfSorted(pairs.Values) - (pairs.Median * PairSlopes.MedianOfSorted(pairs.Hours)),
            ties.UntiedPairs == 0 ? 0 : pairs.Agreeing / ties.UntiedPairs,
            ties.KendallVariance == 0 ? 1 : Gauss.TwoSidedTail(Math.Abs(pairs.Agreeing) / Math.Sqrt(ties.KendallVariance)),
            pairs.Hours[^1] - pairs.Hours[0]);
    }
}
