using System.Text;

namespace Farhold.Cli.Tests;

public class UnusableInputTests
{
    public static TheoryData<string, string> Files { get; } =
        new()
        {
            { "", "the file is empty" },
            { "\n\n", "there is no entry in the file" },
            { "\u00ff\u00fe{\u0000", "UTF-16" },
            { "\u001f\u008babc", "compressed" },
            { "{\"a\":1}", "kind" },
            { "not json at all", "" },
        };

    [Theory, MemberData(nameof(Files))]
    public void Is_refused_with_file_line_column_and_reason(string latin1, string reason)
    {
        using var scratch = new Scratch();
        var file = scratch.Write("bad.jsonl", Encoding.Latin1.GetBytes(latin1));
        foreach (var verb in (string[])["tell", "replay", "check", "log"])
        {
            var ran = Run.Farhold(verb, file);
            Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
            Assert.Matches(@"bad\.jsonl:\d+:\d+: \S", ran.Errors);
            Assert.Contains(reason, ran.Errors);
        }
    }

    [Theory]
    [InlineData("tell")]
    [InlineData("log")]
    [InlineData("check")]
    public void A_directory_or_a_missing_file_is_named_plainly(string verb)
    {
        using var scratch = new Scratch();
        var directory = Run.Farhold(verb, scratch.Path);
        Assert.Equal((2, ""), (directory.ExitCode, directory.Output));
        Assert.Contains("this is a directory", directory.Errors);
        var missing = Run.Farhold(verb, scratch.At("none.jsonl"));
        Assert.Equal((2, ""), (missing.ExitCode, missing.Output));
        Assert.Contains("none.jsonl:1:1: there is no such file", missing.Errors);
    }

    [Theory]
    [InlineData("tell")]
    [InlineData("tell", "x.jsonl", "--nonsense")]
    [InlineData("no-such-verb")]
    [InlineData("supplies")]
    [InlineData("prepare")]
    [InlineData("draw", "x.jsonl")]
    [InlineData("draw", "x.jsonl", "-o", "x.gif")]
    [InlineData("draw", "x.jsonl", "-o", "x.svg", "--width", "wide")]
    [InlineData("draw", "x.jsonl", "-o", "x.svg", "--width", "100")]
    public void A_wrong_call_ends_with_2_and_a_sentence(params string[] arguments)
    {
        var ran = Run.Farhold(arguments);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith("farhold: ", ran.Errors);
        Assert.DoesNotContain("   at ", ran.Errors);
    }

    [Fact]
    public void An_instant_that_is_none_is_refused()
    {
        var ran = Run.Farhold("tell", Run.Demo, "--at", "yesterday");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("--at yesterday is no instant", ran.Errors);
    }
}
