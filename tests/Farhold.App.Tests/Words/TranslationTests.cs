using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Farhold.App.Tests.Doubles;
using Farhold.Tests.Architecture;

namespace Farhold.App.Tests.Words;

/// <summary>That keys and placeholders are those of English, the build says itself (docs/texts.md).</summary>
public partial class TranslationTests
{
    /// <summary>Texts that are the same in another language, and why.</summary>
    private static readonly FrozenDictionary<string, string[]> SameAsEnglish = new Dictionary<string, string[]>
    {
        // A name, or nothing but what is filled in, units and signs.
        ["*"] =
        [
            "AppName",
            "Direction",
            "Hours",
            "Minutes",
            "LogAtTime",
            "ChartFluidPart",
            "Kilometres",
            "LoggedTimes",
            "Metres",
            "LastLook",
            "CalendarOne",
            "LegSpeed",
            "WayChanceIs",
            "StepOn",
            "RehearsalRate",
            "LeadComesAt",
            "LessonBy",
            "StageMark",
        ],
        // Words that German shares with English.
        ["de"] =
        [
            "HeatWarm",
            "SayWarm",
            "PartyName",
            "FormChoice",
            "VersionLabel",
            "InWord",
            "InHours",
            "FieldTourniquet",
            "InTime",
            "AbandonTightOf",
            "DueAt",
            "MemberName",
            "WayStartIn",
            "MechanismBlast",
            "AskFormText",
        ],
        // Words that Spanish shares with English, and dates that both write with spaces only.
        ["es"] =
        [
            "DayOfMonth",
            "DayOfYear",
            "HubRoleInstructor",
            "No",
            "NoWord",
            "WordAbdomen",
            "WordPelvis",
            "WordPlasma",
            "SignVerbal",
            "ShockIs",
            "ContactRadio",
            "ByRadio",
            "MechanismAnimal",
            "AnswerNo",
        ],
    }.ToFrozenDictionary();

    public static TheoryData<string> Others => [.. Language.All.Select(l => l.Tag).Where(t => t != "en")];

    [Fact]
    public void Every_language_that_is_offered_has_a_file_and_the_other_way_round()
    {
        Assert.Equal(Texts.Languages.Order(), Language.All.Select(l => l.Tag).Order());
        var page = File.ReadAllText(Path.Combine(Repository.Root, "src/Farhold.App/wwwroot/first.js"));
        var fetched = FetchedInPage().Match(page).Groups[1].Value;
        Assert.Equal(Others.Select(t => $"'{t.Data}'"), fetched.Split(", "));
    }

    [Theory]
    [MemberData(nameof(Others))]
    public void What_is_fetched_is_of_the_keys_that_are_compiled_in(string language) =>
        Assert.Equal(Texts.KeysMark, LanguageFile.Fetched(language)!.KeysMark);

    [Theory]
    [MemberData(nameof(Others))]
    public void Nothing_is_left_in_English(string language)
    {
        var english = LanguageFile.Read("en").ToDictionary();
        var same = LanguageFile.Read(language).Where(t => english[t.Key] == t.Value || Bare(english[t.Key]) == t.Value).Select(t => t.Key);
        Assert.Equal(SameAsEnglish["*"].Concat(SameAsEnglish[language]).Order(), same.Order());
    }

    /// <summary>The words that only English has among the commonest of each of the three.</summary>
    [Theory]
    [MemberData(nameof(Others))]
    public void No_English_word_stands_within_a_translated_line(string language) =>
        Assert.Empty(
            LanguageFile
                .Read(language)
                .Where(t => EnglishWords().IsMatch(t.Value) && t.Key != "News2Source")
                .Select(t => $"{t.Key}: {t.Value}")
        );

    /// <summary>The mark of decimals, the months and the direction are no sentences, but are read as such elsewhere.</summary>
    [Theory]
    [MemberData(nameof(Others))]
    public void A_language_says_how_it_writes(string language)
    {
        var texts = LanguageFile.Texts(language);
        Assert.Equal("ltr", texts.Direction);
        Assert.Equal(12, texts.Months.Split(' ').Length);
        Assert.Contains(texts.DecimalMark, (string[])[".", ","]);
    }

