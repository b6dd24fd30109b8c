using System.Text;
using System.Text.Json;
using Farhold.Exchange.HandOver;
using static Farhold.Tests.Text.Spoken;

namespace Farhold.Tests.Text;

/// <summary>What the core says in another language than English, and what stays as it is.</summary>
public class TranslationTests
{
    private static readonly Instant Now = Instant.FromUtc(2031, 5, 4, 3, 22);

    static TranslationTests()
    {
        Translation.Add("xa", TextFiles.Together("en", TextFiles.Marked));
        Translation.Add(
            "xb",
            """
            {
              "VerdictTexts": {
                "LeaveOn": "laissez le garrot",
                "DueLater": "dans {1} : {0}",
                "SecondLook": "{0}",
                "InputNotKnown": "rien",
                "FirstTightened": "serré {0}, {1} {"
              },
              "RespondTexts": { "LimbTornOff": "arraché : {0}" },
              "Words": { "Limb.LeftLeg": "jambe gauche" },
              "NobodyKnowsThis": { "A": "b" }
            }
            """u8.ToArray()
        );
    }

    [Fact]
    public void A_verdict_is_said_in_the_language_of_the_culture() =>
        Assert.Equal(
            ("laissez le garrot", "leave the tourniquet on, no attempt to convert it"),
            (In("xb", () => VerdictWords.Of(Verdict.LeaveOn)), VerdictWords.Of(Verdict.LeaveOn))
        );

    [Theory]
    [InlineData("xb")]
    [InlineData("xb-XY")]
    public void A_region_makes_no_other_language(string culture) => Assert.Equal("jambe gauche", In(culture, () => Say.Limb(Limb.LeftLeg)));

    [Theory]
    [InlineData("xc")]
    [InlineData("")]
    public void A_language_that_was_not_handed_over_is_English(string culture) =>
        Assert.Equal("Make an attempt", In(culture, () => VerdictWords.Head(Verdict.Attempt)));

    [Fact]
    public void What_a_file_lacks_is_said_in_English() =>
        Assert.Equal("Check first", In("xb", () => VerdictWords.Head(Verdict.CheckFirst)));

    [Fact]
    public void A_text_that_asks_for_other_things_than_English_is_not_used()
    {
        Assert.Equal("Second look: take all the signs of shock again.", In("xb", () => Farhold.Verdicts.VerdictTexts.SecondLook));
        Assert.Equal("pulse not known", In("xb", () => Farhold.Verdicts.VerdictTexts.InputNotKnown("pulse")));
        Assert.Equal("first tightened 02:10, 1 min ago", In("xb", () => Farhold.Verdicts.VerdictTexts.FirstTightened("02:10", "1 min")));
    }

    [Fact]
    public void Things_may_change_places() =>
        Assert.Equal("dans 5 min : 03:00", In("xb", () => Farhold.Verdicts.VerdictTexts.DueLater("03:00", "5 min")));

    [Fact]
    public async Task The_language_goes_along_with_what_is_awaited()
    {
        var ct = TestContext.Current.CancellationToken;
        var said = await In(
            "xb",
            () =>
                Task.Run(
                    async () =>
                    {
                        await Task.Yield();
                        return VerdictWords.Of(Verdict.LeaveOn);
                    },
                    ct
                )
        );
        Assert.Equal("laissez le garrot", said);
        Assert.Equal("Make an attempt", VerdictWords.Head(Verdict.Attempt));
    }

    [Theory]
    [InlineData("a {0} b {1}", 2, false, true)]
    [InlineData("{1} {0} {1}", 2, false, true)]
    [InlineData("a {0}", 2, false, false)]
    [InlineData("a {2}", 2, false, false)]
    [InlineData("a {0} {", 1, false, false)]
    [InlineData("a {0:x}", 1, false, false)]
    [InlineData(" ", 0, false, false)]
    [InlineData("one|{0} more", 1, true, true)]
    [InlineData("{0} one|more", 1, true, false)]
    [InlineData("one|{0} more", 1, false, false)]
    [InlineData("{0} more", 1, true, false)]
    public void A_text_fits_where_it_asks_for_the_same(string text, int given, bool forms, bool fits) =>
        Assert.Equal(fits, TextLines.Fits(text, given, forms));

    [Fact]
    public void Every_text_takes_the_way_of_a_translation()
    {
        var english = Said();
        var marked = In("xa", Said);
        Assert.Equal(english, marked.Replace(TextFiles.Mark.ToString(), "", StringComparison.Ordinal));
        var rules = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "protocols", "farhold-base.json"));
        Assert.All(
            marked.Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0 && !l.Contains(TextFiles.Mark, StringComparison.Ordinal)),
            l => Assert.True(l == "SBAR" || rules.Contains(l, StringComparison.Ordinal), l)
        );
    }

    [Fact]
    public void A_record_is_the_same_bytes_in_every_language()
    {
        Assert.Equal(Written(Demo.Record()), In("xa", () => Written(Demo.Record())));
        Assert.Equal(Tasks(), In("xa", Tasks));

        static string Tasks() => string.Join('\n', Judge.At(Demo.Record(), ShippedRules.Book, Now).Due.Select(d => $"{d.At} {d.Task}"));
    }

    [Fact]
    public void What_is_not_a_file_of_texts_is_refused()
    {
        Assert.ThrowsAny<JsonException>(() => Translation.Add("xd", "{"u8.ToArray()));
        Assert.Throws<InvalidOperationException>(() => Translation.Add("xd", """{"VerdictTexts":[]}"""u8.ToArray()));
        Assert.Throws<InvalidOperationException>(() => Translation.Add("xd", """{"VerdictTexts":{"LeaveOn":1}}"""u8.ToArray()));
    }

    /// <summary>Verdict, log and spoken form of the example.</summary>
    private static string Said()
    {
        var record = Demo.Record();
        var judged = Judge.At(record, ShippedRules.Book, Now);
        var form = Forms.Of(FormKind.Sbar, CareFacts.Of(record, ShippedRules.Book, Now), DateTimeZone.Utc);
        IEnumerable<string> lines =
        [
            .. JudgementText.Of(judged).Split('\n'),
            .. LogText.Lines(record).Select(l => l.Text),
            .. form.Text().Split('\n'),
        ];
        return string.Join('\n', lines);
    }

    private static string Written(CareRecord record)
    {
        using var to = new MemoryStream();
        RecordReader.Write(to, record.Entries, record.Damaged);
        return Encoding.UTF8.GetString(to.ToArray());
    }
}
