using System.Text;
using System.Text.Json;
using CsCheck;
using Json.Schema;

namespace Farhold.Rehearsal.Tests;

/// <summary>Scenario, acts and truth files: what is refused says where, what was found and what is accepted.</summary>
public class ReaderTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Shipped.Text("scenario.schema.json"));

    public static TheoryData<string> All => [.. Shipped.Names];

    [Theory, MemberData(nameof(All))]
    public void A_shipped_scenario_fits_the_schema(string name) =>
        Assert.True(Schema.Evaluate(JsonDocument.Parse(Shipped.Text($"{name}.scenario.json")).RootElement).IsValid);

    [Fact]
    public void Every_shipped_file_is_among_those_that_are_run() =>
        Assert.Equal(
            Shipped.Names.Order(),
            Directory
                .GetFiles(Path.Combine(AppContext.BaseDirectory, "scenarios"), "*.scenario.json")
                .Select(f => Path.GetFileName(f)[..^".scenario.json".Length])
                .Order()
        );

    /// <summary>A change of a shipped file, the line on which it stands then, and what is said of it.</summary>
    [Theory]
    [InlineData("\"model\": 1", "\"model\": 2", "model has to be a whole number from 1 to 1, not 2")]
    [InlineData("\"seed\": 12", "\"seed\": -1", "seed has to be a number from 0 to")]
    [InlineData("\"seed\": 12", "\"sead\": 12", "sead is not known here (is seed meant?)")]
    [InlineData("\"sex\": \"female\"", "\"sex\": \"woman\"", "sex has to be one of female, male, not \"woman\"")]
    [InlineData("\"massKg\": 66", "\"massKg\": 6", "massKg has to be a number from 30 to 250 kg, not 6")]
    [InlineData("\"vessel\": \"artery\"", "\"vessel\": \"nerve\"", "vessel has to be one of artery, vein")]
    [InlineData("\"limb\": \"left-leg\", \"vessel\"", "\"vessel\"", "exactly one of limb and region")]
    [InlineData(
        "\"act\": \"tighten\", \"limb\": \"left-leg\"",
        "\"act\": \"tighten\", \"limb\": \"right-arm\"",
        "no wound is on the right-arm"
    )]
    [InlineData("\"act\": \"tighten\"", "\"act\": \"cut\"", "act has to be one of tighten, slacken")]
    [InlineData(", \"tourniquet\": \"t1\"", "", "has a name: give tourniquet")]
    [InlineData("\"injured\": \"-PT22M\"", "\"injured\": \"-PT19M\"", "at has to be a time from -PT19M to PT0S")]
    [InlineData("\"earliest\": \"-PT25M\"", "\"earliest\": \"-PT5M\"", "latest is before earliest")]
    [InlineData("logged.care.ended", "logged.care.begun", "there is no input logged.care.begun")]
    [InlineData("\"input\": \"tight.left-leg\"", "\"input\": \"tight.left-arm\"", "there is no input tight.left-arm")]
    [InlineData("\"atLeast\": 1}", "\"atLeast\": 1, \"measured\": true}", "mean nothing in a scenario")]
    [InlineData("\"by\": \"PT15M\"", "\"by\": 15", "by has to be a time from PT0S")]
    [InlineData("\"verdict\": \"attempt\"", "\"verdict\": \"go\"", "verdict has to be one of attempt")]
    [InlineData("\"learn\": [\"decide-attempt\"", "\"learn\": [\"decide\"", "each of learn has to be one of")]
    [InlineData("\"timeZone\": \"Europe/Oslo\"", "\"timeZone\": \"Norway\"", "is no time zone")]
    [InlineData("\"end\"", "\"ende\"", "end is missing")]
    public void What_is_wrong_in_a_scenario_is_refused_at_its_place(string what, string with, string says)
    {
        var text = Shipped.Text("held-at-once.scenario.json");
        var at = text.IndexOf(what, StringComparison.Ordinal);
        Assert.True(at >= 0, what);
        var changed = text[..at] + with + text[(at + what.Length)..];
        var refused = Assert.IsType<Read<Scenario>.Refused>(ScenarioReader.Read(Encoding.UTF8.GetBytes(changed), "s.json"));
        Assert.Contains(refused.Refusals, r => r.Reason.Contains(says, StringComparison.Ordinal) && r.File == "s.json" && r.Line > 0);
        // And what is a matter of form is refused by the schema too.
        if (says.StartsWith("no wound", StringComparison.Ordinal) || says.Contains("no input", StringComparison.Ordinal) || Beyond(says))
            return;
        Assert.False(Schema.Evaluate(JsonDocument.Parse(changed).RootElement).IsValid, says);
    }

    private static bool Beyond(string says) =>
        says.StartsWith("at has to be a time from -PT19M", StringComparison.Ordinal)
        || says
            is "model has to be a whole number from 1 to 1, not 2"
                or "latest is before earliest"
                or "has a name: give tourniquet"
                or "is no time zone";

    [Theory]
    [InlineData("""{"at":"PT1M"}""", "exactly one of act, look and entry")]
    [InlineData("""{"act":"move"}""", "at is missing")]
    [InlineData("""{"at":"1 min","act":"move"}""", "at has to be a time")]
    [InlineData("""{"at":"PT1M","act":"pack","wound":"w1"}""", "material is missing")]
    [InlineData("""{"at":"PT1M","act":"infuse","fluid":"crystalloid","millilitres":5000,"minutes":1}""", "more than 500 mL a minute")]
    [InlineData("""{"at":"PT1M","look":"pulses"}""", "look has to be one of pulse")]
    [InlineData("""{"at":"PT1M","look":"bleeding"}""", "give wound")]
    [InlineData("""{"at":"PT1M","entry":{"kind":"signs.taken","heartRate":900}}""", "heartRate is 900")]
    [InlineData("""{"at":"PT1M","entry":{"kind":"signs.taken","pulse":90}}""", "pulse is not known")]
    [InlineData("""{"at":"PT1M","entry":{"kind":"signs.taken","id":"a-1"}}""", "leave it out")]
    [InlineData("""{"at":"PT1M","entry":{"kind":"no.such"}}""", "not known")]
    [InlineData("""{"at":"PT1M","act":"move","why":"x"}""", "why is not known here")]
    [InlineData("""{"at":"PT1M","look":"mental" """, "not JSON")]
    public void What_is_wrong_in_an_acts_file_is_refused_on_its_line(string line, string says)
    {
        var text = """{"at":"PT1M","look":"mental"}""" + "\n\n" + line + "\n";
        var refused = Assert.IsType<Read<Script>.Refused>(Script.Read(Encoding.UTF8.GetBytes(text), "a.jsonl"));
        Assert.Contains(refused.Refusals, r => r.Line == 3 && r.Reason.Contains(says, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "no line")]
    [InlineData("""{"at":0,"key":"AAAA"}""", "key")]
    [InlineData("""{"at":0,"arrested":true}""", "begins with its header")]
    [InlineData("""{"at":0,"truth":1,"model":1,"seed":1,"stepS":0.5}""", "scenarioSha256 is missing")]
    [InlineData("""{"at":0,"what":1}""", "what is not known here")]
    public void What_is_wrong_in_a_truth_file_is_refused(string text, string says)
    {
        var refused = Assert.IsType<Read<TruthFile>.Refused>(TruthFile.Read(Encoding.UTF8.GetBytes(text), "t.jsonl"));
        Assert.Contains(refused.Refusals, r => r.Reason.Contains(says, StringComparison.Ordinal));
    }

    /// <summary>Bytes are struck out, doubled, swapped or changed: each reader answers, and what it calls usable can be run.</summary>
    [Fact]
    public void No_broken_file_makes_anything_fall_over()
    {
        var files = new[]
        {
            Shipped.File("bled-after-a-move.scenario.json"),
            Shipped.File("bled-at-slackening.acts.jsonl"),
            Encoding.UTF8.GetBytes(
                TruthFile.Write(Headless.Run(SessionTests.Small(), Shipped.Acts("""{"at":"PT1M","act":"move"}""")).Truth)
            ),
        };
        Gen.Select(Gen.Int[0, 2], Gen.Select(Gen.Int[0, 3], Gen.Int[0, 1_000_000], Gen.Byte).Array[1, 6])
            .Sample(
                (which, changes) =>
                {
                    var bytes = changes.Aggregate(files[which], (file, c) => Change(file, c.Item1, c.Item2, c.Item3));
                    switch (which)
                    {
                        case 0:
                            if (ScenarioReader.Read(bytes, "s") is Read<Scenario>.Usable(var scenario) && scenario.End.At < 10_000)
                                Headless.Run(scenario, new([]));
                            break;
                        case 1:
                            if (Script.Read(bytes, "a") is Read<Script>.Usable(var script))
                                Headless.Run(Shipped.Scenario("bled-at-slackening"), script);
                            break;
                        default:
                            if (TruthFile.Read(bytes, "t") is Read<TruthFile>.Usable(var truth) && truth.Lines[^1].Line.At < 10_000)
                                truth.Again(SessionTests.Small(), "t");
                            break;
                    }
                },
                iter: Cases.Of(2_000)
            );
    }

    private static byte[] Change(byte[] file, int how, int where, byte with)
    {
        if (file.Length < 2)
            return file;
        var (at, other) = (where % file.Length, where / 3 % file.Length);
        switch (how)
        {
            case 0:
                return [.. file[..at], .. file[(at + 1)..]];
            case 1:
                return [.. file[..at], with, .. file[at..]];
            case 2:
                var copy = (byte[])file.Clone();
                copy[at] = (byte)('0' + (with % 10));
                return copy;
            default:
                var (low, high) = at < other ? (at, other) : (other, at);
                return [.. file[..low], .. file[high..]];
        }
    }
}
