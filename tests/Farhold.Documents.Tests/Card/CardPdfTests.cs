using CsCheck;
using Farhold.Documents.Card;
using Farhold.Exchange.Card;
using Farhold.Tests;

namespace Farhold.Documents.Tests.Card;

public class CardPdfTests
{
    private static readonly DateTimeZone Oslo = DateTimeZoneProviders.Tzdb["Europe/Oslo"];

    [Theory]
    [InlineData(Paper.A5)]
    [InlineData(Paper.A4)]
    public void Another_tool_reads_every_part_of_the_card(Paper paper) =>
        Gens.StrangeRecord.Sample(
            w =>
            {
                var sheet = Sheet(w.Record, w.Now);
                var text = Tool.Text(CardPdf.Write(sheet, paper, w.Now));
                Assert.All(
                    [sheet.Title, sheet.AsOf, CardSheet.Caution, sheet.Print, .. sheet.Parts.SelectMany(p => p.Texts)],
                    t => Assert.Contains(Tool.Squeezed(CardFonts.Printable(t)), text, StringComparison.Ordinal)
                );
            },
            iter: Gens.Cases(15),
            threads: 1
        );

    [Theory]
    [InlineData(Paper.A5)]
    [InlineData(Paper.A4)]
    public void No_block_reaches_into_the_foot_or_past_the_paper(Paper paper) =>
        Gens.StrangeRecord.Sample(
            w =>
            {
                var look = PaperLook.Of(paper);
                CardFonts.Use();
                using var measure = PdfSharp.Drawing.XGraphics.CreateMeasureContext(
                    new(look.Width, look.Height),
                    PdfSharp.Drawing.XGraphicsUnit.Point,
                    PdfSharp.Drawing.XPageDirection.Downwards
                );
                var placed = CardPdf.Pages(Sheet(w.Record, w.Now), look, measure).SelectMany(p => p).ToArray();
                Assert.All(
                    placed,
                    p =>
                        Assert.True(
                            p.Y >= look.Margin && p.Y + p.Block.Height <= look.Bottom + 0.01,
                            $"{p.Y} and {p.Block.Height} above {look.Bottom}"
                        )
                );
            },
            iter: Gens.Cases(150),
            threads: 1
        );

    [Fact]
    public void Every_entry_and_every_damaged_line_is_on_it() =>
        Gens.StrangeRecord.Sample(
            w =>
            {
                var text = Tool.Text(CardPdf.Write(Sheet(w.Record, w.Now), Paper.A4, w.Now));
                Assert.All(w.Record.Entries, e => Assert.Contains(e.Id.ToString(), text, StringComparison.Ordinal));
                Assert.All(
                    w.Record.Entries.Where(e => e.Payload is not (Payload.EntryAmended or Payload.EntryWithdrawn)),
                    e => Assert.True(Stands(EntryText.Of(e), text), EntryText.Of(e))
                );
                Assert.All(
                    w.Record.Damaged,
                    d =>
                        Assert.Contains(
                            Tool.Squeezed(CardFonts.Printable(Plain.Line(d.Raw.ToString()[..Math.Min(150, d.Raw.ToString().Length)]))),
                            text,
                            StringComparison.Ordinal
                        )
                );
                var first = w
                    .Record.Readings[0]
                    .Of(Kind.TourniquetTightened)
                    .Where(t => t.When.Earliest <= w.Now)
                    .OrderBy(t => t.When.Earliest)
                    .FirstOrDefault();
                if (first is not null)
                    Assert.Contains(
                        first.When.Earliest.InZone(Oslo).ToString("dMMMHH:mm", System.Globalization.CultureInfo.InvariantCulture),
                        text,
                        StringComparison.Ordinal
                    );
            },
            iter: Gens.Cases(20),
            threads: 1
        );

    /// <summary>In one piece; or, where a row goes on in the next column or over the page, word for word.</summary>
    private static bool Stands(string said, string text) =>
        text.Contains(Tool.Squeezed(CardFonts.Printable(said)), StringComparison.Ordinal)
        || said.Split(' ').All(word => text.Contains(Tool.Squeezed(CardFonts.Printable(word)), StringComparison.Ordinal));

    [Fact]
    public void The_file_names_the_program_and_its_version()
    {
        var card = CardPdf.Write(Sheet(Names("Runa"), Some.At("04:50")), Paper.A4, Some.At("04:50"), TestContext.Current.CancellationToken);
        Assert.Matches(
            $@"(?m)^Creator: +{System.Text.RegularExpressions.Regex.Escape(Product.Named)}$",
            Tool.Run("pdfinfo", card, "{}").Output
        );
    }

