namespace Farhold.WayOut.Ground;

/// <summary>Metres gone up and metres gone down.</summary>
/// <remarks>
/// Heights wobble, and every wobble would count as a climb. So a height is kept in mind, and only when the track is a
/// threshold or more away from it is the whole difference booked and the new height kept in mind. All thresholds: design.
/// </remarks>
public readonly record struct Climb(double AscentM, double DescentM)
{
    /// <summary>Metres; for heights of unknown origin.</summary>
    public const double ThresholdM = 5;

    /// <summary>Metres; for heights from satellites alone.</summary>
    public const double SatelliteThresholdM = 10;

    /// <summary>Metres; for heights from a barometer or a terrain model.</summary>
    public const double BarometerThresholdM = 3;

    /// <param name="thresholdM">0 books every difference.</param>
    /// <returns><c>null</c> if no segment has two heights: the climb is unknown, not zero.</returns>
    public static Climb? Of(Track track, double thresholdM = ThresholdM)
    {
        ArgumentNullException.ThrowIfNull(track);
        var climbs = track
            .Segments.Select(s => s.Points.Where(p => p.ElevationM is not null).Select(p => p.ElevationM!.Value).ToArray())
            .Where(heights => heights.Length > 1)
            .Select(heights => Of(heights, thresholdM))
            .ToArray();
        return climbs.Length == 0 ? null : climbs.Aggregate(default(Climb), (a, b) => a.Plus(b));
    }

    /// <param name="heights">Metres, in the order of the way; points without a height left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">The threshold is negative or not finite.</exception>
    public static Climb Of(ReadOnlySpan<double> heights, double thresholdM = ThresholdM)
    {
        if (!(thresholdM >= 0) || !double.IsFinite(thresholdM))
            throw new ArgumentOutOfRangeException(nameof(thresholdM), thresholdM, "A threshold is zero or a positive number of metres.");
        if (heights.IsEmpty)
            return default;
        var (up, down, kept) = (0.0, 0.0, heights[0]);
        foreach (var height in heights)
        {
            var difference = height - kept;
            if (Math.Abs(difference) < thresholdM)
                continue;
            up += Math.Max(0, difference);
            down += Math.Max(0, -difference);
            kept = height;
        }

        return new(up, down);
    }

    public Climb Plus(Climb other) => new(AscentM + other.AscentM, DescentM + other.DescentM);
}
