using System.Text;
using System.Text.Json;
using Farhold.Xml;
using Json.Schema;

namespace Farhold.Tests.WayOut.Reach;

public class RouteReaderTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Encoding.UTF8.GetString(SomePlan.File("route.schema.json")));

    [Theory]
    [InlineData("""{"track":"a.gpx","mode":"carry"}""", 1, "no sure end")]
    [InlineData(
        """{"track":"a.gpx","mode":"carry","pickUps":[{"at":{"lat":0,"lon":10},"mode":"boat","probability":0.5,"wait":{"low":1,"likely":2,"high":3}}]}""",
        43,
        "no sure end"
    )]
    [InlineData(
        """{"track":"a.gpx","mode":"carry","end":{},"helicopter":{"probability":1.2,"wait":{"low":1,"likely":2,"high":3}}}""",
        70,
        "from 0 to 1"
    )]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{"onward":{"low":5,"likely":2,"high":3}}}""", 66, "likely is under low")]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{"onward":{"low":-5,"likely":2,"high":3}}}""", 55, "not -5")]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{"onward":{"low":1,"likely":2}}}""", 48, "high is missing")]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{},"dark":"stop"}""", 1, "needs start")]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{},"exits":[{"at":{"lat":10.01,"lon":0},"distanceKm":1}]}""", 56, "exchanged")]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{},"exits":[{"at":{"lat":0.1,"lon":10},"distanceKm":1}]}""", 56, "off the route")]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{},"exits":[]}""", 49, "not an empty list")]
    [InlineData("""{"track":"a.gpx","mode":"swim","end":{}}""", 25, "one of walk, carry")]
    [InlineData("""{"track":"a.gpx","mode":"walk","ends":{}}""", 32, "is end meant")]
    [InlineData("""{"mode":"walk","end":{}}""", 1, "track is missing")]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{}""", 40, "not JSON")]
    public void A_faulty_route_is_refused_where_the_fault_stands(string json, int column, string reason)
    {
        var refused = Assert.IsType<Read<Route>.Refused>(SomeRoute.Tried(json));
        Assert.Contains(refused.Refusals, r => r.Reason.Contains(reason, StringComparison.Ordinal) && (r.Line, r.Column) == (1, column));
    }

    [Theory]
    [InlineData("no-height-no-time.gpx", "no heights")]
    [InlineData("zero-heights.gpx", "no heights")]
    [InlineData("jump-300-km.gpx", "too long to be true")]
    [InlineData("swapped.gpx", "swapped")]
    [InlineData("billion-laughs.gpx", "")]
    [InlineData("same-point-only.gpx", "single points only")]
    [InlineData("single-point.gpx", "single points only")]
    [InlineData("empty.gpx", "not XML")]
    public void A_track_that_cannot_be_timed_refuses_the_route_with_its_own_place(string track, string reason)
    {
        var file = new Read<ReadOnlyMemory<byte>>.Usable(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "cases", "gpx", track)));
        var read = RouteReader.Read(
            """{"track":"t.gpx","mode":"carry","end":{}}"""u8.ToArray(),
            "some.route.json",
            XmlTracks.In(_ => file)
        );
        var refused = Assert.IsType<Read<Route>.Refused>(read);
        Assert.All(refused.Refusals, r => Assert.True(r.File == "t.gpx" && r.Line > 0 && r.Column > 0));
        Assert.Contains(refused.Refusals, r => r.Reason.Contains(reason, StringComparison.Ordinal));
    }

    [Fact]
    public void Faults_of_route_and_track_are_told_together()
    {
        var read = RouteReader.Read(
            """{"track":"t.gpx","mode":"carry","bearers":1,"end":{}}"""u8.ToArray(),
            "r",
            XmlTracks.In(_ => new Read<ReadOnlyMemory<byte>>.Usable("<gpx/>"u8.ToArray()))
        );
        Assert.Equal(["r", "t.gpx"], Assert.IsType<Read<Route>.Refused>(read).Refusals.Select(r => r.File));
    }

    [Fact]
    public void Half_a_million_points_are_a_route_all_the_same()
    {
        var text = new StringBuilder("<gpx xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>");
        for (var i = 0; i < 500_000; i++)
            text.Append(
                System.Globalization.CultureInfo.InvariantCulture,
                $"<trkpt lat=\"0\" lon=\"{10 + (i * 1e-6):F6}\"><ele>5</ele></trkpt>"
            );
        var route = SomeRoute.Of(
            """{"track":"a.gpx","mode":"walk","end":{},"spacingM":1000}""",
            text.Append("</trkseg></trk></gpx>").ToString()
        );
        Assert.Contains(route.Track.Oddities, o => o.Reason.Contains("500000 points", StringComparison.Ordinal));
        Assert.InRange(route.Track.Track.Metres(), 55_500, 55_800);
    }

    [Theory]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{}}""", true)]
    [InlineData("""{"track":"a.gpx","mode":"walk"}""", false)]
    [InlineData("""{"track":"a.gpx","mode":"carry","rule":"tobler","end":{}}""", false)]
    [InlineData("""{"track":"a.gpx","mode":"walk","packaging":true,"end":{}}""", false)]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{"onward":{"p10":1,"low":2,"p90":5}}}""", false)]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{"onward":{"note":"n","p10":1,"p90":5}}}""", true)]
    [InlineData("""{"track":"a.gpx","mode":"walk","exits":[{"at":{"lat":0,"lon":10}}]}""", false)]
    [InlineData(
        """{"track":"a.gpx","mode":"walk","exits":[{"at":{"lat":0,"lon":10},"distanceKm":1,"low":1,"likely":1,"high":1}]}""",
        false
    )]
    [InlineData("""{"track":"a.gpx","mode":"walk","exits":[{"at":{"lat":0,"lon":10},"low":1,"likely":1,"high":1}]}""", true)]
    [InlineData(
        """{"track":"a.gpx","mode":"walk","exits":[{"at":{"lat":0,"lon":10},"distanceKm":1,"terrain":"sand","onwards":1}]}""",
        false
    )]
    [InlineData("""{"track":"a.gpx","mode":"walk","pickUps":[{"at":{"lat":0,"lon":10},"mode":"walk","wait":{"p10":1,"p90":2}}]}""", false)]
    [InlineData(
        """{"track":"a.gpx","mode":"walk","pickUps":[{"at":{"lat":0,"lon":10},"mode":"boat","wait":{"p10":1,"p90":2}}],"call":[{"name":"x","p10":1,"p90":2}],"hands":{"p10":1,"p90":2}}""",
        true
    )]
    [InlineData("""{"track":"a.gpx","mode":"walk","end":{},"spacingM":5}""", false)]
    public void Reader_and_schema_agree(string json, bool usable)
    {
        using var document = JsonDocument.Parse(json);
        Assert.Equal(usable, Schema.Evaluate(document.RootElement).IsValid);
        Assert.Equal(usable, SomeRoute.Tried(json) is Read<Route>.Usable);
    }

    [Fact]
    public void The_demo_route_fits_the_schema_and_reads()
    {
        using var document = JsonDocument.Parse(SomeRoute.Demo("skarvedal.route.json"));
        Assert.True(Schema.Evaluate(document.RootElement).IsValid);
        Assert.IsType<Read<Route>.Usable>(RouteReader.Read(SomeRoute.Demo("skarvedal.route.json"), "r", XmlTracks.In(SomeRoute.DemoFile)));
    }
}
