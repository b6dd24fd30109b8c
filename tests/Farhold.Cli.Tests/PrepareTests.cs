using System.Text;
using System.Text.Json;

namespace Farhold.Cli.Tests;

public class PrepareTests
{
    private static readonly string Trip = Beside("skarvedal.trip.json");

    [Fact]
    public void What_is_missing_comes_first_then_what_nobody_said()
    {
        var ran = Run.Farhold("prepare", Trip);
        Assert.Equal(0, ran.ExitCode);
        Assert.StartsWith("Get help first.", ran.Output);
        // The route of the same trip lies beside it and comes to more.
        Assert.Contains("The trip says 9 h to help, its route says otherwise: By this route help takes up to", ran.Output);
        var (missing, unsaid, ready) = (At(ran, "\nMissing ("), At(ran, "\nNobody said, so not to be counted on ("), At(ran, "\nReady ("));
        Assert.True(missing >= 0 && missing < unsaid && unsaid < ready, ran.Output);
        Assert.InRange(At(ran, "From the worst place help takes up to 9 h"), missing, unsaid); // the shipped limit is 6 h
        Assert.InRange(At(ran, "  Drinking water: 4.5 L of 9 L"), missing, unsaid); // 3 L a day for each of three, one day of waiting
        Assert.InRange(At(ran, "  Splint: "), unsaid, ready);
        Assert.InRange(At(ran, "  Two of the party who have practised, as one may be the casualty: 2 have."), ready, ran.Output.Length);
    }

    [Fact]
    public void A_trip_that_says_nothing_has_nothing_ready()
    {
        var ran = Run.Fed("{}"u8.ToArray(), "prepare", "-");
        Assert.Equal(0, ran.ExitCode);
        Assert.DoesNotContain("Ready", ran.Output);
        Assert.Contains("  How long help takes from the worst place of the route.", ran.Output);
    }

    [Fact]
    public void A_local_protocol_and_practice_are_taken_in()
    {
        var with = Run.Farhold(
            "prepare",
            Trip,
            "--local",
            Beside("skarvedal-local.json"),
            "--issuer",
            Beside("skarvedal.issuer"),
            "--at",
            "2031-05-03T06:00:00Z",
            "--practised",
            "--json"
        );
        using var json = JsonDocument.Parse(with.Output);
        var lines = json
            .RootElement.GetProperty("lines")
            .EnumerateArray()
            .ToDictionary(l => l.GetProperty("id").GetString()!, l => l.GetProperty("state").GetString());
        Assert.Equal(("met", "met", "not-met"), (lines["local"], lines["practice-here"], lines["water-ml"]));
        Assert.Equal(lines.Count, ((string[])["not-met", "unknown", "met"]).Sum(s => json.RootElement.GetProperty(s).GetInt32()));
        Assert.Contains(
            "A local protocol, signed and in its time, with a named authority: without it no dose is shown.",
            Run.Farhold("prepare", Trip).Output
        );
    }

