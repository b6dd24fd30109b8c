using System.Globalization;

namespace Farhold.WayOut.Ground;

/// <summary>Looks for what makes a track doubtful.</summary>
internal static class TrackReview
{
    /// <summary>Neighbours in a track further apart than this, metres, are a jump; in a route, whose points are set by hand, ten
    /// times as far (design).</summary>
    private const double JumpM = 10_000;

    /// <summary>So is a step of over a kilometre at more than this, metres in a second: 360 km/h (design).</summary>
    private const double JumpSpeed = 100;

    /// <summary>Leaves out points that repeat the one before in place and time; standing still is kept.</summary>
    public static List<GpxPoint> WithoutRepeats(List<GpxPoint> points, TrackWarnings warnings)
    {
        var kept = new List<GpxPoint>(points.Count);
        foreach (var point in points)
        {
            if (kept.Count > 0 && kept[^1].Place == point.Place && kept[^1].Time == point.Time)
                warnings.Add(TrackWarningKind.RepeatedPoints, point.Line, point.Column, count => GroundTexts.Repeated(count));
            else
                kept.Add(point);
        }

        return kept;
    }

    /// <returns>How many points have been looked at, after each piece. All has been warned of once all pieces are taken.</returns>
    public static IEnumerable<int> Warn(List<List<GpxPoint>> segments, bool isRoute, TrackWarnings warnings)
    {
        var points = segments.SelectMany(s => s).ToList();
        WarnOfHeights(points, warnings);
        WarnOfTimes(points, warnings);
        var looked = 0;
        foreach (var segment in segments)
            for (var i = 1; i < segment.Count; i++)
            {
                WarnOfJump(segment[i - 1], segment[i], isRoute, warnings);
                if (++looked % ReadingPiece<Track>.Length == 0)
                    yield return looked;
            }

        foreach (var segment in segments.Skip(1))
            warnings.Add(TrackWarningKind.Gaps, segment[0].Line, segment[0].Column, count => GroundTexts.Gaps(count));
    }

    private static void WarnOfHeights(List<GpxPoint> points, TrackWarnings warnings)
    {
        var missing = points.Count(p => p.ElevationM is null);
        var first = points.Find(p => p.ElevationM is null);
        if (missing == points.Count || points.TrueForAll(p => p.ElevationM is null or 0))
            warnings.Add(TrackWarningKind.NoElevation, points[0].Line, points[0].Column, _ => GroundTexts.NoHeights);
        else if (missing > 0)
            warnings.Add(
                TrackWarningKind.SomeElevationMissing,
                first.Line,
                first.Column,
                _ => GroundTexts.SomeHeightsMissing(missing, points.Count)
            );
    }

    private static void WarnOfTimes(List<GpxPoint> points, TrackWarnings warnings)
    {
        var missing = points.Count(p => p.Time is null);
        var first = points.Find(p => p.Time is null);
        if (missing == points.Count)
            warnings.Add(TrackWarningKind.NoTime, points[0].Line, points[0].Column, _ => GroundTexts.NoTimes);
        else if (missing > 0)
            warnings.Add(
                TrackWarningKind.SomeTimeMissing,
                first.Line,
                first.Column,
                _ => GroundTexts.SomeTimesMissing(missing, points.Count)
            );

        var last = default(GpxPoint?);
        foreach (var point in points.Where(p => p.Time is not null))
        {
            if (last is { } before && point.Time < before.Time)
                warnings.Add(TrackWarningKind.TimeRunsBack, point.Line, point.Column, count => GroundTexts.TimeRunsBack(count));
            last = point;
        }
    }

    private static void WarnOfJump(GpxPoint from, GpxPoint to, bool isRoute, TrackWarnings warnings)
    {
        var metres = Geodesic.Metres(from.Place, to.Place);
        var seconds = to.Time is { } end && from.Time is { } start ? (end - start).TotalSeconds : double.PositiveInfinity;
        var far = metres > (isRoute ? 10 * JumpM : JumpM) || (metres > 1000 && seconds >= 0 && metres > JumpSpeed * seconds);
        if (far)
            warnings.Add(
                TrackWarningKind.Jump,
                to.Line,
                to.Column,
                count => GroundTexts.Jump(count, (metres / 1000).ToString("F1", CultureInfo.InvariantCulture), from.Line)
            );
    }
}
