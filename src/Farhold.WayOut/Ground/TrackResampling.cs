using System.Collections.Immutable;

namespace Farhold.WayOut.Ground;

/// <summary>Evens out the spacing of points, so that noise over a few metres does not look like a cliff.</summary>
public static class TrackResampling
{
    /// <summary>Metres; rules that go by slope want 50 to 100 (design).</summary>
    public const double SpacingM = 75;

    /// <summary>The same way with points at even distances, as near to the spacing as the length of each segment allows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The spacing is not 1 to 10,000 m.</exception>
    public static Track Resampled(this Track track, double spacingM = SpacingM)
    {
        ArgumentNullException.ThrowIfNull(track);
        if (!(spacingM is >= 1 and <= 10_000))
            throw new ArgumentOutOfRangeException(nameof(spacingM), spacingM, "Points are set 1 to 10,000 m apart.");
        return track with { Segments = [.. track.Segments.Select(s => Resampled(s, spacingM))] };
    }

    private static TrackSegment Resampled(TrackSegment segment, double spacingM)
    {
        var steps = segment.Points.Zip(segment.Points.Skip(1)).Select(pair => TrackStep.Of(pair.First, pair.Second)).ToArray();
        var length = steps.Sum(s => s.Path.Metres);
        var count = Math.Max(1, (int)Math.Round(length / spacingM));
        var points = ImmutableArray.CreateBuilder<TrackPoint>(count + 1);
        points.Add(segment.Points[0]);
        var travelled = 0.0;
        foreach (var step in steps)
        {
            while (points.Count < count && points.Count * length / count < travelled + step.Path.Metres)
                points.Add(step.At(Math.Max(0, (points.Count * length / count) - travelled)));
            travelled += step.Path.Metres;
        }

        points.Add(segment.Points[^1]);
        return new(points.ToImmutable());
    }
}
