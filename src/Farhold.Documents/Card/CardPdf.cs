using Farhold.Exchange.Card;
using NodaTime;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Farhold.Documents.Card;

/// <summary>The card on paper: a tagged PDF in black, with its fonts in it.</summary>
public static class CardPdf
{
    private static readonly SemaphoreSlim OneAtATime = new(1); // the library keeps its fonts in common

    /// <param name="at">The instant the sheet is as of; the file's date.</param>
    /// <param name="leaving">Asked at every block: whoever wanted the card may have left.</param>
    /// <exception cref="OperationCanceledException"><paramref name="leaving"/> was cancelled.</exception>
    public static byte[] Write(CardSheet sheet, Paper paper, Instant at, CancellationToken leaving = default)
    {
        OneAtATime.Wait(leaving);
        try
        {
            CardFonts.Use();
            var look = PaperLook.Of(paper);
            using var document = new PdfDocument();
            document.Options.CompressContentStreams = false; // the library's own compression ends its streams early
            document.Options.ColorMode = PdfColorMode.Rgb;
            document.Info.Title = CardFonts.Printable(sheet.Title);
            document.Info.Creator = Product.Named;
            document.Info.CreationDate = document.Info.ModificationDate = at.ToDateTimeUtc();
            document.ViewerPreferences.DisplayDocTitle = true;
            var tags = UAManager.ForDocument(document);
            tags.SetDocumentLanguage(PaperTexts.Language);
            using var measure = XGraphics.CreateMeasureContext(new(look.Width, look.Height), XGraphicsUnit.Point, XPageDirection.Downwards);
            var pages = Pages(sheet, look, measure, leaving);
            for (var i = 0; i < pages.Count; i++)
                Page(document, tags, pages[i], look, Foot(sheet, i + 1, pages.Count, look, measure), leaving);
            using var file = new MemoryStream();
            document.Save(file);
            return PdfSameness.Of(file.ToArray());
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    /// <summary>Head and limbs over the whole width, the rest in columns.</summary>
    internal static List<List<Placed>> Pages(CardSheet sheet, PaperLook look, XGraphics measure, CancellationToken leaving = default)
    {
        var (whole, column) = (new Blocks(look, look.Inner, measure), new Blocks(look, look.Column, measure));
        var flow = new Flow(look);
        flow.Put(Asking(whole.Head(sheet).Concat(whole.Of(sheet.Top))), 1);
        flow.Put(Asking(column.Of(sheet.Front)), look.Columns);
        flow.Put(Asking(column.Of(sheet.Log)), look.Columns);
        return flow.Pages;

        IEnumerable<Block> Asking(IEnumerable<Block> blocks) =>
            blocks.Select(b =>
            {
                leaving.ThrowIfCancellationRequested();
                return b;
            });
    }

    private static void Page(
        PdfDocument document,
        UAManager tags,
        List<Placed> blocks,
        PaperLook look,
        string foot,
        CancellationToken leaving
    )
    {
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(look.Width), XUnit.FromPoint(look.Height));
        using var graphics = XGraphics.FromPdfPage(page);
        var pen = new Pen(graphics, tags.StructureBuilder);
        foreach (var placed in blocks)
        {
            leaving.ThrowIfCancellationRequested();
            placed.Block.Draw(pen, placed.X, placed.Y);
        }

        pen.Ornament(g =>
            g.DrawString(
                foot,
                CardFonts.Of(look.Size, bold: false),
                XBrushes.Black,
                look.Margin,
                look.Height - look.Margin + (look.Size * 0.4)
            )
        );
    }

    /// <summary>Which card a page belongs to, should it come loose; the name is cut to what the line holds.</summary>
    private static string Foot(CardSheet sheet, int number, int of, PaperLook look, XGraphics measure)
    {
        var font = CardFonts.Of(look.Size, bold: false);
        var name = CardFonts.Printable(sheet.Title);
        for (var length = Math.Min(name.Length, 80); ; length--)
        {
            var shown = length == name.Length ? name : string.Concat(name.AsSpan(0, length).TrimEnd(), "…");
            var zone = sheet.AsOf.Split(';')[^1].Trim();
            var foot = sheet.Practice
                ? PaperTexts.FootPractice(number, of, shown, zone, sheet.Fingerprint)
                : PaperTexts.Foot(number, of, shown, zone, sheet.Fingerprint);
            if (length <= 1 || measure.MeasureString(foot, font).Width <= look.Inner)
                return foot;
        }
    }
}
