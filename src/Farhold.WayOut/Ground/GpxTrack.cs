using System.Collections.Immutable;

namespace Farhold.WayOut.Ground;

/// <summary>Judges what a GPX file holds, and makes the track of it.</summary>
internal static class GpxTrack
{
    /// <returns>The last piece has the track, or why there is none.</returns>
    public static IEnumerable<ReadingPiece<Track>> Pieces(GpxContent content, string file)
    {
        var warnings = content.Warnings;
        var hasTrack = content.TrackSegments.Exists(s => s.Count > 0);
        var source = hasTrack ? content.TrackSegments : content.Routes;
        var segments = source.Where(s => s.Count > 0).Select(s => TrackReview.WithoutRepeats(s, warnings)).ToList();
        var count = segments.Sum(s => s.Count);
        if (NoWay(content, segments, file) is { } refusal)
        {
            yield return new(1, Gpx.Refuse(refusal));
            yield break;
        }

        var first = segments[0][0];
        if (!hasTrack)
            warnings.Add(TrackWarningKind.RouteOnly, first.Line, first.Column, _ => GroundTexts.RouteOnly);
        else if (content.Routes.Exists(r => r.Count > 0))
            warnings.Add(TrackWarningKind.RouteLeftOut, first.Line, first.Column, _ => GroundTexts.RouteLeftOut);
        if (hasTrack && content.TrackCount > 1)
            warnings.Add(TrackWarningKind.SeveralTracks, first.Line, first.Column, _ => GroundTexts.TracksJoined(content.TrackCount));

        foreach (var looked in TrackReview.Warn(segments, isRoute: !hasTrack, warnings))
            yield return new((double)looked / count, null);
        var stride = ((count - 1) / Gpx.KeptPoints) + 1;
        if (stride > 1)
            warnings.Add(TrackWarningKind.Thinned, first.Line, first.Column, _ => GroundTexts.Thinned(count, stride));
        var useHeights = segments.Exists(s => s.Exists(p => p.ElevationM is not null and not 0));

        yield return new(
            1,
            new Read<Track>.Usable(
                new Track(
                    content.Name,
                    [.. segments.Where(s => s.Count > 1).Select(s => new TrackSegment(Kept(s, stride, useHeights)))],
                    [.. content.Waypoints.Select(w => new Waypoint(w.Name, w.Point.ToTrackPoint()))],
                    warnings.InFileOrder()
                )
            )
        );
    }

    private static Refusal? NoWay(GpxContent content, List<List<GpxPoint>> segments, string file)
    {
        if (segments.Count == 0)
            return new(
                file,
                1,
                1,
                content.Waypoints.Count > 0
                    ? $"The file holds {content.Waypoints.Count} waypoints but no track and no route."
                    : "The file holds no track and no route."
            );
        return segments.Exists(s => s.Count > 1)
            ? null
            : new(file, segments[0][0].Line, segments[0][0].Column, "The file holds single points only; a way has at least two.");
    }

    private static ImmutableArray<TrackPoint> Kept(List<GpxPoint> points, int stride, bool useHeights) =>
        [
            .. points
                .Where((_, i) => i % stride == 0 || i == points.Count - 1)
                .Select(p => useHeights ? p.ToTrackPoint() : p.ToTrackPoint() with { ElevationM = null }),
        ];
}
