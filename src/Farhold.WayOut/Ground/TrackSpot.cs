namespace Farhold.WayOut.Ground;

/// <summary>Where a track passes closest to a place.</summary>
/// <param name="AlongM">Metres from the start of the track.</param>
/// <param name="OffM">Metres from the place to the track.</param>
public readonly record struct TrackSpot(double AlongM, double OffM)
{
    /// <returns>The first of several equally close.</returns>
    public static TrackSpot Nearest(Track track, GeoPoint place)
    {
        ArgumentNullException.ThrowIfNull(track);
        var best = new TrackSpot(0, double.PositiveInfinity);
        var travelled = 0.0;
        foreach (var segment in track.Segments)
            for (var i = 1; i < segment.Points.Length; i++)
            {
                var step = TrackStep.Of(segment.Points[i - 1], segment.Points[i]);
                var toPlace = Geodesic.Between(step.From.Place, place);
                var along = Foot(step, toPlace);
                var off = along == 0 ? toPlace.Metres : Geodesic.Metres(step.At(along).Place, place);
                if (off < best.OffM)
                    best = new(travelled + along, off);
                travelled += step.Path.Metres;
            }

        return best;
    }

    // On a sphere of the earth's size: right to well under a metre for steps of a track, and never off the step.
    private static double Foot(TrackStep step, GeodesicPath toPlace)
    {
        const double radius = Wgs84.SemiMajorAxis;
        var angle = (toPlace.StartAzimuth - step.Path.StartAzimuth) * Math.PI / 180;
        var arc = toPlace.Metres / radius;
        var along = Math.Atan2(Math.Sin(arc) * Math.Cos(angle), Math.Cos(arc)) * radius;
        return Math.Clamp(along, 0, step.Path.Metres);
    }
}
