namespace Farhold.WayOut;

/// <summary>Calms a series of heights before its climbs are counted.</summary>
public static class Heights
{
    /// <summary>A height this many metres or more off the middle one of its five neighbours is a spike (design).</summary>
    public const double SpikeM = 50;

    /// <summary>Mean over a centred window, which shrinks evenly towards both ends.</summary>
    /// <param name="window">Number of heights, odd.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="window"/> is even or below 1.</exception>
    public static double[] MovingAverage(ReadOnlySpan<double> heights, int window)
    {
        if (window < 1 || window % 2 == 0)
            throw new ArgumentOutOfRangeException(nameof(window), window, "A centred window holds an odd number of heights.");
        var means = new double[heights.Length];
        for (var i = 0; i < heights.Length; i++)
        {
            var half = Math.Min(window / 2, Math.Min(i, heights.Length - 1 - i));
            var sum = 0.0;
            foreach (var height in heights.Slice(i - half, (2 * half) + 1))
                sum += height;
            means[i] = sum / ((2 * half) + 1);
        }

        return means;
    }

    /// <summary>Puts the median of five in the place of every spike.</summary>
    public static double[] WithoutSpikes(ReadOnlySpan<double> heights)
    {
        var calm = heights.ToArray();
        Span<double> five = stackalloc double[5];
        for (var i = 2; i < heights.Length - 2; i++)
        {
            heights.Slice(i - 2, 5).CopyTo(five);
            five.Sort();
            if (Math.Abs(heights[i] - five[2]) >= SpikeM)
                calm[i] = five[2];
        }

        return calm;
    }
}
