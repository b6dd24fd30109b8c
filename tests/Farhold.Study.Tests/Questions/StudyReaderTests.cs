using System.Text;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Farhold.Study.Tests.Questions;

public class StudyReaderTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(SomePlan.Folder, "study.schema.json")));

    public static TheoryData<string> Shipped => [.. Directory.GetFiles(SomePlan.Folder, "*.study.json").Select(f => Path.GetFileName(f)!)];

    [Theory, MemberData(nameof(Shipped))]
    public void What_ships_is_usable_and_of_the_schema(string file)
    {
        var bytes = File.ReadAllBytes(Path.Combine(SomePlan.Folder, file));
        Assert.IsType<Read<StudyPlan>.Usable>(StudyReader.Read(bytes, file));
        Assert.True(Schema.Evaluate(System.Text.Json.JsonDocument.Parse(bytes).RootElement).IsValid);
    }

    /// <summary>Every figure says how far it can be leaned on, and from where it comes.</summary>
    [Theory, MemberData(nameof(Shipped))]
    public void What_ships_marks_every_figure(string file)
    {
        var plan = Assert
            .IsType<Read<StudyPlan>.Usable>(StudyReader.Read(File.ReadAllBytes(Path.Combine(SomePlan.Folder, file)), file))
            .Value;
        Assert.All(
            plan.Figures.All.Skip(0).Where((_, i) => (StudyInput)i is not (StudyInput.DeathPerFailure or StudyInput.DeathPerRebleed)),
            f => Assert.NotEmpty(f.Source)
        );
        Assert.True(plan.Figures.Drawn.Length <= StudyReader.MostDrawn);
    }

    public static TheoryData<string, string, string> Faults =>
        new()
        {
            { "/seed", "\"x\"", "seed has to be a whole number from 0 to 2147483647, not \"x\"" },
            { "/model", "7", "model has to be a whole number from 1 to 1, not 7" },
            { "/study", "\"A B\"", "study has to be small letters, digits and dashes" },
            { "/reference", "\"nobody\"", "reference has to be one of never, at-0030" },
            { "/evacuationH", "[1, 1]", "evacuationH have to rise" },
            { "/evacuationH", "[]", "evacuationH has to be a list of hours, rising, not an empty list" },
            { "/policies/1/watch", "0", "watch has to be a number from 0.25 to 720 minutes, or a list of periods, not 0" },
            { "/policies/1/gauze", "\"wool\"", "gauze has to be one of haemostatic, plain, not \"wool\"" },
            { "/policies/1/policy", "\"never\"", "never is given twice" },
            { "/figures/holdPlain/mark", "\"guess\"", "mark has to be one of read, memory, design, not \"guess\"" },
            { "/figures/holdPlain/value", "1.5", "value has to be a number from 0 to 1, not 1.5" },
            { "/figures/limbShape/uniform", "[5, 2]", "the second number has to be above the first" },
            { "/figures/limbShape/uniform", "5", "uniform has to be a list of two numbers, not 5" },
            { "/figures/tea", "1", "tea is not known here" },
            { "/figures/deathPerFailure", "1", "deathPerFailure is decided by the model" },
            { "/run/casualties", "10000", "casualties have to be whole batches of 1024" },
            { "/run/stopAtH", "[7]", "7 h is not among evacuationH" },
            { "/uncertainty/draws", "500", "draws has to be a power of two" },
            { "/uncertainty/casualties", "20000", "not more casualties than the run has" },
        };

    [Theory, MemberData(nameof(Faults))]
    public void A_fault_is_refused_at_its_place(string path, string value, string said)
    {
        var json = SomePlan.Shipped();
        var steps = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var at = json;
        foreach (var step in steps[..^1])
            at = int.TryParse(step, out var i) ? at[i]! : at[step]!;
        at[steps[^1]] = JsonNode.Parse(value);
        var text = json.ToJsonString(new() { WriteIndented = true });
        var refused = Assert.IsType<Read<StudyPlan>.Refused>(StudyReader.Read(Encoding.UTF8.GetBytes(text), "a.study.json"));
        var refusal = refused.Refusals[0];
        Assert.StartsWith(said, refusal.Reason, StringComparison.Ordinal);
        Assert.Equal("a.study.json", refusal.File);
        var line = text.Split('\n')[refusal.Line - 1];
        // The line is that of the member, of its parent's head, or of the value within a list.
        Assert.Contains(line.Trim()[..1], "\"{[0123456789", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("question")]
    [InlineData("cohorts")]
    [InlineData("figures")]
    [InlineData("weights")]
    [InlineData("run")]
    [InlineData("uncertainty")]
    [InlineData("evacuationH")]
    public void What_is_missing_is_said(string name)
    {
        var json = SomePlan.Shipped();
        json.AsObject().Remove(name);
        var refused = Assert.IsType<Read<StudyPlan>.Refused>(StudyReader.Read(Encoding.UTF8.GetBytes(json.ToJsonString()), "a"));
        Assert.Contains(refused.Refusals, r => r.Reason.StartsWith($"{name} is missing", StringComparison.Ordinal));
    }

    [Fact]
    public void The_hash_goes_by_what_is_said_and_not_by_its_layout()
    {
        var json = SomePlan.Shipped();
        var (a, b) = (SomePlan.Read(json), SomePlan.Read(JsonNode.Parse(json.ToJsonString(new() { WriteIndented = true }))!));
        Assert.Equal(a.Hash, b.Hash);
        json["weights"]!["limb"] = 0.11;
        Assert.NotEqual(a.Hash, SomePlan.Read(json).Hash);
    }
}
