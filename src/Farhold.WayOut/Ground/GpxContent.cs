using NodaTime;

namespace Farhold.WayOut.Ground;

/// <summary>A point as read, with where it stood in the file.</summary>
internal readonly record struct GpxPoint(GeoPoint Place, double? ElevationM, Instant? Time, int Line, int Column)
{
    public TrackPoint ToTrackPoint() => new(Place, ElevationM, Time);
}

/// <summary>What a GPX file holds, before it is judged.</summary>
internal sealed class GpxContent
{
    public string? Name { get; set; }

    public int TrackCount { get; set; }

    public List<List<GpxPoint>> TrackSegments { get; } = [];

    public List<List<GpxPoint>> Routes { get; } = [];

    public List<(string? Name, GpxPoint Point)> Waypoints { get; } = [];

    public TrackWarnings Warnings { get; } = new();
}
