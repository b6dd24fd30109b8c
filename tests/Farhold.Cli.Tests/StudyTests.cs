using System.Text.Json.Nodes;

namespace Farhold.Cli.Tests;

public class StudyTests
{
    private const string Not = "No guidance for any casualty";

    private static string Shipped => Path.Combine(AppContext.BaseDirectory, "studies", "when-to-attempt.study.json");

    /// <summary>So small, and without the casualty model, that it runs in a second.</summary>
    private static string Small(Scratch scratch, int seed = 19)
    {
        var json = JsonNode.Parse(File.ReadAllText(Shipped))!;
        json["seed"] = seed;
        json["bleeding"] = "shares";
        foreach (var name in new[] { "deathPerFailure", "deathPerRebleed" })
            json["figures"]![name] = JsonNode.Parse("""{"value":0.01,"mark":"design","source":"a test"}""");
        (json["run"]!["casualties"], json["run"]!["batch"]) = (512, 64);
        (json["uncertainty"]!["draws"], json["uncertainty"]!["casualties"]) = (16, 64);
        (json["uncertainty"]!["base"], json["uncertainty"]!["trajectories"]) = (8, 2);
        return scratch.Write($"small-{seed}.study.json", System.Text.Encoding.UTF8.GetBytes(json.ToJsonString()));
    }

    [Fact]
    public void Check_knows_a_study()
    {
        var ran = Run.Farhold("check", Shipped);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains("3 cohorts, 9 policies, 10 hours of evacuation", ran.Output, StringComparison.Ordinal);
        Assert.Contains(Not, ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_is_told_with_line_and_column()
    {
        using var scratch = new Scratch();
        var file = scratch.Write("a.json", "{\"study\": \"a\",", " \"seed\": \"x\"}");
        var ran = Run.Farhold("study", file);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("a.json:2:10: seed has to be a whole number from 0 to 2147483647, not \"x\"", ran.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_begins_with_what_it_is_not_and_progress_goes_to_standard_error()
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("study", Small(scratch), "--threads", "1");
        Assert.Equal(0, ran.ExitCode);
        Assert.StartsWith(Not, ran.Output, StringComparison.Ordinal);
        Assert.Contains("of 8 batches", ran.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("batches, about", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_from_anywhere_join_to_the_report_of_one_run()
    {
        using var scratch = new Scratch();
        var file = Small(scratch);
        var whole = Run.Farhold("study", file, "-o", scratch.At("whole"));
        for (var i = 1; i <= 3; i++)
        {
            var part = Run.Farhold("study", file, "--part", $"{i}/3", "-o", scratch.At("parts"));
            Assert.StartsWith(Not, part.Output, StringComparison.Ordinal);
        }

        var joined = Run.Farhold("study", file, "--join", scratch.At("parts"), "--threads", "2", "-o", scratch.At("joined"));
        Assert.Equal(whole.Output, joined.Output);
        Assert.Equal(File.ReadAllText(scratch.At("whole/fans.csv")), File.ReadAllText(scratch.At("joined/fans.csv")));
    }

    [Fact]
    public void Parts_that_do_not_fit_are_refused_plainly()
    {
        using var scratch = new Scratch();
        var (file, other) = (Small(scratch), Small(scratch, seed: 20));
        Run.Farhold("study", file, "--part", "1/3", "-o", scratch.At("parts"));
        Run.Farhold("study", other, "--part", "2/3", "-o", scratch.At("parts"));
        var ran = Run.Farhold("study", file, "--join", scratch.At("parts"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("was run with seed 20, and the study has 19", ran.Errors, StringComparison.Ordinal);
        Assert.Contains("missing of 3 parts: 2, 3", ran.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--part", "0/3")]
    [InlineData("--part", "4/3")]
    [InlineData("--part", "a")]
    [InlineData("--threads", "0")]
    [InlineData("--join", "nowhere-at-all")]
    public void An_option_that_cannot_be_is_refused(string option, string value)
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("study", Small(scratch), option, value);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(option, ran.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_of_bleeds_says_first_what_it_is_not()
    {
        var ran = Run.Farhold("rebleed");
        Assert.StartsWith(Not, ran.Output, StringComparison.Ordinal);
        Assert.Contains("dead after 6.4", ran.Output, StringComparison.Ordinal);
        Assert.Equal(8, Run.Farhold("rebleed", "--csv").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }
}
