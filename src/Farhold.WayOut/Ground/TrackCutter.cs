using System.Collections.Immutable;

namespace Farhold.WayOut;

internal static class TrackCutter
{
    /// <summary>A cut this close to a point of the track, metres, falls on it.</summary>
    private const double SnapM = 1e-6;

    /// <param name="cuts">Metres along the track, ascending, inside it.</param>
    public static ImmutableArray<TrackLeg> Cut(Track track, IReadOnlyList<(double Metres, string? Name)> cuts)
    {
        var legs = ImmutableArray.CreateBuilder<TrackLeg>();
        var segments = new List<TrackSegment>();
        var points = new List<TrackPoint>();
        var travelled = 0.0;
        foreach (var segment in track.Segments)
        {
            points.Add(segment.Points[0]);
            foreach (var (from, to) in segment.Points.Zip(segment.Points.Skip(1)))
            {
                var step = TrackStep.Of(from, to);
                while (legs.Count < cuts.Count && cuts[legs.Count].Metres < travelled + step.Path.Metres - SnapM)
                    CutAt(step.At(Math.Max(0, cuts[legs.Count].Metres - travelled)));
                travelled += step.Path.Metres;
                points.Add(to);
                while (legs.Count < cuts.Count && cuts[legs.Count].Metres <= travelled)
                    CutAt(to);
            }

            EndSegment();
        }

        EndLeg(null);
        return legs.ToImmutable();

        void CutAt(TrackPoint point)
        {
            if (points.Count == 0 || points[^1] != point)
                points.Add(point);
            EndSegment();
            EndLeg(cuts[legs.Count].Name);
            points.Add(point);
        }

        void EndSegment()
        {
            if (points.Count > 1)
                segments.Add(new([.. points]));
            points.Clear();
        }

        void EndLeg(string? name)
        {
            legs.Add(new(track with { Segments = [.. segments], Waypoints = [], Warnings = [] }, name));
            segments.Clear();
        }
    }
}
