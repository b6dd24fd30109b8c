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
        foreach (
            var said in (string[])
                [
                    "of 10 helicopter: between",
                    "Higher care between",
                    "Before left-leg limit-6h",
                    "What would change it:",
                    "No aircraft comes",
                    "2 more bearers",
                    "Setting out",
                    "Dark along the way",
                    "[assumption]",
                    "How uncertain arrival is",
                    "500 trials",
                ]
        )
            Assert.Contains(said, ran.Output);
    }

    [Fact]
    public void Json_holds_the_same_and_the_same_seed_gives_the_same()
    {
        string[] arguments =
        [
            "way",
            Demo("skarvedal.plan.json"),
            "--record",
            Run.Demo,
            "--at",
            "2031-05-04T03:23:00Z",
            "--trials",
            "300",
            "--json",
        ];
        var ran = Run.Farhold(arguments);
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal(
            ["left-leg window-2h", "left-leg limit-6h"],
            json.RootElement.GetProperty("deadlines").EnumerateArray().Select(d => d.GetProperty("id").GetString())
        );
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
        Assert.Equal(
            ("help.expected", "Ane", "skarvedal-down"),
            (
                json.RootElement.GetProperty("kind").GetString(),
                json.RootElement.GetProperty("by").GetString(),
                json.RootElement.GetProperty("plan").GetString()
            )
        );
        Assert.Contains("latest 90 in 100", json.RootElement.GetProperty("basis").GetString());
        var record = scratch.Write("r.jsonl", [.. File.ReadAllBytes(Run.Demo), .. Encoding.UTF8.GetBytes(logged.Output)]);
        Assert.Equal(0, Run.Farhold("check", record).ExitCode);
    }

    [Fact]
    public void A_plan_that_waits_says_until_when_and_what_then()
    {
        using var scratch = new Scratch();
        const string waiting =
            """{"waitFor":{"name":"helicopter","probability":0.8,"legs":[{"branches":[{"probability":0.6,"legs":[{"mode":"wait","low":30,"likely":30,"high":30}]},{"legs":[{"mode":"wait","low":600,"likely":600,"high":600}]}]}]},"onward":{"legs":[{"mode":"aircraft","low":20,"likely":20,"high":20}]},"otherwise":{"name":"carry out","legs":[{"mode":"carry","distanceKm":2,"bearers":12}]}}""";
        var ran = Run.Farhold("way", scratch.Write("p.json", Plan(waiting)));
        Assert.Equal(0, ran.ExitCode);
        // Nine in ten are reached soonest without a wait: half the time the helicopter is of no help.
        Assert.Contains("Going at once (carry out) is as good as any wait for helicopter.", ran.Output);
        Assert.Contains("In all trials carry out: between", ran.Output);
        using var json = JsonDocument.Parse(Run.Farhold("way", scratch.Write("p.json", Plan(waiting)), "--json").Output);
        Assert.False(json.RootElement.GetProperty("decision").GetProperty("matters").GetBoolean());
    }

    [Fact]
    public void Plans_are_set_side_by_side_on_the_same_luck()
    {
        using var scratch = new Scratch();
        var slow = scratch.Write(
            "slow.json",
            Plan("""{"name":"go","mode":"wait","low":60,"likely":90,"high":120}""")
                .Replace("{\"start", "{\"title\":\"slow\",\"start", StringComparison.Ordinal)
        );
        var fast = scratch.Write(
            "fast.json",
            Plan("""{"name":"go","mode":"wait","low":10,"likely":20,"high":30}""")
                .Replace("{\"start", "{\"title\":\"fast\",\"start", StringComparison.Ordinal)
        );
        var ran = Run.Farhold("way", slow, "--against", fast);
        Assert.Contains("Arrives first: slow 0 of 10, fast 10 of 10.", ran.Output);
        Assert.Contains("earlier than slow in more than 99 in 100, on average 1 h 10 min earlier", ran.Output);
        Assert.Equal(2, Run.Farhold("way", slow, "--against", fast, "--against", fast, "--against", fast, "--against", fast).ExitCode);
    }

    [Fact]
    public void Stages_noted_in_the_record_move_the_forecast()
    {
        using var scratch = new Scratch();
        var plan = scratch.Write("p.json", Plan("""{"mode":"wait","p10":20,"p90":80},{"mode":"wait","p10":20,"p90":80}"""));
        var done = Lines.Entry("k1-2", "09:30", "stage.noted", "\"stage\":\"1\",\"became\":\"done\"");
        var record = scratch.Write("r.jsonl", string.Join('\n', Lines.Opened, done) + "\n");
        var told = Run.Farhold("way", plan, "--record", record, "--at", "2031-05-04T09:35:00Z", "--trials", "500");
        Assert.Equal(0, told.ExitCode);
        Assert.Contains("1 wait: 4 May 2031 09:30 UTC and 4 May 2031 09:30 UTC", told.Output);
        Assert.DoesNotContain("Setting out 1 h later", told.Output);
    }

    [Theory]
    [InlineData("""{"mode":"wait","low":-5,"likely":2,"high":3}""", 1, 62, "low has to be a span of time from 0 to 30 days")]
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
        foreach (
            var ran in new[]
            {
                Run.Farhold("way", scratch.Write("p.json", Plan("""{"mode":"carry","track":"t.gpx"}"""))),
                Run.Farhold("reach", scratch.Write("r.json", Route("\"end\":{}"))),
            }
        )
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
