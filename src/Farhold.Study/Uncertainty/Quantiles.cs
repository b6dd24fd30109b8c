namespace Farhold.Study.Uncertainty;

internal static class Quantiles
{
    /// <summary>Of sorted numbers, straight between two: definition 7 of Hyndman and Fan 1996.</summary>
    public static double Of(ReadOnlySpan<double> sorted, double p)
    {
        var at = (sorted.Length - 1) * p;
        var low = (int)Math.Floor(at);
        var high = Math.Min(low + 1, sorted.Length - 1);
        return sorted[low] + ((at - low) * (sorted[high] - sorted[low]));
    }
}
