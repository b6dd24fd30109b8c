namespace Farhold.WayOut.Ground;

/// <summary>Where in a GPX file an element stands; names are compared without their namespace.</summary>
internal enum GpxPlace
{
    Elsewhere,
    File,
    Track,
    Segment,
    TrackPoint,
    Route,
    RoutePoint,
    Waypoint,
    Name,
    Elevation,
    Time,
}

internal static class GpxPlaces
{
    public static GpxPlace Child(GpxPlace parent, string name) =>
        (parent, name) switch
        {
            (GpxPlace.File, "trk") => GpxPlace.Track,
            (GpxPlace.Track, "trkseg") => GpxPlace.Segment,
            (GpxPlace.Segment, "trkpt") => GpxPlace.TrackPoint,
            (GpxPlace.File, "rte") => GpxPlace.Route,
            (GpxPlace.Route, "rtept") => GpxPlace.RoutePoint,
            (GpxPlace.File, "wpt") => GpxPlace.Waypoint,
            (GpxPlace.Track or GpxPlace.Route or GpxPlace.Waypoint, "name") => GpxPlace.Name,
            (_, "ele") when IsPoint(parent) => GpxPlace.Elevation,
            (_, "time") when IsPoint(parent) => GpxPlace.Time,
            _ => GpxPlace.Elsewhere,
        };

    public static bool IsPoint(GpxPlace place) => place is GpxPlace.TrackPoint or GpxPlace.RoutePoint or GpxPlace.Waypoint;
}
