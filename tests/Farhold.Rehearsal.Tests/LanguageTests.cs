using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Farhold.Tests.Architecture;

namespace Farhold.Rehearsal.Tests;

/// <summary>What a rehearsal says in another language, and what stays as it is.</summary>
public partial class LanguageTests
{
    static LanguageTests()
    {
        foreach (var language in (string[])["de", "es"])
            Translation.Add(
                language,
                JsonSerializer.SerializeToUtf8Bytes(
                    ((string[])["Farhold.Core", "Farhold.Rehearsal"])
                        .SelectMany(part =>
                            Directory.EnumerateFiles(
                                Path.Combine(Repository.Root, "src", part),
                                $"*.{language}.json",
                                SearchOption.AllDirectories
                            )
                        )
                        .Append(Words(language))
                        .ToDictionary(
                            f => Path.GetFileName(f).Split('.')[0],
                            f => JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(f))
                        )
                )
            );
    }

    private static string Words(string language) => Path.Combine(Repository.Root, "scenarios", "words", $"scenarios.{language}.json");

    /// <summary>In the order of the scenarios, so that a new sentence is not lost among the others; with the figures that it has.</summary>
    [Theory]
    [InlineData("de")]
    [InlineData("es")]
    public void Every_title_briefing_and_word_of_the_shipped_scenarios_is_translated_and_no_other(string language)
    {
        var words = JsonDocument.Parse(File.ReadAllText(Words(language))).RootElement.EnumerateObject().ToArray();
        Assert.Equal(
            ShippedScenarios.All.SelectMany(s => s.Injects.Select(i => i.Say).OfType<string>().Prepend(s.Briefing).Prepend(s.Title)),
            words.Select(w => w.Name)
        );
        Assert.All(
            words,
            w => Assert.Equal(Figures().Matches(w.Name).Select(m => m.Value), Figures().Matches(w.Value.GetString()!).Select(m => m.Value))
        );
        Assert.All(words, w => Assert.NotEqual(w.Name, w.Value.GetString()));
    }

    [Fact]
    public void A_shipped_scenario_is_told_in_the_language_and_an_authors_own_as_it_was_written()
    {
        var child = Shipped.Scenario("child");
        Assert.Equal("Die Sommeralm", In("de", () => child.ShownTitle));
        Assert.StartsWith("Una granja de verano", In("es", () => child.ShownBriefing), StringComparison.Ordinal);
        Assert.Contains(
            In("de", () => Shipped.Run("child")).Happenings,
            h => h.Text.Contains("Wird sie das Bein verlieren?", StringComparison.Ordinal)
        );
        Assert.Equal("By the weir", In("de", () => (child with { Title = "By the weir" }).ShownTitle));
        Assert.Equal(child.Title, In("de", () => child.Title)); // what the hash and the run are of
    }

    public static TheoryData<string, string> Runs
    {
        get
        {
            var runs = new TheoryData<string, string>();
            foreach (var language in (string[])["de", "es"])
            foreach (var name in (string[])["held-at-once", "two-limbs", "bled-at-slackening", "child"])
                runs.Add(language, name);
            return runs;
        }
    }

    /// <summary>What the scenario itself says is in the language of its author.</summary>
    [Theory, MemberData(nameof(Runs))]
    public void A_debrief_has_no_English_line(string language, string name)
    {
        var lines = In(language, () => Lines(Shipped.Run(name)));
        Assert.InRange(lines.Length, 40, 700);
        Assert.DoesNotContain(lines, l => English().IsMatch(l));
    }

    [Fact]
    public void It_is_said_in_the_words_of_the_language()
    {
        var session = Shipped.Run("held-at-once");
        Assert.Contains("Die zwölf Schritte, wie die Akte sie zeigt", In("de", () => Lines(session)));
        Assert.Contains("Los doce pasos, como los muestra el registro", In("es", () => Lines(session)));
        Assert.Contains(
            In("de", () => Shipped.Run("two-limbs")).Happenings,
            h => h.Text.StartsWith("Blick, Puls: ", StringComparison.Ordinal)
        );
        Assert.Contains(
            "linkes Bein",
            string.Join(' ', In("de", () => Shipped.Scenario("two-limbs").KnownLimits)),
            StringComparison.Ordinal
        );
    }

    /// <summary>Else a rehearsal begun in one language could not be proved in another.</summary>
    [Theory]
    [InlineData("de")]
    [InlineData("es")]
    public void Record_and_truth_are_the_same_bytes_in_every_language(string language)
    {
        static string Written(RehearsalSession s) =>
            string.Join('\n', s.Record.Select(e => Encoding.UTF8.GetString(e.Json.Utf8.Span)).Concat(s.Truth.Select(t => t.Json())));
        Assert.Equal(Written(Shipped.Run("bled-at-slackening")), In(language, () => Written(Shipped.Run("bled-at-slackening"))));
    }

    private static string[] Lines(RehearsalSession session)
    {
        var debrief = Debrief.Of(new(session, null), [.. session.Record], ShippedRules.Book);
        return
        [
            .. DebriefText.Parts(debrief).SelectMany(p => p.Lines.Prepend(p.Title)),
            .. DebriefPictures
                .Draw(debrief, 360)
                .SelectMany(p => p.Key.Concat(p.Table.Heads).Concat(p.Table.Rows.SelectMany(r => r)).Prepend(p.Title)),
            .. TrustText.Parts().SelectMany(p => p.Lines.Prepend(p.Title)),
            .. TrustText.Heads(),
            .. TrustText.Groups().Select(g => g.Title),
            .. session.Happenings.Where(h => h.Kind != HappeningKind.Said).Select(h => h.Text),
            .. session.Scenario.KnownLimits.Except(session.Scenario.AuthorsLimits),
        ];
    }

    private static T In<T>(string culture, Func<T> said)
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = new CultureInfo(culture);
            return said();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Figures();

    [GeneratedRegex(
        @"\b(the|and|with|from|this|that|not|when|which|until|after|before|wound|bleeding|casualty|tight|left leg|logged|look|pulse)\b",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex English();
}
