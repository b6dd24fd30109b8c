using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Farhold.Cli.Tests;

public class VerbTests
{
    [Theory]
    [InlineData("tell")]
    [InlineData("replay")]
    [InlineData("lookback")]
    [InlineData("check")]
    [InlineData("log")]
    [InlineData("draw")]
    [InlineData("due")]
    [InlineData("dose")]
    [InlineData("supplies")]
    [InlineData("prepare")]
    [InlineData("fhir")]
    [InlineData("card")]
    [InlineData("study")]
    [InlineData("rebleed")]
    public void Every_verb_explains_itself_with_an_example(string verb)
    {
        var ran = Run.Farhold(verb, "--help");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("EXAMPLES", ran.Output);
        Assert.Contains($"farhold {verb}", ran.Output);
        Assert.DoesNotContain('\u001b', ran.Output);
        Assert.DoesNotContain("replac", ran.Output, StringComparison.OrdinalIgnoreCase); // a tourniquet is converted
    }

    [Fact]
    public void Version_names_the_rules_that_ship_with_it() =>
        Assert.Matches(
            $@"^farhold {Regex.Escape(Product.Version)}, protocol farhold-base 2\.\d+\.\d+ \([0-9a-f]{{8}}\)\n$",
            Run.Farhold("--version").Output
        );

    [Fact]
    public void Help_of_a_verb_is_asked_for_either_way()
    {
        var help = Run.Farhold("help", "tell");
        Assert.Equal((0, Run.Farhold("tell", "--help").Output), (help.ExitCode, help.Output));
        Assert.Contains("--at", help.Output, StringComparison.Ordinal);
        Assert.Equal(Run.Farhold("--help").Output, Run.Farhold("help").Output);
    }

    [Theory]
    [InlineData("tel", "Did you mean tell?")]
    [InlineData("chekc", "Did you mean check?")]
    [InlineData("lookbak", "Did you mean lookback?")]
    [InlineData("Tell", "Did you mean tell?")]
    [InlineData("bandage", "--help.\n")]
    public void A_mistyped_verb_is_refused_with_the_one_that_was_meant(string typed, string ends)
    {
        var ran = Run.Farhold(typed, Run.Demo);
        Assert.Equal(2, ran.ExitCode);
        Assert.EndsWith(ends.TrimEnd('\n'), ran.Errors.TrimEnd('\n'), StringComparison.Ordinal);
    }

    [Fact]
    public void Replay_names_every_change_and_its_cause()
    {
        var ran = Run.Farhold("replay", Run.Demo);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        var rows = ran.Output.Split('\n');
        Assert.Matches(@"^time \(UTC\) +what changed +because of$", rows[4]);
        Assert.Contains(
            rows,
            r =>
                System.Text.RegularExpressions.Regex.IsMatch(
                    r,
                    @"^2031-05-04 03:42  left leg: bleeding yes +Wound w1 looked at: bleeding \(Ane, a7k3-26\)$"
                )
        );
        var expiry = Array.FindIndex(rows, r => r.StartsWith("2031-05-04 03:04  left leg: check-first", StringComparison.Ordinal));
        Assert.StartsWith("just after", rows[expiry + 1], StringComparison.Ordinal);
        Assert.All(rows.Skip(4), r => Assert.True(r.Length <= ReplayText.UsualWidth, r));
    }

    [Fact]
    public void The_log_shows_corrections_and_withdrawals_at_the_entry()
    {
        var log = Run.Farhold("log", Run.Demo).Output;
        Assert.Contains("corrected: heart rate 188 becomes 88 (Tor, m2rt-4, 2031-05-04 06:03 UTC)", log);
        Assert.Contains("Given 300 mL oral rehydration, mouth  [WITHDRAWN]", log);
        Assert.Contains("withdrawn: entered twice (Tor, m2rt-8, 2031-05-04 06:32 UTC)", log);
        Assert.StartsWith("between 2031-05-04 01:50 UTC and 2031-05-04 02:20 UTC  Tourniquet t1 tightened", log);
    }

