using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Farhold.Tests.Architecture;
using static Farhold.Tests.Text.Spoken;

namespace Farhold.Tests.Text;

/// <summary>What the shipped rules say in German and Spanish: all of it, with the same figures, and never in what is hashed.</summary>
public partial class RuleTextsTests
{
    private static readonly string[] Shown =
    [
        "title",
        "text",
        "look",
        "change",
        "brief",
        "reason",
        "afterMove",
        "instead",
        "name",
        "keepFor",
        "save",
        "do",
    ];

    public static TheoryData<string> Languages => ["de", "es"];

    static RuleTextsTests()
    {
        foreach (var language in (string[])["de", "es"])
            Translation.Add(
                "x" + language,
                JsonSerializer.SerializeToUtf8Bytes(new JsonObject { ["rules"] = JsonNode.Parse(File(language)) })
            );
    }

    /// <summary>In the order of the files, so that a new sentence is not lost among the others.</summary>
    [Theory, MemberData(nameof(Languages))]
    public void Every_sentence_of_the_shipped_rules_is_translated_and_no_other(string language) =>
        Assert.Equal(Sentences(), Words(language).Select(w => w.Key));

    [Theory, MemberData(nameof(Languages))]
    public void Figures_and_what_is_filled_in_stay(string language) =>
        Assert.All(Words(language), w => Assert.Equal(Figures(w.Key), Figures(w.Value)));

    /// <summary>Three lines of 28 px; eight words where it is spoken.</summary>
    [Theory, MemberData(nameof(Languages))]
    public void Few_words_stay_few(string language)
    {
        var words = Words(language);
        Assert.All(
            ShippedProtocol.Protocol.Steps.Select(s => words[s.Brief!]),
            brief =>
            {
                Assert.InRange(brief.Length, 1, AttemptStep.BriefLength);
                Assert.InRange(brief.Split(' ').Length, 1, 8);
            }
        );
    }

    [Fact]
    public void The_rules_speak_the_language_that_is_spoken_and_stay_the_same_rules()
    {
        var protocol = ShippedProtocol.Protocol;
        var english = protocol.Steps[0].Text;
        Assert.StartsWith("Leave the tourniquet tight.", english, StringComparison.Ordinal);
        Assert.Equal(Words("de")[english], In("xde", () => protocol.Steps[0].Text));
        Assert.Equal(Words("es")[english], In("xes", () => protocol.Steps[0].Text));
        Assert.Equal("hämostatische Gaze", In("xde", () => ShippedKit.Kit.Named("haemostatic-gauze")!.Name));
        Assert.StartsWith("Blutungen finden", In("xde", () => Do("shock")), StringComparison.Ordinal);
        Assert.Equal(english, In("xde", () => Translation.InEnglish(() => protocol.Steps[0].Text)));
        Assert.Equal(protocol, In("xde", () => protocol with { Title = "Converting" }) with { Title = protocol.Title });
    }

    [Fact]
    public void A_sentence_that_ships_nowhere_stays_as_it_was_written() =>
        Assert.Equal("Ring the hut first.", In("xde", () => new ConditionalText(null, "Ring the hut first.").Text));

    private static string Do(string id) => ShippedWarningSigns.Rules.Rules.First(r => r.Id == id).Do;

    private static string File(string language) =>
        System.IO.File.ReadAllText(Path.Combine(Repository.Root, "protocols", "words", $"rules.{language}.json"));

    private static Dictionary<string, string> Words(string language) =>
        JsonSerializer.Deserialize<Dictionary<string, string>>(File(language))!;

    private static string[] Figures(string text) =>
        [.. Figure().Matches(Grouped().Replace(text, "")).Select(m => m.Value).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Sentences() =>
        ((string[])[ShippedProtocol.FileName, "farhold-warning-signs.json", ShippedKit.FileName])
            .SelectMany(f => Said(JsonNode.Parse(System.IO.File.ReadAllText(Path.Combine(Repository.Root, "protocols", f))), ""))
            .Distinct();

    private static IEnumerable<string> Said(JsonNode? node, string name) =>
        node switch
        {
            JsonObject fields => fields.Where(f => f.Key is not ("sources" or "$schema")).SelectMany(f => Said(f.Value, f.Key)),
            JsonArray items => items.SelectMany(i => Said(i, name)),
            JsonValue value when Shown.Contains(name) && value.GetValueKind() == JsonValueKind.String && !IsCode(name, (string)value!) =>
            [
                (string)value!,
            ],
            _ => [],
        };

    // A span of time; the id of another item of the kit.
    private static bool IsCode(string name, string text) => Span().IsMatch(text) || (name == "instead" && Id().IsMatch(text));

    [GeneratedRegex(@"\d+|\{\w+\}")]
    private static partial Regex Figure();

    [GeneratedRegex(@"(?<=\d)[.,](?=\d)")]
    private static partial Regex Grouped();

    [GeneratedRegex(@"^PT\w+$")]
    private static partial Regex Span();

    [GeneratedRegex("^[a-z-]+$")]
    private static partial Regex Id();
}
