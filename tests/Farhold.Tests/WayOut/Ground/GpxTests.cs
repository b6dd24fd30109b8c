using System.Text;
using CsCheck;
using Farhold.Xml;

namespace Farhold.Tests.WayOut.Ground;

public class GpxTests
{
    [Theory]
    [InlineData("billion-laughs.gpx", 2, "DOCTYPE")]
    [InlineData("external-entity.gpx", 2, "DOCTYPE")]
    [InlineData("undeclared-entity.gpx", 4, "not readable XML")]
    [InlineData("cut-off.gpx", 10, "cut off or damaged")]
    [InlineData("bad-encoding.gpx", 4, "not readable XML")]
    [InlineData("other-format.gpx", 2, "<kml>")]
    [InlineData("not-xml.gpx", 1, "not XML")]
    [InlineData("empty.gpx", 1, "not XML")]
    [InlineData("swapped.gpx", 6, "seem to be swapped")]
    [InlineData("waypoints-only.gpx", 1, "1 waypoints but no track")]
    [InlineData("no-points.gpx", 1, "no track and no route")]
    [InlineData("single-point.gpx", 6, "at least two")]
    [InlineData("same-point-only.gpx", 6, "at least two")]
    public void A_file_that_gives_no_way_is_refused_where_it_fails(string name, int line, string reason)
    {
        var refusal = Refused(Case(name), name)[0];
        Assert.Contains(reason, refusal.Reason, StringComparison.Ordinal);
        Assert.Equal((name, line), (refusal.File, refusal.Line));
        Assert.True(refusal.Column >= 1);
    }

    [Theory, MemberData(nameof(Cases))]
    public void Read_in_pieces_nothing_is_given_out_before_the_last_and_that_is_the_whole(string name)
    {
        var pieces = Gpx.Pieces(Case(name), name, XmlTracks.Open).ToArray();
        Assert.All(pieces.SkipLast(1), p => Assert.Null(p.Read));
        Assert.All(pieces.Zip(pieces.Skip(1)), p => Assert.InRange(p.Second.Share, p.First.Share, 1));
        var whole = XmlTracks.Parse(Case(name), name);
        if (whole is Read<Track>.Refused(var why))
        {
            Assert.Equal(why.AsEnumerable(), Assert.IsType<Read<Track>.Refused>(pieces[^1].Read).Refusals);
            return;
        }

        var (track, again) = (((Read<Track>.Usable)whole).Value, Assert.IsType<Read<Track>.Usable>(pieces[^1].Read).Value);
        Assert.Equal(track.Points, again.Points);
        Assert.Equal(track.Warnings.AsEnumerable(), again.Warnings);
        var file = Assert.IsType<Read<TrackFile>.Usable>(TrackFile.Pieces(name, Case(name), XmlTracks.Open).Last().Read).Value;
        Assert.Equal(track.Metres(), file.Metres);
    }

    [Fact]
    public void A_long_track_comes_in_many_pieces_and_has_every_point()
    {
        const int count = 5_000;
        var text = new StringBuilder("<gpx xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>");
        for (var i = 0; i < count; i++)
            text.Append(
                System.Globalization.CultureInfo.InvariantCulture,
                $"<trkpt lat=\"{60 + (i * 1e-4):F4}\" lon=\"10\"><ele>{i % 7}</ele></trkpt>"
            );
        var pieces = TrackFile
            .Pieces("long", Encoding.UTF8.GetBytes(text.Append("</trkseg></trk></gpx>").ToString()), XmlTracks.Open)
            .ToArray();
        Assert.True(pieces.Length > 3 * count / 256, $"{pieces.Length} pieces");
        Assert.All(pieces.SkipLast(1), p => Assert.Null(p.Read));
        var track = Assert.IsType<Read<TrackFile>.Usable>(pieces[^1].Read).Value;
        Assert.Equal(count, track.Track.Points.Count());
        Assert.Equal(track.Track.Metres(), track.Metres);
    }

