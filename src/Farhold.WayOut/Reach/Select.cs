namespace Farhold.WayOut.Reach;

/// <summary>Quantiles of figures in any order, without sorting them all.</summary>
internal static class Select
{
    /// <summary>The same as <see cref="QuantileEstimate"/> gives of the sorted figures; their order is changed.</summary>
    public static double Quantile(Span<double> figures, double p)
    {
        var place = (figures.Length - 1) * p;
        var whole = (int)place;
        Part(figures, whole);
        var low = figures[whole];
        if (place == whole || whole + 1 >= figures.Length)
            return low;
        var high = double.PositiveInfinity;
        foreach (var later in figures[(whole + 1)..])
            high = Math.Min(high, later);
        return low == high ? low : low + ((place - whole) * (high - low));
    }

    /// <summary>Puts the k-th least at k, nothing greater before it, nothing less behind it (Hoare 1961, algorithm 65).</summary>
    private static void Part(Span<double> figures, int k)
    {
        var (low, high) = (0, figures.Length - 1);
        while (low < high)
        {
            var (a, b, c) = (figures[low], figures[(low + high) >>> 1], figures[high]);
            var pivot = Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
            var (i, j) = (low, high);
            while (i <= j)
            {
                while (figures[i] < pivot)
                    i++;
                while (figures[j] > pivot)
                    j--;
                if (i <= j)
                {
                    (figures[i], figures[j]) = (figures[j], figures[i]);
                    (i, j) = (i + 1, j - 1);
                }
            }

            if (k <= j)
                high = j;
            else if (k >= i)
                low = i;
            else
                return;
        }
    }
}