    [Fact]
    public void The_log_keeps_damaged_lines_and_entries_of_a_newer_version()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            "{\"id\":\"k1-2\",",
            Lines.Entry("k1-3", "02:20", "pulse.drawn", "\"curve\":[1,2]")
        );
        var log = Run.Farhold("log", record);
        Assert.Contains("Entry of a newer version (pulse.drawn)", log.Output);
        Assert.Contains("line 2 can't be read: ", log.Output);
        Assert.Contains("r.jsonl:2:", log.Errors);
        Assert.Equal(0, log.ExitCode);
    }

    [Fact]
    public void Check_passes_a_whole_record_and_fails_a_damaged_one()
    {
        Assert.Equal(0, Run.Farhold("check", Run.Demo).ExitCode);
        using var scratch = new Scratch();
        var damaged = Run.Farhold("check", scratch.Write("r.jsonl", Lines.Opened, "{\"id\":\"k1-2\","));
        Assert.Equal(2, damaged.ExitCode);
        Assert.Contains("DAMAGED", damaged.Output);
        Assert.Contains("r.jsonl:2:", damaged.Errors);
    }

    [Fact]
    public void Check_tells_protocols_by_their_content()
    {
        using var scratch = new Scratch();
        var whole = scratch.Write("base.txt", ShippedProtocol.Json.ToArray());
        Assert.Contains("usable\nProtocol farhold-base 2.0.0", Run.Farhold("check", whole).Output);
        var broken = scratch.Write(
            "broken.txt",
            Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(ShippedProtocol.Json.Span).Replace("\"PT6H\"", "\"six hours\""))
        );
        var refused = Run.Farhold("check", broken);
        Assert.Equal((2, ""), (refused.ExitCode, refused.Output));
        Assert.Matches(@"broken\.txt:\d+:\d+: .*limit", refused.Errors);
        var local = Run.Farhold("check", scratch.Write("local.txt", "{\"local\":\"valley\",", "\"over\":\"another\"}"));
        Assert.Contains("local.txt:2:8: this local protocol is meant for another", local.Errors);
    }

    [Theory]
    [InlineData(
        "{\"party\":[{\"name\":\"Ane\"}],\"packed\":{\"plain-gauze\":3}}",
        "A trip: 1 in the party, 1 items counted, help within an unknown time"
    )]
    [InlineData("{\"route\":\"over the pass\"}", "A trip: 0 in the party, 0 items counted")]
    [InlineData("{\"hours\":240}", "help within 240 h or more")]
    public void Check_knows_a_trip_by_its_content(string trip, string said)
    {
        var ran = Run.Fed(Encoding.UTF8.GetBytes(trip), "check", "-");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains("standard input: usable\n", ran.Output);
        Assert.Contains(said, ran.Output);
    }

    [Fact]
    public void Check_knows_a_kit_list_by_its_content()
    {
        using var scratch = new Scratch();
        using var built = new StreamReader(typeof(KitList).Assembly.GetManifestResourceStream(ShippedKit.FileName)!);
        var kit = built.ReadToEnd();
        var ran = Run.Farhold("check", scratch.Write("k.txt", kit));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains($"usable\nKit list {ShippedKit.Kit.Id} {ShippedKit.Kit.Version}: ", ran.Output);
        Assert.Contains($"{ShippedKit.Kit.Items.Length} items, ", ran.Output);
        var broken = Run.Farhold(
            "check",
            scratch.Write("b.txt", kit.Replace("\"unit\": \"roll\"", "\"unit\": 1", StringComparison.Ordinal))
        );
        Assert.Equal((2, ""), (broken.ExitCode, broken.Output));
        Assert.Matches(@"b\.txt:\d+:\d+: unit has to be a text", broken.Errors);
    }

    [Theory]
    [InlineData("{\"packed\":{\"plain-gauz\":1}}", "1:12: plain-gauz is no item of the kit list")]
    [InlineData("{\"id\":\"k1-1\",\"route\":\"oral\",", "1:")] // a broken line of a record that names a route
    [InlineData("{\"id\":\"k1-1\",\"route\":\"oral\",\"kind\":\"drug.given\"}", "happened")]
    public void Check_refuses_by_what_the_file_is_meant_to_be(string text, string reason)
    {
        var ran = Run.Fed(Encoding.UTF8.GetBytes(text), "check", "-");
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains(reason, ran.Errors);
        Assert.DoesNotContain("not known here", ran.Errors);
    }

    [Fact]
    public void A_local_protocol_that_only_tightens_numbers_is_used_unsigned_and_told()
    {
        using var scratch = new Scratch();
        var local = scratch.Write(
            "local.json",
            "{\"local\":\"valley\",\"version\":\"1\",\"over\":\"farhold-base\",\"clock\":{\"limit\":\"PT5H\"}}"
        );
        Assert.Contains("usable", Run.Farhold("check", local).Output);
        var told = Run.Farhold("tell", Run.Demo, "--at", "2031-05-04T03:00:00Z", "--local", local);
        Assert.Matches(
            "Local protocol, unsigned \\([0-9a-f]{8}\\): it only tightens numbers: the time limit is 5 h 00 min instead of 6 h 00 min\n",
            told.Output
        );
        Assert.Contains("the time limit of 5 h", told.Output);
    }

    [Fact]
    public void Draw_writes_pictures_and_says_in_words_what_they_show()
    {
        using var scratch = new Scratch();
        var (svg, png) = (scratch.At("leg.svg"), scratch.At("leg.png"));
        var drawn = Run.Farhold("draw", Run.Demo, "-o", svg, "--at", "2031-05-04T05:00:00Z", "--width", "360", "--light");
        Assert.Equal((0, ""), (drawn.ExitCode, drawn.Errors));
        Assert.Contains("Attempt 1 2031-05-04 03:24: bled", drawn.Output);
        Assert.Equal("img", XDocument.Load(svg).Root!.Attribute("role")!.Value);
        Assert.Equal(0, Run.Farhold("draw", Run.Demo, "-o", png, "--at", "2031-05-04T05:00:00Z", "--width", "360").ExitCode);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], File.ReadAllBytes(png)[..4]);
        Assert.Equal(720, (File.ReadAllBytes(png)[18] << 8) + File.ReadAllBytes(png)[19]);
        Assert.Equal(2, Directory.GetFiles(scratch.Path).Length);
    }

    [Fact]
    public void Draw_says_where_there_is_nothing_to_draw()
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("draw", scratch.Write("r.jsonl", Lines.Opened), "-o", scratch.At("x.svg"), "--at", "2031-05-04T05:00:00Z");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("nothing to draw", ran.Errors);
    }

    [Fact]
    public void Check_and_tell_name_everything_that_is_not_understood_with_line_and_column()
    {
        using var scratch = new Scratch();
        var signs = Lines.Entry("k1-3", "02:20", "signs.taken", "\"heartRbte\":150,\"gcs\":{\"motpr\":5}");
        var note = Lines.Entry("k1-5", "02:40", "note", "\"text\":\"calm\",\"heartRate\":150");
        var amended = Lines.Entry("k1-6", "02:50", "entry.amended", "\"target\":\"k1-5\",\"replace\":{\"mood\":\"good\"}");
        var record = scratch.Write(
            "r.jsonl",
            Lines.Opened,
            Lines.Tightened("k1-2", "02:10"),
            signs,
            Lines.Entry("k1-4", "02:30", "signs.tcken"),
            note,
            amended
        );
        var check = Run.Farhold("check", record);
        Assert.Equal(2, check.ExitCode);
        foreach (
            var (line, text, word, reason) in (ReadOnlySpan<(int, string, string, string)>)
                [
                    (3, signs, "\"heartRbte\"", "the field heartRbte is not understood in an entry of the kind signs.taken"),
                    (3, signs, "\"motpr\"", "the field gcs.motpr is not understood in an entry of the kind signs.taken"),
                    (4, Lines.Entry("k1-4", "02:30", "signs.tcken"), "signs.tcken", "the kind signs.tcken is not known to this version"),
                    (5, note, "\"heartRate\"", "the field heartRate is not understood in an entry of the kind note"),
                    (6, amended, "\"mood\"", "the field mood is not understood in an entry of the kind note"),
                ]
        )
            Assert.Contains($"r.jsonl:{line}:{text.IndexOf(word, StringComparison.Ordinal) + 1}: {reason}", check.Errors);
        Assert.Equal(3, check.Output.Split('\n').Count(l => l.StartsWith("doubt: ", StringComparison.Ordinal)));

        var told = Run.Farhold("tell", record, "--at", "2031-05-04T03:00:00Z");
        Assert.Equal(0, told.ExitCode);
        Assert.Contains("r.jsonl:3:", told.Errors);
        Assert.Contains("entry k1-3 says something that this version does not understand: heartRbte 150, gcs.motpr 5", told.Output);
        Assert.Contains("entry k1-4 is of a kind that this version does not know: signs.tcken", told.Output);
    }

    [Theory]
    [InlineData("farhold-drugs.json", "Formulary farhold-drugs 2.")]
    [InlineData("farhold-warning-signs.json", "Warning signs farhold-warning-signs 2.")]
    public void Check_knows_a_formulary_and_warning_signs_by_their_content(string shipped, string said)
    {
        using var built = new StreamReader(typeof(KitList).Assembly.GetManifestResourceStream(shipped)!);
        var text = built.ReadToEnd();
        var ran = Run.Fed(Encoding.UTF8.GetBytes(text), "check", "-");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains("standard input: usable\n" + said, ran.Output);
        var broken = Run.Fed(Encoding.UTF8.GetBytes(text.Replace("\"version\"", "\"vers\"", StringComparison.Ordinal)), "check", "-");
        Assert.Equal(2, broken.ExitCode);
        Assert.Contains("standard input:3:3: vers is not known here", broken.Errors);
    }

    [Fact]
    public void A_document_of_a_damaged_record_that_nobody_touched_says_nothing_of_changes()
    {
        using var scratch = new Scratch();
        var record = scratch.Write("r.jsonl", [.. File.ReadAllBytes(Run.Demo)[..^60]]);
        var written = Run.Farhold("fhir", record, "-o", scratch.At("r.json"), "--at", "2031-05-04T12:00:00Z");
        Assert.Equal(0, written.ExitCode);
        var read = Run.Farhold("fhir", "--read", scratch.At("r.json"), "-o", scratch.At("again.jsonl"));
        Assert.Equal((0, ""), (read.ExitCode, read.Errors));
    }

    [Fact]
    public void A_plan_that_starts_at_the_end_of_time_is_refused_where_it_says_so()
    {
        var ran = Run.Fed(
            "{\n\"start\":\"9999-12-31T23:00:00Z\",\"legs\":[{\"mode\":\"wait\",\"p10\":1,\"p90\":2}]}"u8.ToArray(),
            "way",
            "-"
        );
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("standard input:2:9: start has to be an instant of the years 1900 to 2500", ran.Errors);
    }
}
