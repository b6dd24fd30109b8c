namespace Farhold.Signs;

/// <summary>What equal times and equal values do to Kendall's statistic.</summary>
/// <remarks>Source: Kendall 1970, Rank Correlation Methods, chapters 3 and 4 (from memory); Sen 1968 for the slope.</remarks>
internal readonly struct Ties
{
    /// <param name="hours">Sorted.</param>
    /// <param name="values">Sorted; as many.</param>
    internal Ties(double[] hours, double[] values)
    {
        var n = (double)hours.Length;
        var all = n * (n - 1) * ((2 * n) + 5);
        SlopeVariance = Math.Max(0, (all - Tied(hours) - Tied(values)) / 18);
    }

    /// <summary>As Sen 1968 has it for the interval of the slope: both ties taken off, no cross terms.</summary>
    internal double SlopeVariance { get; }

    private static double Tied(double[] sorted)
    {
        var sum = 0.0;
        for (int from = 0, to; from < sorted.Length; from = to)
        {
            to = from + 1;
            while (to < sorted.Length && sorted[to] == sorted[from])
                to++;
            var t = (double)(to - from);
            sum += t * (t - 1) * ((2 * t) + 5);
        }

        return sum;
    }
}
