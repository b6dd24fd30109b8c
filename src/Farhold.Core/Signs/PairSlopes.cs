namespace Farhold.Signs;

/// <summary>The slopes of all pairs of readings at different times, sorted, and what the ties among them do.</summary>
/// <remarks>
/// Their median is the slope of the Theil–Sen line, which stands as long as fewer than 29 % of many readings are wrong. Sources:
/// Theil 1950; Sen 1968, J Am Stat Assoc 63:1379 (slope, and interval from the variance of Kendall's statistic with ties), from memory.
/// Agrees with <c>scipy.stats.theilslopes</c> on the committed figures.
/// </remarks>
internal sealed class PairSlopes
{
    /// <summary>More readings than this are thinned to this many, evenly by order, first and last kept.</summary>
    internal const int MostPoints = 600;

    private PairSlopes((double Hours, double Value)[] points, double[] sorted)
    {
        Points = points;
        Sorted = sorted;
        Hours = [.. points.Select(p => p.Hours)];
        Ties = new(Hours, [.. points.Select(p => p.Value).Order()]);
        Median = MedianOfSorted(sorted);
    }

    /// <summary>In order of time, thinned if there were many.</summary>
    internal (double Hours, double Value)[] Points { get; }

    /// <summary>At most <see cref="MostPoints"/> times one less, halved.</summary>
    internal double[] Sorted { get; }

    /// <summary>Sorted.</summary>
    internal double[] Hours { get; }

    internal Ties Ties { get; }

    internal double Median { get; }

    /// <summary>Null if no two readings are at different times.</summary>
    internal static PairSlopes? Of(IReadOnlyList<(double Hours, double Value)> readings)
    {
        if (readings.Any(r => !double.IsFinite(r.Hours) || !double.IsFinite(r.Value)))
            throw new ArgumentException("Every hour and value of a trend is finite.", nameof(readings));
        var points = Thin([.. readings.OrderBy(r => r.Hours).ThenBy(r => r.Value)]);
        var slopes = new List<double>(points.Length * points.Length / 2);
        for (var i = 0; i < points.Length; i++)
        {
            for (var j = i + 1; j < points.Length; j++)
            {
                if (points[j].Hours == points[i].Hours)
                    continue;
                slopes.Add((points[j].Value - points[i].Value) / (points[j].Hours - points[i].Hours));
            }
        }

        slopes.Sort();
        return slopes.Count == 0 ? null : new(points, [.. slopes]);
    }

    /// <summary>Whether the slopes so far from the middle of the sorted ones, and all between them, leave out zero.</summary>
    /// <param name="reach">A multiple of the standard deviation of Kendall's statistic.</param>
    /// <remarks>One that reaches beyond the slopes has no ends, and leaves out nothing.</remarks>
    internal bool LeavesOutZero(double reach)
    {
        var (low, high) = Ranks(reach);
        return low >= 0 && high < Sorted.Length && (Sorted[low] > 0 || Sorted[high] < 0);
    }

    private static double MedianOfSorted(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;

    private (int Low, int High) Ranks(double reach) =>
        ((int)Math.Round((Sorted.Length - reach) / 2) - 1, (int)Math.Round((Sorted.Length + reach) / 2));

    private static (double Hours, double Value)[] Thin((double Hours, double Value)[] points)
    {
        const int last = MostPoints - 1;
        return points.Length <= MostPoints
            ? points
            : [.. Enumerable.Range(0, MostPoints).Select(i => points[(int)((long)i * (points.Length - 1) / last)])];
    }
}
