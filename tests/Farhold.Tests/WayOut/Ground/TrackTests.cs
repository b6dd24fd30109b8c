using System.Collections.Immutable;
using System.Globalization;
using CsCheck;

namespace Farhold.Tests.WayOut.Ground;

public class TrackTests
{
    private static readonly CheckTable Table = CheckTable.Of("gpx_checks.csv");
    private static readonly Lazy<Track> RealRun = new(() => GpxTests.Usable(GpxTests.Case("real-run.gpx")));

    // The rows on a file under the GPL stay out: that file can't be kept here.
    public static TheoryData<int, string, string> Checks =>
        Table.Rows(
            (t, row) => $"{t.Text(row, "input")} {t.Text(row, "quantity")}",
            (t, row) => !t.Text(row, "input").StartsWith("Debian", StringComparison.Ordinal)
        );

    private static readonly Gen<Track> Tracks = Gen.Select(
            GroundGens.Place,
            Gen.Select(Gen.Double[0, 360], Gen.Double[0.1, 800], Gen.Double[0, 3000], Gen.Int[0, 9]).List[2, 40]
        )
        .Select(
            (start, steps) =>
            {
                var segments = new List<TrackSegment>();
                var points = new List<TrackPoint> { new(start, 1000, Some.At("00:00")) };
                foreach (var (azimuth, metres, height, gap) in steps)
                {
                    points.Add(
                        new(
                            Geodesic.From(points[^1].Place, azimuth, metres).Place,
                            height,
                            points[^1].Time!.Value + Duration.FromMinutes(1)
                        )
                    );
                    if (gap != 0 || points.Count < 2)
                        continue;
                    segments.Add(new([.. points]));
                    points =
                    [
                        new(Geodesic.From(points[^1].Place, azimuth, 500).Place, height, points[^1].Time!.Value + Duration.FromMinutes(5)),
                    ];
                }

                if (points.Count > 1)
                    segments.Add(new([.. points]));
                return new Track("generated", [.. segments], [], []);
            }
        );

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
    public void No_point_of_a_track_is_nearer_than_the_nearest_spot() =>
        Gen.Select(Tracks, Gen.Double[0, 360], Gen.Double[0, 2000])
            .Sample(
                (track, azimuth, metres) =>
                {
                    var place = Geodesic.From(track.Segments[0].Points[1].Place, azimuth, metres).Place;
                    var spot = TrackSpot.Nearest(track, place);
                    Assert.InRange(spot.AlongM, 0, track.Metres() + 1e-6);
                    Assert.All(track.Points, p => Assert.True(spot.OffM <= Geodesic.Metres(p.Place, place) + 0.01));
                }
            );

    [Fact]
    public void Resampled_points_lie_evenly_on_the_track() =>
        Gen.Select(Tracks, Gen.Double[50, 100])
            .Sample(
                (track, spacing) =>
                {
                    var even = track.Resampled(spacing);
                    Assert.True(even.Metres() <= track.Metres() + 1e-3);
                    foreach (var (was, now) in track.Segments.Zip(even.Segments))
                    {
                        Assert.Equal(was.Points[0], now.Points[0]);
                        Assert.Equal(was.Points[^1], now.Points[^1]);
                        var step = was.Metres() / (now.Points.Length - 1);
                        Assert.All(
                            now.Points.Zip(now.Points.Skip(1)),
                            p => Assert.True(Geodesic.Metres(p.First.Place, p.Second.Place) <= step + 1e-3)
                        );
                        Assert.Equal(Math.Max(1, Math.Round(was.Metres() / spacing)), now.Points.Length - 1);
                    }
                }
            );

    [Fact]
    public void A_higher_threshold_never_counts_more_of_one_long_climb() =>
        Gen.Select(Gen.Double[0, 50].List[2, 60], Gen.Double[0, 20])
            .Sample(
                (steps, threshold) =>
                {
                    var heights = new List<double> { 0 };
                    steps.ForEach(s => heights.Add(heights[^1] + s));
                    var climb = Climb.Of(heights.ToArray(), threshold);
                    Assert.Equal(0, climb.DescentM);
                    Assert.InRange(climb.AscentM, heights[^1] - threshold - 1e-9, heights[^1] + 1e-9);
                }
            );

    [Fact]
    public void Ascent_less_descent_is_the_height_won_up_to_a_threshold() =>
        Gen.Select(Gen.Double[0, 3000].List[1, 60], Gen.Double[0, 20])
            .Sample(
                (heights, threshold) =>
                {
                    var climb = Climb.Of(heights.ToArray(), threshold);
                    Assert.True(Math.Abs(climb.AscentM - climb.DescentM - (heights[^1] - heights[0])) <= threshold + 1e-6);
                }
            );

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
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Nothing that is measured here."),
        };
    }

    private static double[] Series(string input) =>
        input switch
        {
            "ele 0 0.5 1.0 ... 100 (201 points)" => [.. Enumerable.Range(0, 201).Select(i => i * 0.5)],
            "ele alternating 103 97 103 ... (101 points)" => [.. Enumerable.Range(0, 101).Select(i => i % 2 == 0 ? 103.0 : 97)],
            _ => [.. input.Split(' ').Skip(1).Select(s => double.Parse(s, CultureInfo.InvariantCulture))],
        };
}
