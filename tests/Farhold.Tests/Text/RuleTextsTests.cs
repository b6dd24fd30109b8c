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
                JsonSerializer.SerializeToUtf8Bytes(
                    new JsonObject
                    {
                        ["rules"] = JsonNode.Parse(File(language)),
                        ["priors"] = JsonNode.Parse(File(language, "plans", "priors")),
                    }
                )
            );
    }

    /// <summary>In the order of the files, so that a new sentence is not lost among the others.</summary>
    [Theory, MemberData(nameof(Languages))]
    public void Every_sentence_of_the_shipped_rules_is_translated_and_no_other(string language) =>
        Assert.Equal(Sentences(), Words(File(language)).Select(w => w.Key));

    [Theory, MemberData(nameof(Languages))]
    public void Figures_and_what_is_filled_in_stay(string language) =>
        Assert.All(Words(File(language)), w => Assert.Equal(Figures(w.Key), Figures(w.Value)));

    /// <summary>Three lines of 28 px; eight words where it is spoken.</summary>
    [Theory, MemberData(nameof(Languages))]
    public void Few_words_stay_few(string language)
    {
        var words = Words(File(language));
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
        Assert.Equal(Words(File("de"))[english], In("xde", () => protocol.Steps[0].Text));
        Assert.Equal(Words(File("es"))[english], In("xes", () => protocol.Steps[0].Text));
        Assert.Equal("hämostatische Gaze", In("xde", () => ShippedKit.Kit.Named("haemostatic-gauze")!.Name));
        Assert.StartsWith("Blutungen finden", In("xde", () => Do("shock")), StringComparison.Ordinal);
        Assert.Equal(english, In("xde", () => Translation.InEnglish(() => protocol.Steps[0].Text)));
        Assert.Equal(protocol, In("xde", () => protocol with { Title = "Converting" }) with { Title = protocol.Title });
    }

    /// <summary>As of the rules: what <c>plans/priors.json</c> holds, in its order.</summary>
    [Theory, MemberData(nameof(Languages))]
    public void Every_suggested_time_and_figure_is_translated_with_the_figures_it_has(string language)
    {
        var words = Words(File(language, "plans", "priors"));
        Assert.Equal(PriorTable.Figures.Select(f => f.What).Concat(PriorTable.Times.Select(t => t.What)), words.Select(w => w.Key));
        Assert.All(words, w => Assert.Equal(Figures(w.Key), Figures(w.Value)));
    }

    [Fact]
    public void A_suggested_time_is_shown_in_the_language_that_is_spoken_and_names_its_stage_in_English()
    {
        var river = PriorTable.Times.Single(t => t.Id == "river");
        Assert.Equal("Überqueren eines Flusses mit einer Trage", In("xde", () => river.Title));
        Assert.Equal("crossing a river with a litter", In("xde", () => river.What));
        var leg = new Travel(
            1,
            river.What,
            TravelMode.Wait,
            new Percentiles(Minutes(river.P10Minutes), Minutes(river.P50Minutes), Minutes(river.P90Minutes)),
            DarkRule.Allowed,
            FlightWindow.AnyHour,
            null
        );
        Assert.Equal(river.Title, PlanCompiler.Label(leg));
        Assert.Equal("cruzar un río con una camilla", In("xes", () => PlanCompiler.Label(leg)));
        Assert.Same(river, In("xes", () => Priors.Behind(leg)));
        Assert.Equal("the ford", In("xes", () => PlanCompiler.Label(leg with { Name = "the ford" })));
        Assert.StartsWith(
            "Korrelation, mit der Verzögerungen",
            In("xde", () => PriorTable.Figure("delays-together").Basis.What),
            StringComparison.Ordinal
        );
    }

    private static Duration Minutes(double minutes) => Duration.FromMinutes(minutes);

    [Fact]
    public void A_sentence_that_ships_nowhere_stays_as_it_was_written() =>
        Assert.Equal("Ring the hut first.", In("xde", () => new ConditionalText(null, "Ring the hut first.").Text));

    private static string Do(string id) => ShippedWarningSigns.Rules.Rules.First(r => r.Id == id).Do;

    private static string File(string language, string folder = "protocols", string name = "rules") =>
        System.IO.File.ReadAllText(Path.Combine(Repository.Root, folder, "words", $"{name}.{language}.json"));

    private static Dictionary<string, string> Words(string text) => JsonSerializer.Deserialize<Dictionary<string, string>>(text)!;

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
