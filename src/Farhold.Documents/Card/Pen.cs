using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Farhold.Documents.Card;

/// <summary>Draws on one page and tags what it draws.</summary>
internal sealed class Pen(XGraphics page, StructureBuilder tags)
{
    public void Text(string text, XFont font, double x, double baseline) => page.DrawString(text, font, XBrushes.Black, x, baseline);

    /// <summary>Lines and other ornament: not part of what is read aloud.</summary>
    public void Ornament(Action<XGraphics> draw)
    {
        tags.BeginArtifact();
        draw(page);
        tags.End();
    }

    public void Tagged(PdfBlockLevelElementTag tag, Action draw)
    {
        tags.BeginElement(tag);
        draw();
        tags.End();
    }

    public void Figure(string words, XRect where, Action<XGraphics> draw)
    {
        tags.BeginElement(PdfIllustrationElementTag.Figure, words, where);
        draw(page);
        tags.End();
    }
}
