namespace Farhold.Cli.Tests;

public class RehearseTests
{
    private const string Practice = "PRACTICE with an invented casualty";

    private static string Scenario(string name) => Path.Combine(AppContext.BaseDirectory, "scenarios", name);

    [Fact]
    public void A_rehearsal_is_run_checked_and_debriefed_from_its_files()
    {
        using var scratch = new Scratch();
        var (record, truth) = (scratch.At("r.jsonl"), scratch.At("t.jsonl"));
        var (scenario, acts) = (Scenario("held-at-once.scenario.json"), Scenario("held-at-once.acts.jsonl"));
        var ran = Run.Farhold("rehearse", scenario, "--acts", acts, "--record", record, "--truth", truth);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.StartsWith(Practice, ran.Output, StringComparison.Ordinal);
        foreach (
            var (file, says) in new[]
            {
                (scenario, "A scenario for practice"),
                (acts, "Acts for a rehearsal"),
                (truth, "The truth of a rehearsal"),
                (record, "chain of practice"),
            }
        )
        {
            var check = Run.Farhold("check", file);
            Assert.Equal((0, ""), (check.ExitCode, check.Errors));
            Assert.Contains(says, check.Output, StringComparison.Ordinal);
        }

        var debrief = Run.Farhold(
            "debrief",
            record,
            "--truth",
            truth,
            "--scenario",
            scenario,
            "--what-if",
            "never-let-out",
            "--redraws",
            "3",
            "--svg",
            scratch.At("debrief.svg"),
            "--calendar",
            scratch.At("next.ics"),
            "--practised",
            "2031-05-04"
        );
        Assert.Equal((0, ""), (debrief.ExitCode, debrief.Errors));
        Assert.StartsWith(Practice, debrief.Output, StringComparison.Ordinal);
        Assert.Contains("truth and record fit", debrief.Output, StringComparison.Ordinal);
        Assert.Contains("Remarks\n  none\n", debrief.Output, StringComparison.Ordinal);
        Assert.Contains("of 3 as it was", debrief.Output, StringComparison.Ordinal);
        Assert.Contains(
            "Blood lost, and what was done\n  time: 0:00:00; what: you came; mL lost: 0\n",
            debrief.Output,
            StringComparison.Ordinal
        );
        var picture = System.Xml.Linq.XElement.Parse(File.ReadAllText(scratch.At("debrief.svg")));
        Assert.Equal(2, picture.Descendants().Count(e => (string?)e.Attribute("role") == "img"));
        Assert.Contains(Practice, picture.Value, StringComparison.Ordinal);
        var calendar = File.ReadAllText(scratch.At("next.ics"));
        foreach (var day in new[] { "20310506", "20310513", "20310603" })
            Assert.Contains($"DTSTART:{day}", calendar, StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_not_be_used_is_refused_with_its_place()
    {
        using var scratch = new Scratch();
        var scenario = Scenario("needless.scenario.json");
        var broken = scratch.Write("s.json", """{"scenario":"x","titel":"y"}""");
        var ran = Run.Farhold("rehearse", broken);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains($"{broken}:1:17: titel is not known here (is title meant?)", ran.Errors, StringComparison.Ordinal);
        Assert.Equal(2, Run.Farhold("rehearse", scenario, "--seed", "-4").ExitCode);
        Assert.Equal(2, Run.Farhold("rehearse", scenario, "--acts", scratch.Write("a.jsonl", """{"at":"PT1M","act":"cut"}""")).ExitCode);
        Assert.Equal(2, Run.Farhold("debrief", Run.Demo, "--scenario", scenario).ExitCode);
        Assert.Equal(2, Run.Farhold("debrief", Run.Demo, "--truth", Run.Demo, "--scenario", scenario).ExitCode);
        Assert.Equal(2, Run.Farhold("debrief", Run.Demo, "--truth", Run.Demo, "--scenario", scenario, "--what-if", "luck").ExitCode);
    }
}