    public static TheoryData<string> Cases =>
        [
            .. Directory
                .GetFiles(Path.Combine(AppContext.BaseDirectory, "cases", "gpx"), "*.gpx")
                .Select(f => Path.GetFileName(f))
                .Order(StringComparer.Ordinal),
        ];

    [Fact]
    public void Every_impossible_position_is_named()
    {
        var refusals = Refused(Case("bad-positions.gpx"), "bad-positions.gpx");
        Assert.Equal([7, 8, 9, 10, 11, 12], refusals.Select(r => r.Line));
        Assert.All(refusals, r => Assert.Equal(8, r.Column));
    }

    [Fact]
    public void Refusals_end_after_twenty()
    {
        var text = new StringBuilder("<gpx><trk><trkseg>");
        for (var i = 0; i < 1000; i++)
            text.Append("<trkpt lat='100' lon='0'/>");
        Assert.Equal(20, Refused(Bytes(text.Append("</trkseg></trk></gpx>").ToString()), "many").Length);
    }

    [Theory]
    [InlineData("no-height-no-time.gpx", TrackWarningKind.NoElevation, TrackWarningKind.NoTime)]
    [InlineData("zero-heights.gpx", TrackWarningKind.NoElevation)]
    [InlineData("some-missing.gpx", TrackWarningKind.SomeElevationMissing, TrackWarningKind.SomeTimeMissing)]
    [InlineData("odd-heights.gpx", TrackWarningKind.SomeElevationMissing, TrackWarningKind.ElevationNotUsable)]
    [InlineData(
        "odd-times.gpx",
        TrackWarningKind.TimeWithoutZone,
        TrackWarningKind.SomeTimeMissing,
        TrackWarningKind.TimeNotReadable,
        TrackWarningKind.TimeRunsBack
    )]
    [InlineData("repeated-points.gpx", TrackWarningKind.RepeatedPoints)]
    [InlineData("standing-still.gpx")]
    [InlineData("jump-300-km.gpx", TrackWarningKind.Jump)]
    [InlineData("one-swapped.gpx", TrackWarningKind.Jump)]
    [InlineData("decimal-comma.gpx", TrackWarningKind.DecimalComma)]
    [InlineData("two-tracks-and-a-route.gpx", TrackWarningKind.SeveralTracks, TrackWarningKind.RouteLeftOut, TrackWarningKind.Gaps)]
    [InlineData("route-only.gpx", TrackWarningKind.RouteOnly, TrackWarningKind.NoTime)]
    [InlineData("version-1.0.gpx", TrackWarningKind.OtherVersion)]
    [InlineData("no-namespace.gpx", TrackWarningKind.OtherVersion)]
    [InlineData("nested-extensions.gpx")]
    [InlineData("utf-16.gpx")]
    [InlineData("real-run.gpx")]
    public void A_file_that_gives_a_way_says_what_is_odd(string name, params TrackWarningKind[] kinds)
    {
        var warnings = Usable(Case(name)).Warnings;
        Assert.Equal(kinds, warnings.Select(w => w.Kind));
        Assert.All(warnings, w => Assert.True(w.Line >= 1 && w.Column >= 1 && w.Text.Length > 0));
    }

    [Theory]
    [InlineData("jump-300-km.gpx", 8, "2 steps are too long to be true; the first is 300.1 km from the point of line 7. Check the length.")]
    [InlineData("repeated-points.gpx", 7, "3 points repeat the one before them; they were left out.")]
    [InlineData(
        "odd-heights.gpx",
        7,
        "2 heights are not numbers of metres between -500 and 9000; the first is “high”. They were left out."
    )]
    [InlineData("some-missing.gpx", 7, "2 of 5 points have no height.")]
    public void A_warning_says_where_and_how_often(string name, int line, string text) =>
        Assert.Contains(Usable(Case(name)).Warnings, w => w.Line == line && w.Text == text);

