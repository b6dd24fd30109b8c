using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using Farhold.WayOut;

namespace Farhold.Tests.WayOut.Ground;

public class TrackTests
{
    private static readonly CheckTable Table = CheckTable.Of("gpx_checks.csv");
    private static readonly Lazy<Track> RealRun = new(() => GpxTests.Usable(GpxTests.Case("real-run.gpx")));

    // The rows on a file under the GPL stay out: that file can't be kept here.
    public static TheoryData<int, string, string> Checks => Table.Rows(
        (t, row) => $"{t.Text(row, "input")} {t.Text(row, "quantity")}",
        (t, row) => !t.Text(row, "input").StartsWith("Debian", StringComparison.Ordinal));

    private static readonly Gen<Track> Tracks = Gen.Select(
        GroundGens.Place, Gen.Select(Gen.Double[0, 360], Gen.Double[0.1, 800], Gen.Double[0, 3000], Gen.Int[0, 9]).List[2, 40]).Select((start, steps) =>
    {
        var segments = new List<TrackSegment>();
        var points = new List<TrackPoint> { new(start, 1000, Some.At("00:00")) };
        foreach (var (azimuth, metres, height, gap) in steps)
        {
            points.Add(new(Geodesic.From(points[^1].Place, azimuth, metres).Place, height, points[^1].Time!.Value + Duration.FromMinutes(1)));
            if (gap != 0 || points.Count < 2)
                continue;
            segments.Add(new([.. points]));
            points = [new(Geodesic.From(points[^1].Place, azimuth, 500).Place, height, points[^1].Time!.Value + Duration.FromMinutes(5))];
        }

        if (points.Count > 1)
            segments.Add(new([.. points]));
        return new Track("generated", [.. segments], [], []);
    });

    [Theory, MemberData(nameof(Checks))]
    public void A_checked_track_measures_what_it_was_found_to(int row, string label, string source)
    {
        var input = Table.Text(row, "input");
        var heights = input.StartsWith("npm", StringComparison.Ordinal)
            ? [.. RealRun.Value.Points.Select(p => p.ElevationM!.Value)]
            : Series(input);
        var found = Measured(Table.Text(row, "quantity"), heights);
        var expected = Table.Text(row, "value");
        if (found is Instant time)
            Assert.True(time == Some.Time(expected), $"{label}: {time} ({source})");
        else // lengths are printed to 10 µm, means to 0.1 µm
            Assert.True(Math.Abs((double)found - double.Parse(expected, CultureInfo.InvariantCulture)) <= 1e-5, $"{label}: {found} ({source})");
    }

    [Fact]
    public void Legs_sum_to_the_track_and_join_end_to_start() =>
        Gen.Select(Tracks, Gen.Int[1, 9]).Sample((track, count) =>
        {
            var legs = TrackLegs.OfEqualLength(track, count);
            Assert.Equal(count, legs.Length);
            Assert.All(legs, leg => Assert.Equal(track.Metres() / count, leg.Track.Metres(), 1e-4));
            foreach (var (before, after) in legs.Zip(legs.Skip(1)))
                Assert.True(
                    before.Track.Points.Last() == after.Track.Points.First()
                    || track.Segments.Any(s => Geodesic.Metres(s.Points[^1].Place, before.Track.Points.Last().Place) < 1e-5));
        });

    [Fact]
    public void Cutting_adds_no_climb_beyond_the_cuts_own_points() =>
        Gen.Select(Tracks, Gen.Int[1, 9]).Sample((track, count) =>
        {
            var whole = Climb.Of(track, 0)!.Value;
            var parts = TrackLegs.OfEqualLength(track, count).Select(l => Climb.Of(l.Track, 0)!.Value).Aggregate((a, b) => a.Plus(b));
            Assert.Equal(whole.AscentM, parts.AscentM, 1e-3);
            Assert.Equal(whole.DescentM, parts.DescentM, 1e-3);
        });

