namespace Farhold.Signs;

/// <summary>The slopes of all pairs of readings at different times, sorted, and what the ties among them do.</summary>
internal sealed class PairSlopes
{
    private PairSlopes((double Hours, double Value)[] points, double[] sorted, long agreeing)
    {
        Points = points;
        Sorted = sorted;
        Agreeing = agreeing;
        Hours = [.. points.Select(p => p.Hours)];
        Values = [.. points.Select(p => p.Value).Order()];
        Ties = new(Hours, Values);
        Median = MedianOfSorted(sorted);
    }

    /// <summary>In order of time, thinned if there were many.</summary>
    internal (double Hours, double Value)[] Points { get; }

    /// <summary>At most <see cref="Trend.MostPoints"/> times one less, halved.</summary>
    internal double[] Sorted { get; }

    /// <summary>Kendall's statistic: rising pairs less falling ones.</summary>
    internal long Agreeing { get; }

    /// <summary>Sorted.</summary>
    internal double[] Hours { get; }

    /// <summary>Sorted, so no longer beside their hours.</summary>
    internal double[] Values { get; }

    internal Ties Ties { get; }

    internal double Median { get; }

    /// <summary>Null if no two readings are at different times.</summary>
    internal static PairSlopes? Of(IReadOnlyList<(double Hours, double Value)> readings)
    {
        if (readings.Any(r => !double.IsFinite(r.Hours) || !double.IsFinite(r.Value)))
            throw new ArgumentException("Every hour and value of a trend is finite.", nameof(readings));
        var points = Thin([.. readings.OrderBy(r => r.Hours).ThenBy(r => r.Value)]);
        var slopes = new List<double>(points.Length * points.Length / 2);
        var agreeing = 0L;
        for (var i = 0; i < points.Length; i++)
        {
            for (var j = i + 1; j < points.Length; j++)
            {
                if (points[j].Hours == points[i].Hours)
                    continue;
                slopes.Add((points[j].Value - points[i].Value) / (points[j].Hours - points[i].Hours));
                agreeing += Math.Sign(points[j].Value - points[i].Value);
            }
        }

        slopes.Sort();
        return slopes.Count == 0 ? null : new(points, [.. slopes], agreeing);
    }

    /// <summary>The slopes so far from the middle of the sorted ones; the outermost where that reaches beyond them.</summary>
    /// <param name="reach">A multiple of the standard deviation of Kendall's statistic.</param>
    internal (double Low, double High) Interval(double reach)
    {
        var (low, high) = Ranks(reach);
        return (Sorted[Math.Max(low, 0)], Sorted[Math.Min(high, Sorted.Length - 1)]);
    }

    /// <summary>
    /// Whether that interval leaves out zero. One that reaches beyond the slopes has no ends, and leaves out nothing.
    /// </summary>
    internal bool LeavesOutZero(double reach)
    {
        var (low, high) = Ranks(reach);
        return low >= 0 && high < Sorted.Length && (Sorted[low] > 0 || Sorted[high] < 0);
    }

    internal static double MedianOfSorted(double[] sorted) =>
        (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;

    private (int Low, int High) Ranks(double reach) =>
        ((int)Math.Round((Sorted.Length - reach) / 2) - 1, (int)Math.Round((Sorted.Length + reach) / 2));

    private static (double Hours, double Value)[] Thin((double Hours, double Value)[] points)
    {
        const int most = Trend.MostPoints;
        return points.Length <= most
            ? points
            : [.. Enumerable.Range(0, most).Select(i => points[(int)((long)i * (points.Length - 1) / (most - 1))])];
    }
}
