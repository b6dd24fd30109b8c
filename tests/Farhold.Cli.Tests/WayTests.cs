using System.Text;
using System.Text.Json;

namespace Farhold.Cli.Tests;

public class WayTests
{
    private static string Demo(string name) => Path.Combine(AppContext.BaseDirectory, "demo", name);

    private static string Gpx(string name) => Path.Combine(AppContext.BaseDirectory, "gpx", name);

    private static string Plan(string legs) => $$"""{"start":"2031-05-04T08:00:00Z","legs":[{{legs}}]}""";

    private static string Route(string more) => $$"""{"track":"t.gpx","mode":"carry",{{more}}}""";

    [Fact]
    public void The_demo_plan_is_told_in_words_with_the_chances_of_the_limb()
    {
        var ran = Run.Farhold("way", Demo("skarvedal.plan.json"), "--record", Run.Demo, "--at", "2031-05-04T03:23:00Z", "--trials", "500");
        Assert.Equal(0, ran.ExitCode);
        foreach (var said in (string[])["Higher care between", "Before left-leg limit-6h", "What would change it:", "No aircraft comes", "2 more bearers",
            "Setting out", "Dark along the way", "[assumption]", "What drives the spread", "500 trials"])
            Assert.Contains(said, ran.Output);
    }

    [Fact]
    public void Json_holds_the_same_and_the_same_seed_gives_the_same()
    {
        string[] arguments = ["way", Demo("skarvedal.plan.json"), "--record", Run.Demo, "--at", "2031-05-04T03:23:00Z", "--trials", "300", "--json"];
        var ran = Run.Farhold(arguments);
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal(["left-leg window-2h", "left-leg limit-6h"], json.RootElement.GetProperty("deadlines").EnumerateArray().Select(d => d.GetProperty("id").GetString()));
        Assert.True(json.RootElement.GetProperty("whatIf").GetArrayLength() > 2);
        Assert.Equal(ran.Output, Run.Farhold(arguments).Output);
        Assert.NotEqual(ran.Output, Run.Farhold([.. arguments, "--seed", "2"]).Output);
    }

    [Fact]
    public void A_logged_forecast_is_an_entry_the_record_takes()
    {
        using var scratch = new Scratch();
        var logged = Run.Farhold("way", Demo("skarvedal.plan.json"), "--log-help", "Ane", "--trials", "300");
        Assert.Equal(0, logged.ExitCode);
        using var json = JsonDocument.Parse(logged.Output);
        Assert.Equal(("help.expected", "Ane", "skarvedal-down"), (
            json.RootElement.GetProperty("kind").GetString(), json.RootElement.GetProperty("by").GetString(), json.RootElement.GetProperty("plan").GetString()));
        Assert.Contains("latest 90 in 100", json.RootElement.GetProperty("basis").GetString());
        var record = scratch.Write("r.jsonl", [.. File.ReadAllBytes(Run.Demo), .. Encoding.UTF8.GetBytes(logged.Output)]);
        Assert.Equal(0, Run.Farhold("check", record).ExitCode);
    }

    [Theory]
    [InlineData("""{"mode":"wait","low":-5,"likely":2,"high":3}""", 1, 62, "negative")]
    [InlineData("""{"mode":"wait","low":5,"likely":2,"high":3}""", 1, 73, "the three times rise")]
    [InlineData("""{"branches":[{"probability":1.2,"legs":[]},{"legs":[]}]}""", 1, 69, "from 0 to 1")]
    [InlineData("", 1, 40, "needs an end")]
    public void A_faulty_plan_is_refused_where_the_fault_stands(string legs, int line, int column, string reason)
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("way", scratch.Write("p.json", Plan(legs)));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains($"p.json:{line}:{column}: ", ran.Errors);
        Assert.Contains(reason, ran.Errors);
    }

    [Theory]
    [InlineData("no-height-no-time.gpx", "no heights")]
    [InlineData("jump-300-km.gpx", "too long to be true")]
    [InlineData("swapped.gpx", "swapped")]
    [InlineData("billion-laughs.gpx", "")]
    [InlineData("same-point-only.gpx", "single points only")]
    public void A_track_that_cannot_be_timed_is_refused_by_both_verbs(string gpx, string reason)
    {
        using var scratch = new Scratch();
        scratch.Write("t.gpx", File.ReadAllBytes(Gpx(gpx)));
        foreach (var ran in new[]
        {
            Run.Farhold("way", scratch.Write("p.json", Plan("""{"mode":"carry","track":"t.gpx"}"""))),
            Run.Farhold("reach", scratch.Write("r.json", Route("\"end\":{}"))),
        })
        {
            Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
            Assert.Matches(@"t\.gpx:\d+:\d+: \S", ran.Errors);
            Assert.Contains(reason, ran.Errors);
        }
    }

    [Fact]
    public void What_is_only_odd_of_a_track_is_said_and_the_track_taken()
    {
        using var scratch = new Scratch();
        scratch.Write("t.gpx", File.ReadAllBytes(Gpx("repeated-points.gpx")));
        var ran = Run.Farhold("reach", scratch.Write("r.json", Route("\"end\":{},\"bearers\":8")));
        Assert.Contains("repeat the one before", ran.Errors);
        Assert.Contains("taken all the same", ran.Errors);
        Assert.Equal(0, ran.ExitCode);
    }

    [Fact]
    public void A_route_without_an_end_is_refused()
    {
        using var scratch = new Scratch();
        scratch.Write("t.gpx", File.ReadAllBytes(Demo("skarvedal-down.gpx")));
        var ran = Run.Farhold("reach", scratch.Write("r.json", Route("\"bearers\":8")));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("no sure end", ran.Errors);
    }

    [Theory]
    [InlineData("svg", "<svg ")]
    [InlineData("gpx", "<gpx ")]
    [InlineData("geojson", "\"FeatureCollection\"")]
    public void The_demo_route_is_told_and_drawn(string ending, string holds)
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("reach", Demo("skarvedal.route.json"), "-o", scratch.At($"out.{ending}"), "--trials", "200");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("Higher care is furthest at km", ran.Output);
        Assert.Contains(holds, File.ReadAllText(scratch.At($"out.{ending}")));
    }

    [Fact]
    public void Limits_of_the_command_line_are_said_plainly()
    {
        Assert.Contains("100 to 5000000", Run.Farhold("way", Demo("skarvedal.plan.json"), "--trials", "5").Errors);
        Assert.Contains(".svg, .gpx or .geojson", Run.Farhold("reach", Demo("skarvedal.route.json"), "-o", "out.pdf").Errors);
        Assert.Contains("no instant", Run.Farhold("reach", Demo("skarvedal.route.json"), "--start", "noon").Errors);
    }
}
