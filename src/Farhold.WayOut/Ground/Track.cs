using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Ground;

/// <param name="ElevationM">Metres; above sea level or above the ellipsoid, files do not say which. Only differences count.</param>
public readonly record struct TrackPoint(GeoPoint Place, double? ElevationM, Instant? Time);

/// <summary>Points recorded or drawn without a break.</summary>
public sealed record TrackSegment(ImmutableArray<TrackPoint> Points)
{
    /// <summary>Length on the ellipsoid, metres; climbing is not added.</summary>
    public double Metres() => Measure().Last();

    /// <returns>The length so far, after each piece; last the whole.</returns>
    internal IEnumerable<double> Measure()
    {
        var sum = 0.0;
        for (var i = 1; i < Points.Length; i++)
        {
            sum += Geodesic.Metres(Points[i - 1].Place, Points[i].Place);
            if (i % ReadingPiece<Track>.Length == 0)
                yield return sum;
        }

        yield return sum;
    }
}

/// <summary>A named place that came with a track.</summary>
public sealed record Waypoint(string? Name, TrackPoint Point);

/// <summary>A way over the ground.</summary>
/// <param name="Segments">In order. What lies between two of them was not recorded and counts for nothing.</param>
/// <param name="Warnings">What a person should know before trusting it, in file order.</param>
public sealed record Track(
    string? Name,
    ImmutableArray<TrackSegment> Segments,
    ImmutableArray<Waypoint> Waypoints,
    ImmutableArray<TrackWarning> Warnings
)
{
    public IEnumerable<TrackPoint> Points => Segments.SelectMany(s => s.Points);

    /// <summary>Length on the ellipsoid, metres, gaps between segments left out.</summary>
    public double Metres() => Segments.Sum(s => s.Metres());
}
