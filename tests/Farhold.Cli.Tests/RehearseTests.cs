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
            "--pdf",
            scratch.At("debrief.pdf"),
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
        Assert.Equal(4, picture.Descendants().Count(e => (string?)e.Attribute("role") == "img"));
        Assert.Contains(Practice, picture.Value, StringComparison.Ordinal);
        Assert.StartsWith("%PDF-", File.ReadAllText(scratch.At("debrief.pdf"), System.Text.Encoding.Latin1), StringComparison.Ordinal);
        Assert.InRange(new FileInfo(scratch.At("debrief.pdf")).Length, 10_000, 2_000_000);
        var calendar = File.ReadAllText(scratch.At("next.ics"));
        foreach (var day in new[] { "20310506", "20310513", "20310603" })
            Assert.Contains($"DTSTART:{day}", calendar, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_in_few_words_gives_the_same_truth_and_record_elsewhere()
    {
        using var scratch = new Scratch();
        var scenario = Scenario("bled-at-slackening.scenario.json");
        (string Record, string Truth) here = (scratch.At("r.jsonl"), scratch.At("t.jsonl")),
            there = (scratch.At("r2.jsonl"), scratch.At("t2.jsonl"));
        var (acts, run) = (Scenario("bled-at-slackening.acts.jsonl"), scratch.At("run.jsonl"));
        string[] first = ["rehearse", scenario, "--acts", acts, "--seed", "77", "--record", here.Record, "--truth", here.Truth];
        Assert.Equal(0, Run.Farhold([.. first, "--share", run]).ExitCode);
        Assert.Contains("A run of the scenario bled-at-slackening", Run.Farhold("check", run).Output, StringComparison.Ordinal);
        var again = Run.Farhold("rehearse", scenario, "--run", run, "--record", there.Record, "--truth", there.Truth);
        Assert.Equal((0, ""), (again.ExitCode, again.Errors));
        Assert.EndsWith("The truth is the same to the last bit as where it was run.\n", again.Output, StringComparison.Ordinal);
        Assert.Equal(File.ReadAllBytes(here.Truth), File.ReadAllBytes(there.Truth));
        Assert.Equal(File.ReadAllBytes(here.Record), File.ReadAllBytes(there.Record));
        Assert.Equal(2, Run.Farhold("rehearse", Scenario("needless.scenario.json"), "--run", run).ExitCode);
        Assert.Equal(2, Run.Farhold("rehearse", scenario, "--run", run, "--acts", acts).ExitCode);
    }

    /// <summary>The truth of a lesson has the wall's time in it, and the record is one that another phone wrote by that.</summary>
    [Fact]
    public void A_led_run_is_debriefed_with_the_record_of_whoever_treated()
    {
        using var scratch = new Scratch();
        var scenario = Scenario("needless.scenario.json");
        var (acts, truth, led) = (Scenario("needless.acts.jsonl"), scratch.At("t.jsonl"), scratch.At("led.jsonl"));
        Assert.Equal(0, Run.Farhold("rehearse", scenario, "--acts", acts, "--truth", truth).ExitCode);
        var lines = File.ReadAllLines(truth).ToList();
        var first = lines.FindIndex(l => l.Contains("\"asked\"", StringComparison.Ordinal));
        var at = lines[first][..lines[first].IndexOf(',', StringComparison.Ordinal)];
        lines.Insert(first, at + ",\"asked\":{\"wall\":\"2033-02-01T09:00:00Z\",\"rate\":1}}");
        File.WriteAllText(led, string.Join('\n', lines) + "\n");
        var theirs = scratch.Write(
            "theirs.jsonl",
            """
            {"id":"tr-1","happened":"2033-02-01T09:01:00Z","recorded":"2033-02-01T09:01:00Z","by":"Bo","practice":true,"kind":"note","text":"so"}

            """
        );
        var debrief = Run.Farhold("debrief", theirs, "--truth", led, "--scenario", scenario);
        Assert.Equal((0, ""), (debrief.ExitCode, debrief.Errors));
        Assert.Contains("the record is the trainee's own (entries: 1)", debrief.Output, StringComparison.Ordinal);
        Assert.Contains("let out, and not logged", debrief.Output, StringComparison.Ordinal);
        var real = scratch.Write("real.jsonl", File.ReadAllText(theirs).Replace("\"practice\":true,", "", StringComparison.Ordinal));
        var refused = Run.Farhold("debrief", real, "--truth", led, "--scenario", scenario);
        Assert.Contains("real.jsonl:1:1: this entry is not marked", refused.Errors, StringComparison.Ordinal);
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
