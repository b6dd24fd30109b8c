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
        var x = Sums(hours);
        var y = Sums(values);
        var all = n * (n - 1) * ((2 * n) + 5);
        SlopeVariance = Math.Max(0, (all - x.Fives - y.Fives) / 18);
        KendallVariance = SlopeVariance
            + (x.Pairs * y.Pairs / (2 * n * (n - 1)))
            + (n < 3 ? 0 : x.Triples * y.Triples / (9 * n * (n - 1) * (n - 2)));
        var pairs = n * (n - 1) / 2;
        UntiedPairs = Math.Sqrt((pairs - (x.Pairs / 2)) * (pairs - (y.Pairs / 2)));
    }

    /// <summary>As Sen 1968 has it for the interval of the slope: both ties taken off, no cross terms.</summary>
    internal double SlopeVariance { get; }

    internal double KendallVariance { get; }

    /// <summary>Geometric mean of the pairs not tied in time and the pairs not tied in value: the divisor of tau-b.</summary>
    internal double UntiedPairs { get; }

    private static (double Pairs, double Triples, double Fives) Sums(double[] sorted)
    {
        var (pairs, triples, fives) = (0.0, 0.0, 0.0);
        for (int from = 0, to; from < sorted.Length; from = to)
        {
            to = from + 1;
            while (to < sorted.Length && sorted[to] == sorted[from])
                to++;
            var t = (double)(to - from);
            pairs += t * (t - 1);
            triples += t * (t - 1) * (t - 2);
            fives += t * (t - 1) * ((2 * t) + 5);
        }

        return (pairs, triples, fives);
    }
}