    [Fact]
    public void A_cut_falls_where_it_was_wanted()
    {
        var legs = TrackLegs.At(RealRun.Value, 5000, 1234.5);
        Assert.Equal([1234.5, 3765.5, 16545.88167], legs.Select(l => Math.Round(l.Track.Metres(), 5)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(30_000)]
    [InlineData(double.NaN)]
    public void A_cut_off_the_track_is_a_mistake_of_the_caller(double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TrackLegs.At(RealRun.Value, metres));

    [Fact]
    public void Waypoints_near_the_track_divide_it_by_name()
    {
        var start = new GeoPoint(46.5, 8.5);
        GeoPoint North(double metres) => Geodesic.From(start, 0, metres).Place;
        Waypoint At(string name, double north, double east) => new(name, new(Geodesic.From(North(north), 90, east).Place, null, null));
        var track = new Track(
            null, [new([new(start, null, null), new(North(1500), null, null), new(North(3000), null, null)])],
            [At("hut", 2000, 150), At("bridge", 700, -20), At("far village", 1000, 900), At("car park", 3000, 0)], []);
        var legs = TrackLegs.AtWaypoints(track);
        Assert.Equal(["bridge", "hut", null], legs.Select(l => l.EndName));
        Assert.Equal([700.0, 1300.0, 1000.0], legs.Select(l => Math.Round(l.Track.Metres(), 1)));
    }

    [Fact]
    public void No_point_of_a_track_is_nearer_than_the_nearest_spot() =>
        Gen.Select(Tracks, Gen.Double[0, 360], Gen.Double[0, 2000]).Sample((track, azimuth, metres) =>
        {
            var place = Geodesic.From(track.Segments[0].Points[1].Place, azimuth, metres).Place;
            var spot = TrackSpot.Nearest(track, place);
            Assert.InRange(spot.AlongM, 0, track.Metres() + 1e-6);
            Assert.All(track.Points, p => Assert.True(spot.OffM <= Geodesic.Metres(p.Place, place) + 0.01));
        });

    [Fact]
    public void Resampled_points_lie_evenly_on_the_track() =>
        Gen.Select(Tracks, Gen.Double[50, 100]).Sample((track, spacing) =>
        {
            var even = track.Resampled(spacing);
            Assert.True(even.Metres() <= track.Metres() + 1e-3);
            foreach (var (was, now) in track.Segments.Zip(even.Segments))
            {
                Assert.Equal(was.Points[0], now.Points[0]);
                Assert.Equal(was.Points[^1], now.Points[^1]);
                var step = was.Metres() / (now.Points.Length - 1);
                Assert.All(now.Points.Zip(now.Points.Skip(1)), p => Assert.True(Geodesic.Metres(p.First.Place, p.Second.Place) <= step + 1e-3));
                Assert.Equal(Math.Max(1, Math.Round(was.Metres() / spacing)), now.Points.Length - 1);
            }
        });

    [Fact]
    public void A_higher_threshold_never_counts_more_of_one_long_climb() =>
        Gen.Select(Gen.Double[0, 50].List[2, 60], Gen.Double[0, 20]).Sample((steps, threshold) =>
        {
            var heights = new List<double> { 0 };
            steps.ForEach(s => heights.Add(heights[^1] + s));
            var climb = Climb.Of(heights.ToArray(), threshold);
            Assert.Equal(0, climb.DescentM);
            Assert.InRange(climb.AscentM, heights[^1] - threshold - 1e-9, heights[^1] + 1e-9);
        });

    [Fact]
    public void Ascent_less_descent_is_the_height_won_up_to_a_threshold() =>
        Gen.Select(Gen.Double[0, 3000].List[1, 60], Gen.Double[0, 20]).Sample((heights, threshold) =>
        {
            var climb = Climb.Of(heights.ToArray(), threshold);
            Assert.True(Math.Abs(climb.AscentM - climb.DescentM - (heights[^1] - heights[0])) <= threshold + 1e-6);
        });

    [Fact]
    public void A_track_without_heights_has_an_unknown_climb_not_none() =>
        Assert.Null(Climb.Of(GpxTests.Usable(GpxTests.Case("zero-heights.gpx"))));

    [Fact]
    public void What_a_gap_hides_is_not_climbed()
    {
        TrackSegment At(double low, double high) => new([new(new(46, 8), low, null), new(new(46.01, 8), high, null)]);
        var track = new Track(null, [At(1000, 1100), At(1500, 1480)], [], []);
        Assert.Equal(new Climb(100, 20), Climb.Of(track));
    }

    [Fact]
    public void A_spike_is_put_right_and_a_cliff_is_left()
    {
        Assert.Equal([10.0, 11, 12, 13, 14], Heights.WithoutSpikes([10.0, 11, 400, 13, 14]).Select((h, i) => i == 2 ? h - 1 : h));
        double[] cliff = [10, 10, 10, 90, 90, 90];
        Assert.Equal(cliff, Heights.WithoutSpikes(cliff));
    }

    private static object Measured(string quantity, double[] heights)
    {
        var run = RealRun.Value;
        var number = int.TryParse(quantity[(quantity.LastIndexOf('_') + 1)..].TrimEnd('m'), out var n) ? n : 0;
        return quantity switch
        {
            "track_segments" => (double)run.Segments.Length,
            "points" => (double)run.Points.Count(),
            "length_geodesic" => run.Metres(),
            "first_time" => run.Points.First().Time!.Value,
            "last_time" => run.Points.Last().Time!.Value,
            "elapsed" => (run.Points.Last().Time!.Value - run.Points.First().Time!.Value).TotalSeconds,
            "ele_min" => heights.Min(),
            "ele_max" => heights.Max(),
            "ascent_naive" => Climb.Of(heights, 0).AscentM,
            "descent_naive" => Climb.Of(heights, 0).DescentM,
            _ when quantity.StartsWith("ascent_hysteresis", StringComparison.Ordinal) => Climb.Of(heights, number).AscentM,
            _ when quantity.StartsWith("descent_hysteresis", StringComparison.Ordinal) => Climb.Of(heights, number).DescentM,
            _ when quantity.StartsWith("ascent_moving_average", StringComparison.Ordinal) => Climb.Of(Heights.MovingAverage(heights, number), 0).AscentM,
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Nothing that is measured here."),
        };
    }

    private static double[] Series(string input) => input switch
    {
        "ele 0 0.5 1.0 ... 100 (201 points)" => [.. Enumerable.Range(0, 201).Select(i => i * 0.5)],
        "ele alternating 103 97 103 ... (101 points)" => [.. Enumerable.Range(0, 101).Select(i => i % 2 == 0 ? 103.0 : 97)],
        _ => [.. input.Split(' ').Skip(1).Select(s => double.Parse(s, CultureInfo.InvariantCulture))],
    };
}