    [Fact]
    public void What_stands_in_extensions_is_not_read()
    {
        var track = Usable(Case("nested-extensions.gpx"));
        Assert.Equal("Invented valley", track.Name);
        Assert.Equal([1500.0, 1510.0, 1520.0], track.Points.Select(p => p.ElevationM));
        Assert.Equal(new Waypoint("Bridge", new(new(46.501, 8.5601), 1510, null)), Assert.Single(track.Waypoints));
    }

    [Fact]
    public void Times_are_read_in_their_zone() =>
        Assert.Equal(
            [Some.At("02:00"), null, Some.At("02:02"), Some.At("02:01")],
            Usable(Case("odd-times.gpx")).Points.Select(p => p.Time)
        );

    [Fact]
    public void Half_a_million_points_are_thinned_and_keep_their_ends()
    {
        var track = Usable(Bytes(Line(500_000, gaps: 2)));
        Assert.InRange(track.Points.Count(), 100_000, Gpx.KeptPoints);
        Assert.Contains(
            track.Warnings,
            w => w.Kind == TrackWarningKind.Thinned && w.Text.Contains("500000 points; one in 3", StringComparison.Ordinal)
        );
        Assert.Equal(3, track.Segments.Length);
        Assert.Equal(new GeoPoint(0, 0), track.Points.First().Place);
        Assert.Equal(499_999e-6, track.Points.Last().Place.Latitude, 1e-9);
    }

    [Fact]
    public void More_than_a_million_points_are_refused() =>
        Assert.Contains("1000000 points", Refused(Bytes(Line(1_000_001, gaps: 0)), "long")[0].Reason, StringComparison.Ordinal);

    [Fact]
    public void More_than_64_MiB_are_refused_unread() =>
        Assert.Contains("64 MiB", Refused(new byte[Gpx.MaxBytes + 1], "large")[0].Reason, StringComparison.Ordinal);

    [Fact]
    public void A_bottomless_file_is_refused() =>
        Assert.Contains(
            "nested",
            Refused(Bytes("<gpx>" + string.Concat(Enumerable.Repeat("<a>", 100_000))), "deep")[0].Reason,
            StringComparison.Ordinal
        );

    // A cut anywhere leaves text that is not whole, so nothing of it may come through.
    [Fact]
    public void A_file_cut_anywhere_is_refused()
    {
        var whole = Case("nested-extensions.gpx");
        Gen.Int[0, whole.Length - 8]
            .Sample(length => Assert.True(XmlTracks.Parse(whole.AsMemory(0, length), "cut") is Read<Track>.Refused));
    }

    [Fact]
    public void A_changed_byte_is_refused_or_read_but_never_breaks_the_reader()
    {
        var whole = Case("some-missing.gpx");
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Byte)
            .Sample(
                (at, value) =>
                {
                    var changed = whole.ToArray();
                    changed[at] = value;
                    if (XmlTracks.Parse(changed, "changed") is Read<Track>.Refused refused)
                        Assert.All(refused.Refusals, r => Assert.True(r.Line >= 1 && r.Column >= 1));
                }
            );
    }

    internal static Track Usable(byte[] content) =>
        XmlTracks.Parse(content, "test") switch
        {
            Read<Track>.Usable track => track.Value,
            Read<Track>.Refused refused => throw new InvalidOperationException(refused.Refusals[0].ToString()),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    internal static byte[] Case(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "cases", "gpx", name));

    private static System.Collections.Immutable.ImmutableArray<Refusal> Refused(byte[] content, string name) =>
        Assert.IsType<Read<Track>.Refused>(XmlTracks.Parse(content, name)).Refusals;

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static string Line(int points, int gaps)
    {
        var text = new StringBuilder("<gpx><trk><trkseg>");
        for (var i = 0; i < points; i++)
        {
            if (gaps > 0 && i > 0 && i % (points / (gaps + 1) + 1) == 0)
                text.Append("</trkseg><trkseg>");
            text.Append("<trkpt lat='0.").Append(i.ToString("D6")).Append("' lon='0'/>");
        }

        return text.Append("</trkseg></trk></gpx>").ToString();
    }
}
