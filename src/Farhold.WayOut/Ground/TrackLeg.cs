using System.Collections.Immutable;

namespace Farhold.WayOut;

/// <summary>A part of a track, from one cut to the next.</summary>
/// <param name="EndName">Name of the waypoint at its end; <c>null</c> at the end of the track and at nameless cuts.</param>
public sealed record TrackLeg(Track Track, string? EndName);

/// <summary>Cuts a track into legs, whose lengths sum to its own.</summary>
public static class TrackLegs
{
    /// <summary>How far a waypoint may lie off the track and still divide it, metres (design).</summary>
    public const double WaypointReachM = 200;

    /// <summary>Cuts closer than this to either end or to each other, metres, are no cuts.</summary>
    private const double LeastM = 1;

    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is not 1 to 1,000.</exception>
    public static ImmutableArray<TrackLeg> OfEqualLength(Track track, int count)
    {
        if (count is < 1 or > 1000)
            throw new ArgumentOutOfRangeException(nameof(count), count, "A track is cut into 1 to 1,000 legs.");
        var metres = track.Metres();
        return TrackCutter.Cut(track, [.. Enumerable.Range(1, count - 1).Select(i => (metres * i / count, (string?)null))]);
    }

    /// <param name="metres">From the start, along the track.</param>
    /// <exception cref="ArgumentOutOfRangeException">A distance is not between the ends of the track.</exception>
    public static ImmutableArray<TrackLeg> At(Track track, params ReadOnlySpan<double> metres)
    {
        var length = track.Metres();
        var cuts = new List<(double Metres, string? Name)>();
        foreach (var cut in metres)
        {
            if (!(cut > 0 && cut < length))
                throw new ArgumentOutOfRangeException(nameof(metres), cut, $"A cut lies between 0 and the length of the track, {length:F0} m.");
            cuts.Add((cut, null));
        }

        return TrackCutter.Cut(track, [.. cuts.OrderBy(c => c.Metres)]);
    }

    /// <summary>Cuts at every waypoint of the track that lies near it, where the track passes it closest (the first time).</summary>
    public static ImmutableArray<TrackLeg> AtWaypoints(Track track, double reachM = WaypointReachM)
    {
        var length = track.Metres();
        var cuts = new List<(double Metres, string? Name)>();
        foreach (var (name, spot) in track.Waypoints.Select(w => (w.Name, TrackSpot.Nearest(track, w.Point.Place))).OrderBy(w => w.Item2.AlongM))
            if (spot.OffM <= reachM && spot.AlongM - (cuts.Count > 0 ? cuts[^1].Metres : 0) >= LeastM && length - spot.AlongM >= LeastM)
                cuts.Add((spot.AlongM, name));
        return TrackCutter.Cut(track, cuts);
    }
}