    [Fact]
    public void A_refused_local_protocol_is_said_and_the_one_under_it_stays()
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("prepare", Trip, "--local", scratch.Write("l.json", "{\"local\":\"x\"}"));
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("l.json:1:", ran.Errors);
        Assert.Contains("without it no dose is shown", ran.Output);
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("[]", "has to be an object")]
    [InlineData("{\"day\":1}", "day is not known here")]
    [InlineData("{\"days\":0}", "days has to be a whole number from 1 to 60, not 0")]
    [InlineData("{\"hours\":-1}", "hours has to be a number from 0 to 240, not -1")]
    [InlineData("{\"party\":[{\"role\":\"x\"}]}", "name is missing")]
    [InlineData("{\"packed\":{\"plain-gauz\":1}}", "plain-gauz is no item of the kit list")]
    [InlineData("{\"packed\":{\"plain-gauze\":1.5}}", "plain-gauze has to be a whole number")]
    public void A_trip_that_is_none_is_refused_with_its_place(string text, string reason)
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("prepare", scratch.Write("t.json", Encoding.UTF8.GetBytes(text)));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Matches(@"t\.json:\d+:\d+: \S", ran.Errors);
        Assert.Contains(reason, ran.Errors);
    }

    [Fact]
    public void The_hours_to_help_come_from_a_route_and_the_trips_own_do_not_count()
    {
        var route = Beside("skarvedal.route.json");
        using var reach = JsonDocument.Parse(Run.Farhold("reach", route, "--json").Output);
        var hours = Math.Ceiling(
            reach.RootElement.GetProperty("points").EnumerateArray().Max(p => DurationText(p.GetProperty("p90").GetString()!).TotalHours)
        );
        var ran = Run.Farhold("prepare", Trip, "--route", route);
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("The track has no times.", ran.Errors);
        Assert.Contains(
            $"\nBy this route help takes up to {hours} h from the worst place.\nThe trip itself says 9 h, which does not count here.\n",
            ran.Output
        );
        Assert.Contains($"From the worst place help takes up to {hours} h, longer than", ran.Output);
        Assert.Contains("Times count from the injury", ran.Output);
        var json = Run.Farhold("prepare", Trip, "--route", route, "--json");
        Assert.Contains(
            $"help takes up to {hours} h, longer than",
            JsonDocument.Parse(json.Output).RootElement.GetProperty("lines").ToString()
        );
        Assert.Contains("which does not count here.", json.Errors);
    }

    [Theory]
    [InlineData(
        0,
        "\"end\":{\"onward\":{\"low\":20000,\"likely\":20000,\"high\":20000}}",
        "more than 240 h from the worst place: 336 h.",
        "From the worst place help takes 240 h or more, longer than"
    )] // and 150 min on foot
    [InlineData(
        88,
        "\"dark\":\"stop\",\"end\":{}",
        "how long help takes is not known.",
        "  How long help takes from the worst place of the route."
    )] // the sun next rises in March: nobody sets out
    public void Help_beyond_what_a_trip_holds_is_a_least_or_unknown(int latitude, string ways, string said, string line)
    {
        using var scratch = new Scratch();
        scratch.Write(
            "a.gpx",
            "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>"
                + $"<trkpt lat=\"{latitude}\" lon=\"10\"><ele>100</ele></trkpt><trkpt lat=\"{latitude}\" "
                + $"lon=\"10.0898\"><ele>100</ele></trkpt></trkseg></trk></gpx>"
        );
        var route = scratch.Write(
            "r.json",
            "{\"track\":\"a.gpx\",\"start\":\"2031-11-04T08:00:00Z\",\"mode\":\"walk\",\"spread\":0,\"spacingM\":500," + ways + "}"
        );
        var ran = Run.Farhold("prepare", Trip, "--route", route);
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains(said, ran.Output);
        Assert.Contains(line, ran.Output);
        Assert.DoesNotContain("  Plain gauze", ran.Output[ran.Output.IndexOf("\nReady (", StringComparison.Ordinal)..]);
    }

    [Fact]
    public void A_route_that_is_refused_leaves_no_check()
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("prepare", Trip, "--route", scratch.Write("r.json", "{\"track\":\"none.gpx\",\"mode\":\"walk\",\"end\":{}}"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("none.gpx:1:1: there is no such file", ran.Errors);
    }

    [Fact]
    public void A_file_that_is_not_there_is_named()
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("prepare", scratch.At("none.json"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("none.json:1:1: there is no such file", ran.Errors);
    }

    private static TimeSpan DurationText(string iso) => System.Xml.XmlConvert.ToTimeSpan(iso);

    private static int At(Ran ran, string text) => ran.Output.IndexOf(text, StringComparison.Ordinal);

    private static string Beside(string file) => Path.Combine(Path.GetDirectoryName(Run.Demo)!, file);
}
