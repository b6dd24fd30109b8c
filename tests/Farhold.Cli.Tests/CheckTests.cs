namespace Farhold.Cli.Tests;

/// <summary><c>farhold check</c> knows each file of the project by its content, whatever its name is.</summary>
public class CheckTests
{
    [Theory]
    [InlineData("skarvedal.jsonl", "73 entries")]
    [InlineData("skarvedal.trip.json", "A trip: 3 in the party")]
    [InlineData("skarvedal.plan.json", "A plan: From above the hut to the hospital (invented), 3 stages")]
    [InlineData("skarvedal.route.json", "A route: Skarvedal round (invented), 24.1 km, 1 side exit")]
    [InlineData("skarvedal-down.gpx", "A track: 7.42 km")]
    [InlineData("skarvedal.issuer", "An issuer's code: Skarvedal mountain rescue (invented)")]
    [InlineData("skarvedal-local.json.sig", "A signature over a local protocol for farhold-base")]
    public void A_file_is_known_by_what_is_in_it(string name, string says)
    {
        using var scratch = new Scratch();
        foreach (var beside in Directory.GetFiles(Path.GetDirectoryName(Run.Demo)!))
            File.Copy(beside, scratch.At(Path.GetFileName(beside)));
        File.Move(scratch.At(name), scratch.At("renamed.txt"));
        var ran = Run.Farhold("check", scratch.At("renamed.txt"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains(says, ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_is_checked_with_the_record_in_it()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Run.Farhold("fhir", Run.Demo, "-o", scratch.At("bundle.json")).ExitCode);
        var whole = Run.Farhold("check", scratch.At("bundle.json"));
        Assert.Equal(0, whole.ExitCode);
        Assert.Contains("A FHIR document with a record of 73 entries", whole.Output, StringComparison.Ordinal);
        File.WriteAllText(scratch.At("bundle.json"), File.ReadAllText(scratch.At("bundle.json"))[..^40]);
        Assert.Equal(2, Run.Farhold("check", scratch.At("bundle.json")).ExitCode);
    }

    /// <summary>As whoever takes it over reads it: change the file only after reading the difference.</summary>
    [Fact]
    public void Check_says_how_the_local_protocol_of_the_demo_differs_as_approved()
    {
        var local = Run.Beside("skarvedal-local.json");
        var ran = Run.Farhold("check", local, "--issuer", Run.Beside("skarvedal.issuer"), "--at", "2031-05-04T00:00:00Z");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Equal(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "approved", "check-skarvedal-local.txt")).ReplaceLineEndings("\n"),
            ran.Output.Replace(local, "demo/skarvedal-local.json", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_plan_without_its_track_is_not_usable()
    {
        using var scratch = new Scratch();
        var plan = scratch.Write("away.json", File.ReadAllBytes(Run.Beside("skarvedal.plan.json")));
        var ran = Run.Farhold("check", plan);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("skarvedal-down.gpx", ran.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("farhold issuer v1\nkey: x\n")]
    [InlineData("farhold local protocol v1\nissuer: 1\n")]
    [InlineData("<gpx><trk>")]
    [InlineData("{\"legs\": 3}")]
    [InlineData("{\"resourceType\": \"Patient\"}")]
    [InlineData("{\"track\": \"nowhere.gpx\", \"spacingM\": 100}")]
    public void A_broken_file_is_refused_with_its_line(string content)
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("check", scratch.Write("broken", content));
        Assert.Equal(2, ran.ExitCode);
        Assert.Matches(@":\d+:\d+: ", ran.Errors);
    }
}