    [Fact]
    public void A_card_that_nobody_waits_for_any_more_is_given_up_and_the_next_is_made()
    {
        var sheet = Sheet(Names("Runa"), Some.At("04:50"));
        Assert.ThrowsAny<OperationCanceledException>(() => CardPdf.Write(sheet, Paper.A4, Some.At("04:50"), new(canceled: true)));
        Assert.NotEmpty(CardPdf.Write(sheet, Paper.A4, Some.At("04:50"), TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData(Paper.A5)]
    [InlineData(Paper.A4)]
    public void What_must_not_be_done_now_is_on_it_with_its_reason(Paper paper)
    {
        var record = new CareRecord(
            [
                .. Names("Runa").Entries,
                EntryWriting.Write(
                    new("a7k3", 3),
                    Happened.At(Some.At("04:50")),
                    Some.At("04:50"),
                    "Ane",
                    new Payload.SignsTaken { Mental = Mental.Unresponsive }
                ),
            ],
            []
        );
        var text = Tool.Text(CardPdf.Write(Sheet(record, Some.At("05:00")), paper, Some.At("05:00")));
        Assert.Contains("NOTNOW", text, StringComparison.Ordinal);
        Assert.Contains(Tool.Squeezed("Nothing by mouth: not fully alert"), text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_fingerprint_is_that_of_the_sorted_lines()
    {
        // As anyone can redo it: LC_ALL=C sort -u record.jsonl | sha256sum | cut -c1-20
        var record = Names("Runa");
        var lines = record.Entries.Select(e => e.Json.ToString() + "\n").Order(StringComparer.Ordinal);
        var digits = Convert.ToHexStringLower(
            System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(string.Concat(lines)))
        )[..20];
        Assert.Contains(
            "Recordfingerprint" + digits,
            Tool.Text(CardPdf.Write(Sheet(record, Some.At("05:00")), Paper.A5, Some.At("05:00"))),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_same_card_is_the_same_file() =>
        Gens.StrangeRecord.Sample(
            w =>
                Assert.Equal(
                    CardPdf.Write(Sheet(w.Record, w.Now), Paper.A5, w.Now),
                    CardPdf.Write(Sheet(new(w.Entries.Reverse(), w.Damaged), w.Now), Paper.A5, w.Now)
                ),
            iter: Gens.Cases(10),
            threads: 1
        );

    [Fact]
    public void A_second_reader_finds_no_fault_and_the_fonts_in_the_file()
    {
        foreach (var paper in Enum.GetValues<Paper>())
            Gens.StrangeRecord.Sample(
                w =>
                {
                    var pdf = CardPdf.Write(Sheet(w.Record, w.Now), paper, w.Now);
                    var (exit, said) = Tool.Run("qpdf", pdf, "--check", "{}");
                    Assert.True(exit == 0, said);
                    var fonts = Tool.Run("pdffonts", pdf, "{}").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToArray();
                    Assert.NotEmpty(fonts);
                    Assert.All(fonts, f => Assert.Matches(@"yes +yes +yes", f)); // embedded, a subset, with a Unicode map
                },
                iter: Gens.Cases(5),
                threads: 1
            );
    }

    [Fact]
    public void In_another_language_it_says_so_and_its_frame_is_in_it()
    {
        var words = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "PaperTexts.de.json"));
        Farhold.Text.Translation.Add("xp", System.Text.Encoding.UTF8.GetBytes($"{{\"PaperTexts\":{words}}}"));
        var before = System.Globalization.CultureInfo.CurrentUICulture;
        try
        {
            System.Globalization.CultureInfo.CurrentUICulture = new("xp");
            var pdf = CardPdf.Write(Sheet(Names("Runa"), Some.At("05:00")), Paper.A4, Some.At("05:00"));
            Assert.Contains("/Lang(de)", System.Text.Encoding.Latin1.GetString(pdf), StringComparison.Ordinal);
            var text = Tool.Text(pdf);
            Assert.Contains("Seite1von", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Page", text, StringComparison.Ordinal);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void It_says_its_language_and_title_and_is_tagged()
    {
        var pdf = CardPdf.Write(Sheet(Names("Ане Стефанова"), Some.At("05:00")), Paper.A4, Some.At("05:00"));
        var about = Tool.Run("pdfinfo", pdf, "{}").Output;
        Assert.Matches(@"Title: +Ане Стефанова", about);
        Assert.Matches(@"Tagged: +yes", about);
        Assert.Contains("/Lang(en)", System.Text.Encoding.Latin1.GetString(pdf), StringComparison.Ordinal);
        var tree = Tool.Run("pdfinfo", pdf, "-struct-text", "{}").Output;
        Assert.Contains("H1", tree, StringComparison.Ordinal);
        Assert.Contains("Figure", tree, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Åse Ødegård-Şentürk")]
    [InlineData("Жанна Їжакевич")]
    [InlineData("Ελένη Παπαδοπούλου")]
    public void Names_in_latin_cyrillic_and_greek_are_readable(string name) =>
        Assert.Contains(
            Tool.Squeezed(name),
            Tool.Text(CardPdf.Write(Sheet(Names(name), Some.At("05:00")), Paper.A5, Some.At("05:00"))),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_letter_that_the_font_lacks_is_written_as_its_number() =>
        Assert.Contains(
            "[U+96EA]",
            Tool.Text(CardPdf.Write(Sheet(Names("雪"), Some.At("05:00")), Paper.A5, Some.At("05:00"))),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_long_record_takes_as_many_pages_as_it_needs_and_the_card_comes_first()
    {
        var many = Enumerable
            .Range(1, 400)
            .Select(i =>
                EntryWriting.Write(
                    new("a7k3", i),
                    Happened.At(Some.At("02:00") + Duration.FromMinutes(i)),
                    Some.At("02:00") + Duration.FromMinutes(i),
                    "Ane",
                    new Payload.NoteWritten($"note number {i} of a long watch, and some more words about it")
                )
            );
        var pdf = CardPdf.Write(Sheet(new(many, []), Some.At("12:00")), Paper.A5, Some.At("12:00"));
        var pages = int.Parse(
            System.Text.RegularExpressions.Regex.Match(Tool.Run("pdfinfo", pdf, "{}").Output, @"Pages: +(\d+)").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture
        );
        Assert.InRange(pages, 8, 30);
        Assert.Contains($"Page{pages}of{pages}.", Tool.Text(pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_watch_keeps_its_totals_on_the_first_page()
    {
        var many = Enumerable
            .Range(1, 300)
            .Select(i =>
                EntryWriting.Write(
                    new("a7k3", i),
                    Happened.At(Some.At("02:00") + Duration.FromMinutes(i)),
                    Some.At("02:00") + Duration.FromMinutes(i),
                    "Ane",
                    i % 2 == 0 ? new Payload.FluidGiven(Fluid.OralWater, 50, "mouth") : new Payload.WoundPacked("w1", PackingMaterial.Cloth)
                )
            );
        var pdf = CardPdf.Write(Sheet(new(many, []), Some.At("12:00")), Paper.A4, Some.At("12:00"));
        var first = Tool.Squeezed(Tool.Run("pdftotext", pdf, "-raw", "-l", "1", "{}", "-").Output);
        Assert.Contains("oralwater7500mL(150times)", first, StringComparison.Ordinal);
        Assert.Contains("142more(fluids):seethelog", first, StringComparison.Ordinal);
        Assert.Contains("Log", first, StringComparison.Ordinal);
    }

    [Fact]
    public void Texts_longer_than_a_page_stay_on_the_paper()
    {
        var name = string.Join(' ', Enumerable.Range(1, 900).Select(i => $"word{i}"));
        var pdf = CardPdf.Write(
            Sheet(
                new(
                    Names(name)
                        .Entries.Append(
                            EntryWriting.Write(
                                new("a7k3", 3),
                                Happened.At(Some.At("02:02")),
                                Some.At("02:02"),
                                "Ane",
                                new Payload.NoteWritten(name + new string('x', 3_000))
                            )
                        ),
                    []
                ),
                Some.At("05:00")
            ),
            Paper.A5,
            Some.At("05:00")
        );
        var box = Tool.Run("pdftotext", pdf, "-bbox", "{}", "-").Output;
        double[] Ends(string side) =>
            [
                .. System
                    .Text.RegularExpressions.Regex.Matches(box, $"<word [^>]*{side}=\"([0-9.]+)\"")
                    .Select(m => double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)),
            ];
        var ends = Ends("yMax");
        Assert.True(Ends("xMax").Max() < 419.53, $"{Ends("xMax").Max()} points across a page of 419.53");
        Assert.True(ends.Length > 1_800, $"{ends.Length} words");
        Assert.True(ends.Max() < 595.28, $"{ends.Max()} points down a page of 595.28");
    }

    private static CareRecord Names(string name) =>
        new(
            [
                EntryWriting.Write(
                    new("a7k3", 1),
                    Happened.At(Some.At("02:00")),
                    Some.At("02:00"),
                    "Ane",
                    new Payload.CasualtyOpened(name)
                ),
                EntryWriting.Write(
                    new("a7k3", 2),
                    Happened.At(Some.At("02:01")),
                    Some.At("02:01"),
                    "Ane",
                    new Payload.TourniquetTightened("t1", Limb.LeftLeg)
                ),
            ],
            []
        );

    private static CardSheet Sheet(CareRecord record, Instant at) => CardSheet.Of(record, ShippedRules.Book, at, Oslo);
}
