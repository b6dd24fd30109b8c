using Farhold.Exchange.Card;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Farhold.Documents.Card;

/// <summary>Lays out the parts of a card at a width.</summary>
internal sealed class Blocks(PaperLook look, double width, XGraphics measure)
{
    /// <summary>A page holds this many of the largest lines; a longer text goes on in further blocks.</summary>
    private const int MostLines = 20;

    private readonly XFont plain = CardFonts.Of(look.Size, bold: false);
    private readonly XFont bold = CardFonts.Of(look.Size, bold: true);
    private readonly XFont head = CardFonts.Of(look.Head, bold: true);
    private readonly XFont large = CardFonts.Of(look.Large, bold: true);
    private readonly XFont title = CardFonts.Of(look.Title, bold: true);
    private readonly LineWrap wrapping = new(measure);

    public IEnumerable<Block> Head(CardSheet sheet) =>
        [
            .. sheet.Practice ? Lines(CardSheet.PracticeNotice, title, look.Title, PdfBlockLevelElementTag.Paragraph) : [],
            .. Lines(sheet.Title, title, look.Title, PdfBlockLevelElementTag.Heading1),
            .. Lines(PaperTexts.AsOf(sheet.AsOf), bold, look.Size, PdfBlockLevelElementTag.Paragraph),
            .. Lines(sheet.Print, bold, look.Size, PdfBlockLevelElementTag.Paragraph),
            .. Lines(CardSheet.Caution, plain, look.Size, PdfBlockLevelElementTag.Paragraph),
        ];

    public IEnumerable<Block> Of(IEnumerable<CardPart> parts) => parts.SelectMany(Of);

    private IEnumerable<Block> Of(CardPart part) =>
        part switch
        {
            CardPart.Heading p => [Heading(p.Text)],
            CardPart.Large p => [Large(p)],
            CardPart.Said p => Said(p),
            CardPart.Picture p => [Picture(p)],
            CardPart.Table p => Table(p),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private IEnumerable<Block> Lines(string text, XFont font, double size, PdfBlockLevelElementTag tag) =>
        wrapping
            .Lines(text, font, width)
            .Chunk(MostLines)
            .Select(lines => new Block(
                (lines.Length * size * 1.22) + 2,
                false,
                (pen, x, y) => pen.Tagged(tag, () => Put(pen, [.. lines], font, x, y, size * 1.22, size))
            ));

    private Block Heading(string text)
    {
        var lines = wrapping.Lines(text, head, width);
        var line = look.Head * 1.2;
        return new(
            (lines.Count * line) + (look.Size * 0.75),
            true,
            (pen, x, y) =>
            {
                var top = y + (look.Size * 0.4);
                pen.Ornament(g => g.DrawLine(new XPen(XColors.Black, 0.8), x, top, x + width, top));
                pen.Tagged(PdfBlockLevelElementTag.Heading2, () => Put(pen, lines, head, x, top + 1, line, look.Head));
            }
        );
    }

    private Block Large(CardPart.Large p)
    {
        var lines = wrapping.Lines(p.Text, large, width - (look.Label * 1.25));
        var line = look.Large * 1.15;
        return new(
            lines.Count * line,
            false,
            (pen, x, y) =>
                pen.Tagged(
                    PdfBlockLevelElementTag.Paragraph,
                    () =>
                    {
                        pen.Text(CardFonts.Printable(p.Label), bold, x, y + look.Large);
                        Put(pen, lines, large, x + (look.Label * 1.25), y, line, look.Large);
                    }
                )
        );
    }

    /// <summary>A label beside its text; text longer than a page goes on in further blocks.</summary>
    private IEnumerable<Block> Said(CardPart.Said p)
    {
        var indent = p.Label.Length == 0 ? 0 : look.Label;
        var font = p.Strong ? bold : plain;
        var labels = p.Label.Length == 0 ? [] : wrapping.Lines(p.Label, plain, look.Label - 4);
        var lines = wrapping.Lines(p.Text, font, width - indent);
        var most = (int)((look.Height - (4 * look.Margin)) / look.Line);
        for (var from = 0; from < Math.Max(lines.Count, labels.Count); from += most)
        {
            var (beside, shown) = (labels.Skip(from).Take(most).ToList(), lines.Skip(from).Take(most).ToList());
            yield return new(
                (Math.Max(beside.Count, shown.Count) * look.Line) + 1,
                false,
                (pen, x, y) =>
                    pen.Tagged(
                        PdfBlockLevelElementTag.Paragraph,
                        () =>
                        {
                            Put(pen, beside, plain, x, y, look.Line, look.Size);
                            Put(pen, shown, font, x + indent, y, look.Line, look.Size);
                        }
                    )
            );
        }
    }

    private Block Picture(CardPart.Picture p)
    {
        var picture = LimbLineVectors.For(p.Line, width, look.PictureAt);
        return new(
            picture.Height + 3,
            false,
            (pen, x, y) =>
                pen.Figure(
                    LimbLine.Describe(p.Line),
                    new(x, look.Height - y - picture.Height, width, picture.Height),
                    g => picture.Draw(g, x, y)
                )
        );
    }

    /// <summary>Rows that stay together where a column can hold them.</summary>
    private IEnumerable<Block> Table(CardPart.Table p)
    {
        // The card's own tables have four columns, of these widths; any other shares the width evenly.
        double[] shares = p.Heads.Length == 4 ? [0.22, 0.18, 0.28, 0.32] : [.. Enumerable.Repeat(1.0 / p.Heads.Length, p.Heads.Length)];
        var lefts = shares.Select((_, i) => width * shares.Take(i).Sum()).ToArray();
        yield return Row(p.Heads.ToArray(), bold, PdfBlockLevelElementTag.TableHeaderCell, true);
        for (var i = 0; i < p.Rows.Length; i++)
            yield return Row([.. p.Rows[i]], plain, PdfBlockLevelElementTag.TableDataCell, i + 1 < p.Rows.Length);

        Block Row(string[] cells, XFont font, PdfBlockLevelElementTag tag, bool withNext)
        {
            var fonts = cells.Select((_, i) => i == 1 ? bold : font).ToArray();
            var lines = cells.Select((c, i) => wrapping.Lines(c, fonts[i], (width * shares[i]) - 4)).ToArray();
            return new(
                (lines.Max(l => l.Count) * look.Line) + 1.5,
                withNext,
                (pen, x, y) =>
                {
                    pen.Ornament(g => g.DrawLine(new XPen(XColors.Gray, 0.3), x, y + 0.5, x + width, y + 0.5));
                    pen.Tagged(
                        PdfBlockLevelElementTag.Table,
                        () =>
                            pen.Tagged(
                                PdfBlockLevelElementTag.TableRow,
                                () =>
                                {
                                    foreach (var (cell, i) in lines.Select((c, i) => (c, i)))
                                        pen.Tagged(tag, () => Put(pen, cell, fonts[i], x + lefts[i], y + 1, look.Line, look.Size));
                                }
                            )
                    );
                }
            );
        }
    }

    private static void Put(Pen pen, List<string> lines, XFont font, double x, double top, double line, double size)
    {
        for (var i = 0; i < lines.Count; i++)
            if (lines[i].Length > 0)
                pen.Text(lines[i], font, x, top + size + (i * line));
    }
}
