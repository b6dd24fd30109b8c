using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Cli.Tests;

public class HandOverTests
{
    private const string When = "2031-05-04T08:30:00Z";

    [Theory]
    [InlineData("say")]
    [InlineData("message")]
    [InlineData("ask")]
    [InlineData("signs")]
    public void Every_verb_explains_itself_with_an_example(string verb)
    {
        var ran = Run.Farhold(verb, "--help");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("EXAMPLES", ran.Output);
        Assert.Contains($"farhold {verb}", ran.Output);
        Assert.DoesNotContain("replac", ran.Output, StringComparison.OrdinalIgnoreCase); // a tourniquet is converted
    }

    [Theory]
    [InlineData("mist", "M  Mechanism")]
    [InlineData("atmist", "A  Age and person")]
    [InlineData("sbar", "S  Situation")]
    [InlineData("nine-line", "9  Terrain")]
    [InlineData("radio", "Tourniquet")]
    public void Say_words_the_record_in_the_form_asked_for(string form, string part)
    {
        var ran = Run.Farhold("say", Run.Demo, "--form", form, "--zone", "Europe/Oslo", "--at", When);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains($"\n{part}\n", ran.Output);
        Assert.Contains("Get help first.", ran.Output);
    }

    /// <summary>The form as a person reads it: change the file only after reading the difference.</summary>
    [Fact]
    public void Say_tells_the_demo_as_approved() =>
        Assert.Equal(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "approved", "say-atmist-08-30.txt")).ReplaceLineEndings("\n"),
            Run.Farhold("say", Run.Demo, "--zone", "Europe/Oslo", "--at", When).Output
        );

    /// <summary>As a person reads it out: change the file only after reading the difference.</summary>
    [Fact]
    public void Ask_words_the_call_of_the_demo_as_approved() =>
        Assert.Equal(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "approved", "ask-03-23.txt")).ReplaceLineEndings("\n"),
            Run.Farhold("ask", Run.Demo, "--from", "Ane", "--zone", "Europe/Oslo", "--at", "2031-05-04T03:23:00Z").Output
        );

    [Fact]
    public void Ask_says_whom_the_local_protocol_names_before_the_call()
    {
        string[] local = ["--local", Run.Beside("skarvedal-local.json"), "--issuer", Run.Beside("skarvedal.issuer")];
        string[] ask = ["ask", Run.Demo, "--zone", "Europe/Oslo", "--at", "2031-05-04T03:23:00Z", .. local];
        Assert.Equal(
            [
                "Whom to call",
                "   Dr Vigdis Holm (invented), medical lead: satellite phone +881 0000 0131; short message to +47 0000 0131; at any hour",
                "   Skarvedal duty physician, duty physician: phone +47 0000 0130; radio, channel RK 5, call Skarvedal base; "
                    + "CLOSED now, opens 07:00 (05:00 UTC), in 1 h 37 min",
                "   Emergency: Skarvedal rescue centre (invented), +47 0000 0112",
                "   They say: \"base doctor\" is adviser; \"sledge\" is litter; \"wind sack\" is shelter",
                "",
                "Asking for advice",
            ],
            Run.Farhold(ask).Output.Split('\n').Take(7)
        );
        Assert.StartsWith("ASK", Run.Farhold([.. ask, "--short"]).Output, StringComparison.Ordinal);
        Assert.Contains("\"whom\": [", Run.Farhold([.. ask, "--json"]).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Ask_puts_the_question_first_in_a_short_message() =>
        Assert.StartsWith(
            "ASK what to do, TQ left leg?; on since 01:50Z-02:20Z; against shock.radial-pulse shock.heart-rate",
            Run.Farhold("ask", Run.Demo, "--short", "--at", "2031-05-04T03:00:00Z").Output,
            StringComparison.Ordinal
        );

    [Fact]
    public void Ask_says_the_same_as_json()
    {
        var ran = Run.Farhold("ask", Run.Demo, "--question", "drug", "--text", "paracetamol", "--json", "--at", When);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        using var json = System.Text.Json.JsonDocument.Parse(ran.Output);
        Assert.Equal("May we give paracetamol? How much, by which way, how often?", json.RootElement.GetProperty("question").GetString());
        Assert.Equal(8, json.RootElement.GetProperty("parts").GetArrayLength());
    }

    [Theory]
    [InlineData("--question", "poem", "there is no question")]
    [InlineData("--limb", "tail", "there is no limb")]
    [InlineData("--question", "further", "no tight tourniquet in this record has that question now")]
    public void What_can_not_be_asked_is_refused(string option, string value, string reason)
    {
        var ran = Run.Farhold("ask", Run.Demo, option, value, "--at", "2031-05-04T03:23:00Z");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(reason, ran.Errors);
    }

    [Theory]
    [InlineData("--form", "poem")]
    [InlineData("--zone", "Nowhere/Else")]
    public void An_unknown_form_or_zone_is_refused(string option, string value)
    {
        var ran = Run.Farhold("say", Run.Demo, option, value, "--at", When);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(value, ran.Errors);
    }

    [Fact]
    public void A_message_is_read_back_as_a_record_that_can_be_told()
    {
        var message = Run.Farhold("message", Run.Demo, "--at", When);
        Assert.Equal(0, message.ExitCode);
        Assert.InRange(message.Output.TrimEnd('\n').Length, 1, 160);
        using var scratch = new Scratch();
        var entries = Run.Farhold("message", "--read", scratch.Write("sms.txt", message.Output.TrimEnd('\n')));
        Assert.Equal(0, entries.ExitCode);
        Assert.Contains("the sender left out: ", entries.Errors);
        var record = scratch.Write("sms.jsonl", Encoding.UTF8.GetBytes(entries.Output));
        Assert.Contains(
            "first tightened between 2031-05-04 01:50 UTC and 2031-05-04 02:20 UTC",
            Run.Farhold("tell", record, "--at", When).Output
        );
    }

    [Fact]
    public void Parts_are_numbered_and_read_together()
    {
        var parts = Run.Farhold("message", Run.Demo, "--parts", "--at", When).Output;
        var lines = parts.TrimEnd('\n').Split('\n');
        Assert.True(lines.Length > 1);
        Assert.All(lines, l => Assert.InRange(l.Length, 1, 160));
        var entries = Run.Fed(Encoding.UTF8.GetBytes(parts), "message", "--read", "-");
        Assert.Equal(0, entries.ExitCode);
        Assert.Contains("\"kind\":\"help.expected\"", entries.Output);
        Assert.Contains("\"allergies\":[\"penicillin\"]", entries.Output);
    }

    [Fact]
    public void A_message_that_can_not_be_read_says_where()
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("message", "--read", scratch.Write("sms.txt", "", "FH1 20310504 0830Z;TQ XX ON 0150;END"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("sms.txt:2:20: ", ran.Errors);
    }

    [Fact]
    public void Signs_come_as_a_table()
    {
        var ran = Run.Farhold("signs", Run.Demo, "--csv", "--at", When);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.StartsWith("id,happenedEarliest,happenedLatest,by,heartRate (/min),", ran.Output);
        Assert.Contains("m2rt-3,2031-05-04T06:00:00Z,2031-05-04T06:00:00Z,Tor,88,16,", ran.Output);
    }

    [Fact]
    public void Check_names_the_first_entry_that_does_not_follow_from_the_one_before()
    {
        using var scratch = new Scratch();
        var first = Lines.Opened;
        string Linked(string line, string before) =>
            line.Insert(
                line.IndexOf(','),
                $",\"previous\":\"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(before)))}\""
            );
        var second = Linked(Lines.Entry("k1-2", "02:20", "note", "\"text\":\"pale\""), first);
        var third = Linked(Lines.Entry("k1-3", "02:30", "note", "\"text\":\"better\""), second);
        var whole = Run.Farhold("check", scratch.Write("whole.jsonl", first, second, third));
        Assert.Equal((0, ""), (whole.ExitCode, whole.Errors));
        Assert.Contains("chain of k1: 2 of 3 entries linked, unbroken", whole.Output);
        var changed = Run.Farhold("check", scratch.Write("changed.jsonl", first, "", second.Replace("pale", "pink"), third));
        Assert.Equal(2, changed.ExitCode);
        Assert.Contains("changed.jsonl:4:1: entry k1-3: the entry before it (k1-2) is not the one it was written after", changed.Errors);
        Assert.Contains("BROKEN at k1-3", changed.Output);
    }

    /// <summary>The command that the documentation gives for it, where the machine has the tools.</summary>
    [Fact]
    public void The_fingerprint_can_be_redone_with_standard_tools()
    {
        if (OperatingSystem.IsWindows())
            Assert.Skip("sort and sha256sum are not there");
        using var shell = Process.Start(
            new ProcessStartInfo("/bin/sh", ["-c", "LC_ALL=C sort -u \"$1\" | sha256sum | cut -c1-20", "sh", Run.Demo])
            {
                RedirectStandardOutput = true,
            }
        )!;
        var redone = shell.StandardOutput.ReadToEnd().Trim();
        shell.WaitForExit();
        Assert.Contains(
            $"fingerprint: {string.Join(' ', redone.Chunk(4).Select(c => new string(c)))}",
            Run.Farhold("check", Run.Demo).Output
        );
    }
}
