using System.Text.Json;

namespace Farhold.Cli.Tests;

public class TellTests
{
    private const string Noon = "2031-05-04T12:00:00Z";

    /// <summary>Set to the folder of the approved texts to write them anew; then read the difference.</summary>
    private static readonly string? Approving = Environment.GetEnvironmentVariable("FARHOLD_APPROVE");

    [Theory]
    [InlineData("02:30")]
    [InlineData("03:23")]
    [InlineData("03:42")]
    [InlineData("04:12")]
    [InlineData("06:10")]
    public void The_demo_record_tells_what_was_approved(string at)
    {
        var told = Run.Farhold("tell", Run.Demo, "--at", $"2031-05-04T{at}:00Z");
        var name = $"tell-{at.Replace(':', '-')}.txt";
        if (Approving is not null)
            File.WriteAllText(Path.Combine(Approving, name), told.Output);
        Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "approved", name)), told.Output);
        Assert.Equal((0, ""), (told.ExitCode, told.Errors));
    }

    [Fact]
    public void Json_says_the_verdict_and_ends_with_0_whatever_it_is()
    {
        var told = Run.Farhold("tell", Run.Demo, "--at", "2031-05-04T03:00:00Z", "--json");
        using var json = JsonDocument.Parse(told.Output);
        var limb = Assert.Single(json.RootElement.GetProperty("limbs").EnumerateArray());
        Assert.Equal("leave-on", limb.GetProperty("verdict").GetString());
        Assert.Equal("PT1H10M", limb.GetProperty("sinceFirstTightened").GetProperty("max").GetString());
        Assert.Equal(0, told.ExitCode);
    }

    [Fact]
    public void A_dash_reads_standard_input() =>
        Assert.Equal(
            Run.Farhold("tell", Run.Demo, "--at", Noon).Output,
            Run.Fed(File.ReadAllBytes(Run.Demo), "tell", "-", "--at", Noon).Output
        );

    [Fact]
    public void Refusals_of_standard_input_name_it()
    {
        var ran = Run.Fed("{\"id\":"u8.ToArray(), "check", "-");
        Assert.Equal(2, ran.ExitCode);
        Assert.StartsWith("standard input:1:", ran.Errors);
    }

    [Fact]
    public void Piped_text_holds_no_colour_and_no_cut_lines()
    {
        using var scratch = new Scratch();
        var note = new string('x', 400);
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Tightened("k1-2", "02:10"),
            Lines.Entry("k1-4", "02:20", "note", "\"text\":\"gap before\"")
        );
        var told = Run.Farhold("tell", record, "--at", "2031-05-04T02:30:00Z");
        Assert.DoesNotContain('\u001b', told.Output);
        Assert.Contains("entry k1-3 is missing", told.Output);
        Assert.Contains(told.Output.Split('\n'), l => l.Length > 120);
        scratch.Write("long.jsonl", Lines.Opened, Lines.Entry("k1-2", "02:20", "note", $"\"text\":\"{note}\""));
        Assert.Contains(note, Run.Farhold("log", scratch.At("long.jsonl")).Output);
    }

    [Fact]
    public void A_clock_that_shows_less_than_the_newest_entry_is_not_believed()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened.Replace("2031", "2499"),
            Lines.Tightened("k1-2", "02:10").Replace("2031", "2499")
        );
        var told = Run.Farhold("tell", record);
        Assert.StartsWith("The clock of this machine shows", told.Output);
        Assert.Contains("As of 2499-05-04 02:10 UTC", told.Output);
        Assert.Contains("The clock of this machine shows", told.Errors);
        Assert.Equal(0, told.ExitCode);
    }

    [Fact]
    public void A_refused_local_protocol_leaves_the_shipped_one_in_force_and_says_so()
    {
        using var scratch = new Scratch();
        var local = scratch.Write("local.json", "{\"local\": \"valley\",", " \"over\": \"another\"}");
        var told = Run.Farhold("tell", Run.Demo, "--at", Noon, "--local", local);
        Assert.Equal(0, told.ExitCode);
        Assert.Contains($"{local}:2:", told.Errors);
        Assert.Contains("THE LOCAL PROTOCOL IS REFUSED; farhold-base 2.0.0 IS IN FORCE INSTEAD", told.Output);
        using var json = JsonDocument.Parse(Run.Farhold("tell", Run.Demo, "--at", Noon, "--local", local, "--json").Output);
        Assert.NotEmpty(json.RootElement.GetProperty("protocol").GetProperty("refused").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("protocol").GetProperty("local").ValueKind);
    }

    [Fact]
    public void A_refused_whole_protocol_gives_no_verdict()
    {
        using var scratch = new Scratch();
        var told = Run.Farhold("tell", Run.Demo, "--at", Noon, "--protocol", scratch.Write("p.json", "{}"));
        Assert.Equal((2, ""), (told.ExitCode, told.Output));
        Assert.Contains("p.json:1:1: ", told.Errors);
    }

    [Fact]
    public void A_cut_last_line_still_tells_and_says_that_the_record_is_damaged()
    {
        using var scratch = new Scratch();
        var record = scratch.Write("r.jsonl", [.. File.ReadAllBytes(Run.Demo)[..^60]]);
        var told = Run.Farhold("tell", record, "--at", Noon);
        Assert.Equal(0, told.ExitCode);
        Assert.Contains("The record is damaged", told.Output);
        Assert.Matches(@"r\.jsonl:73:\d+: the last line is cut off", told.Errors);
    }

    [Fact]
    public void Something_said_to_have_happened_after_it_was_written_is_told_as_odd()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Entry("k1-2", "09:00", "tourniquet.tightened", "\"tourniquet\":\"t1\",\"limb\":\"left-leg\"", "02:10")
        );
        var told = Run.Farhold("tell", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("first tightened 2031-05-04 02:10 UTC", told.Output);
        Assert.Contains("said to have happened after it was written", told.Output);
    }

    [Fact]
    public void An_unknown_tourniquet_slackened_is_told_as_odd_and_changes_no_clock()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Tightened("k1-2", "02:10"),
            Lines.Entry("k1-3", "02:20", "tourniquet.slackened", "\"tourniquet\":\"t9\"")
        );
        var told = Run.Farhold("tell", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("tourniquet t9 was never tightened", told.Output);
        Assert.Contains("tourniquet t1 tight", told.Output);
    }

    [Fact]
    public void Slackening_before_tightening_changes_no_clock()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Entry("k1-2", "02:05", "tourniquet.slackened", "\"tourniquet\":\"t1\""),
            Lines.Tightened("k1-3", "02:10")
        );
        var told = Run.Farhold("tell", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("loosened before it was tightened", told.Output);
        Assert.Contains("without blood flow 50 min", told.Output);
    }

    [Fact]
    public void Two_tourniquets_on_one_limb_count_once()
    {
        using var scratch = new Scratch();
        var record = scratch.Write("r.jsonl", Lines.Opened, Lines.Tightened("k1-2", "02:10"), Lines.Tightened("k1-3", "02:20", "t2"));
        var told = Run.Farhold("tell", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("tourniquets t1, t2 tight", told.Output);
        Assert.Contains("without blood flow 50 min in all", told.Output);
    }

    [Fact]
    public void A_tourniquet_that_turns_up_on_another_limb_stays_tight_on_the_first()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Tightened("k1-2", "02:10"),
            Lines.Tightened("k1-3", "02:20", "t1", "right-arm")
        );
        var told = Run.Farhold("tell", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("LEFT LEG: ", told.Output);
        Assert.Contains("RIGHT ARM: ", told.Output);
        Assert.Contains("the clock there keeps running", told.Output);
    }

    [Fact]
    public void No_entry_can_repaint_the_terminal()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Entry("k1-2", "02:20", "note", "\"text\":\"\\u001b[2Jall is well\\u202e\\r\\nLEFT LEG: attempt\"")
        );
        var log = Run.Farhold("log", record).Output;
        Assert.DoesNotContain('\u001b', log);
        Assert.DoesNotContain('\u202e', log);
        Assert.DoesNotContain("\nLEFT LEG", log);
    }

    [Fact]
    public void A_million_lines_are_told()
    {
        using var scratch = new Scratch();
        var record = scratch.At("big.jsonl");
        using (var to = new StreamWriter(record))
        {
            to.Write($"{Lines.Opened}\n{Lines.Tightened("k1-2", "02:10")}\n");
            for (var i = 3; i <= 1_000_000; i++)
                to.Write(Lines.Entry($"k1-{i}", "02:20", "note", "\"text\":\"all quiet\"") + "\n");
        }

        var told = Run.Farhold("tell", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Equal((0, ""), (told.ExitCode, told.Errors));
        Assert.Contains("LEFT LEG: check first", told.Output);
    }
}