    [Theory]
    [MemberData(nameof(Others))]
    public void Left_and_right_are_never_exchanged_or_left_out(string language)
    {
        var texts = LanguageFile.Texts(language);
        var (left, right) = language == "de" ? ("link", "recht") : ("izquierd", "derech");
        foreach (
            var (limb, own, other) in new[]
            {
                (Limb.LeftArm, left, right),
                (Limb.LeftLeg, left, right),
                (Limb.RightArm, right, left),
                (Limb.RightLeg, right, left),
            }
        )
        {
            var head = texts.SidedInHead(limb);
            Assert.Contains(own[..3], head, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(other[..3], head, StringComparison.OrdinalIgnoreCase);
            Assert.All(head.Split(' '), w => Assert.InRange(w.Length, 1, 8));
        }
        foreach (var limb in Enum.GetValues<Limb>())
        foreach (var said in new[] { texts.Sided(limb), texts.Word(limb), texts.Within(limb) })
        {
            var (own, other) = limb is Limb.LeftArm or Limb.LeftLeg ? (left, right) : (right, left);
            Assert.Contains(own, said, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(other, said, StringComparison.OrdinalIgnoreCase);
        }
        Assert.Contains(left, texts.BodyLeft, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(right, texts.BodyRight, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(left.ToUpperInvariant(), texts.Sided(Limb.LeftLeg), StringComparison.Ordinal);
    }

    /// <summary>
    /// The bar has five places on 360 px: 64 px of text each at 13 px bold, two lines. A character of that size is up to 8 px wide (own
    /// measure of the browser's sans-serif), so no more than eight stand between two places where a line may break.
    /// </summary>
    [Theory]
    [MemberData(nameof(Others))]
    public void The_names_of_the_places_find_room_in_the_bar(string language)
    {
        var texts = LanguageFile.Texts(language);
        foreach (var place in Farhold.App.Parts.Places.All)
        {
            var pieces = place.Name(texts).Split(' ', '\u00ad');
            Assert.InRange(pieces.Length, 1, 2);
            Assert.All(pieces, p => Assert.InRange(p.Length, 1, 9));
        }
    }

    /// <summary>Every word that a form offers as a button has one of its own in the language.</summary>
    [Theory]
    [MemberData(nameof(Others))]
    public void Every_word_of_the_record_has_a_text(string language)
    {
        var (english, other) = (Texts.In("en"), LanguageFile.Texts(language));
        string[] shared = ["Amputation", "Plasma", "Abdomen", "Pelvis", "Axilla", "Explosion", "Animal"];
        var words = Farhold
            .App.Enter.EntryForms.Made.SelectMany(k => Farhold.App.Enter.EntryForms.Of(k))
            .SelectMany(f => f is Farhold.App.Enter.FormField.Group g ? [.. g.Fields] : new[] { f })
            .OfType<Farhold.App.Enter.FormField.Word>()
            .SelectMany(f => f.Words.Select(w => (Field: f, Word: w)))
            .ToList();
        Assert.NotEmpty(words);
        Assert.Empty(
            words
                .Select(w => (English: w.Field.Button(w.Word, english), Said: w.Field.Button(w.Word, other)))
                .Where(w => w.English == w.Said && !shared.Contains(w.Said))
                .Select(w => w.Said)
        );
    }

    [Fact]
    public void The_plain_page_says_in_English_what_the_texts_say()
    {
        var english = LanguageFile.Read("en").ToDictionary();
        var page = File.ReadAllText(Path.Combine(Repository.Root, "src/Farhold.App/wwwroot/index.html"));
        var said = Said().Matches(page).ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value);
        Assert.Equal(7, said.Count);
        Assert.All(said, s => Assert.Equal(english[s.Key], s.Value));
        var script = File.ReadAllText(Path.Combine(Repository.Root, "src/Farhold.App/wwwroot/first.js"))
            .Replace("\\'", "'", StringComparison.Ordinal);
        Assert.All(
            (string[])["StuckMode", "StuckSlow"],
            k => Assert.Contains($"stuck('{k}', '{english[k]}')", script, StringComparison.Ordinal)
        );
    }

    /// <summary>A name in quotes is one to look for on the screen, so it is a text of it; a soft hyphen does not show.</summary>
    [Theory]
    [InlineData("en", "“", "”", 5)]
    [InlineData("de", "„", "“", 8)]
    [InlineData("es", "«", "»", 8)]
    public void What_a_text_quotes_stands_somewhere_on_the_screen(string language, string open, string close, int atLeast)
    {
        var texts = LanguageFile.Read(language).Select(t => t.Value.Replace("\u00ad", "", StringComparison.Ordinal)).ToHashSet();
        var quoted = texts.SelectMany(t => Regex.Matches(t, $"{open}([^{close}]+){close}")).Select(m => m.Groups[1].Value).ToList();
        Assert.InRange(quoted.Count, atLeast, 99);
        Assert.DoesNotContain(quoted, q => !q.StartsWith('{') && !texts.Contains(q));
    }

    private static string Bare(string text) => Named().Replace(text, "{$1}");

    [GeneratedRegex(@"\{(\d):[^}]*\}")]
    private static partial Regex Named();

    [GeneratedRegex(@"const fetched = \[([^\]]*)\]")]
    private static partial Regex FetchedInPage();

    [GeneratedRegex(
        @"\b(the|and|with|from|this|that|not|when|which|until|after|before|wound|bleeding|casualty)\b",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex EnglishWords();

    [GeneratedRegex("data-text=\"([A-Za-z0-9]+)\"[^>]*>([^<]*)<")]
    private static partial Regex Said();
}
