using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Reach;

/// <summary>A route evened out to points, with sums from its start so that any piece of it is measured by two subtractions.</summary>
internal sealed class RouteLine
{
    private readonly Track evened;
    private readonly double[] chordM,
        alongM,
        upM,
        downM,
        walkOn,
        walkBack;

    private RouteLine(Track evened, double[] chordM, double[] alongM, double[] upM, double[] downM, double[] walkOn, double[] walkBack) =>
        (this.evened, this.chordM, this.alongM, this.upM, this.downM, this.walkOn, this.walkBack) = (
            evened,
            chordM,
            alongM,
            upM,
            downM,
            walkOn,
            walkBack
        );

    public ImmutableArray<TrackPoint> Points => evened.Segments[0].Points;

    public double LengthM => alongM[^1];

    public double AlongM(int point) => alongM[point];

    public static RouteLine Of(Track track, double spacingM, Moving moving)
    {
        // What lies between two segments has to be covered on foot all the same: it counts as a straight line.
        var joined = track with
        {
            Segments = [new([.. track.Points])],
        };
        var evened = joined.Resampled(spacingM);
        var points = evened.Segments[0].Points;
        var (chords, along) = (new double[points.Length], new double[points.Length]);
        for (var i = 1; i < points.Length; i++)
            chords[i] = chords[i - 1] + Geodesic.Metres(points[i - 1].Place, points[i].Place);
        var (up, down, length) = Booked(joined, points.Length);
        for (var i = 0; i < points.Length; i++)
            along[i] = length * i / (points.Length - 1);
        var (on, back) = (new double[points.Length], new double[points.Length]);
        for (var i = 1; i < points.Length; i++)
        {
            var (km, rise, fall) = ((along[i] - along[i - 1]) / 1000, up[i] - up[i - 1], down[i] - down[i - 1]);
            on[i] = on[i - 1] + Seconds(moving, new(km, rise, fall));
            back[i] = back[i - 1] + Seconds(moving, new(km, fall, rise));
        }

        return new(evened, chords, along, up, down, on, back);
    }

    /// <summary>Metres along the route, and off it.</summary>
    public TrackSpot Nearest(GeoPoint place)
    {
        var spot = TrackSpot.Nearest(evened, place);
        var i = Math.Clamp(Array.BinarySearch(chordM, spot.AlongM) is var found && found < 0 ? ~found : found, 1, chordM.Length - 1);
        var part = chordM[i] > chordM[i - 1] ? (spot.AlongM - chordM[i - 1]) / (chordM[i] - chordM[i - 1]) : 0;
        return new(alongM[i - 1] + (Math.Clamp(part, 0, 1) * (alongM[i] - alongM[i - 1])), spot.OffM);
    }

    /// <summary>The ground from one place of the route to another, and the seconds a walker's rule gives for it.</summary>
    public (Stretch Ground, double WalkSeconds) Between(double fromM, double toM)
    {
        var (near, far) = (Math.Min(fromM, toM), Math.Max(fromM, toM));
        var (km, up, down) = ((far - near) / 1000, Sum(upM, near, far), Sum(downM, near, far));
        return fromM <= toM ? (new(km, up, down), Sum(walkOn, near, far)) : (new(km, down, up), Sum(walkBack, near, far));
    }

    public static double Seconds(Moving moving, Stretch ground) =>
        moving.Mode == TravelMode.Walk ? moving.Rule.Time(ground).TotalSeconds : 0;

    private double Sum(double[] sums, double near, double far) => Math.Max(0, At(sums, far) - At(sums, near));

    private double At(double[] sums, double along)
    {
        var place = LengthM > 0 ? Math.Clamp(along / LengthM, 0, 1) * (sums.Length - 1) : 0;
        var i = Math.Min((int)place, sums.Length - 2);
        return sums[i] + ((place - i) * (sums[i + 1] - sums[i]));
    }

    /// <summary>
    /// Climb from the start to each even place, booked on the points as recorded, so that spacing does not smooth it away.
    /// </summary>
    private static (double[] Up, double[] Down, double Length) Booked(Track joined, int count)
    {
        var points = joined.Segments[0].Points;
        var marks = new (double Along, double Up, double Down)[points.Length];
        double? kept = null;
        for (var i = 0; i < points.Length; i++)
        {
            var mark = i == 0 ? default : marks[i - 1];
            if (i > 0)
                mark.Along += Geodesic.Metres(points[i - 1].Place, points[i].Place);
            if (points[i].ElevationM is { } height)
            {
                kept ??= height;
                var difference = height - kept.Value;
                if (Math.Abs(difference) >= Climb.ThresholdM)
                    (mark.Up, mark.Down, kept) = (mark.Up + Math.Max(0, difference), mark.Down + Math.Max(0, -difference), height);
            }

            marks[i] = mark;
        }

        var (up, down, length) = (new double[count], new double[count], marks[^1].Along);
        for (int i = 0, at = 0; i < count; i++)
        {
            var target = length * i / (count - 1);
            while (at + 2 < marks.Length && marks[at + 1].Along <= target)
                at++;
            var (from, to) = (marks[at], marks[at + 1]);
            var part = to.Along > from.Along ? Math.Clamp((target - from.Along) / (to.Along - from.Along), 0, 1) : 1;
            (up[i], down[i]) = (from.Up + (part * (to.Up - from.Up)), from.Down + (part * (to.Down - from.Down)));
        }

        (up[^1], down[^1]) = (marks[^1].Up, marks[^1].Down);
        return (up, down, length);
    }
}
