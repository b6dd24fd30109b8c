using PdfSharp.Drawing;

namespace Farhold.Documents.Card;

/// <summary>Breaks text into lines of a width; a word that is wider by itself is cut.</summary>
internal sealed class LineWrap(XGraphics measure)
{
    public List<string> Lines(string text, XFont font, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in CardFonts.Printable(text).Split(' ').SelectMany(w => Cut(w, font, width)))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Wide(longer, font) > width)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        lines.Add(line);
        return lines;
    }

    private double Wide(string text, XFont font) => measure.MeasureString(text, font).Width;

    private IEnumerable<string> Cut(string word, XFont font, double width)
    {
        while (Wide(word, font) > width && word.Length > 1)
        {
            var fits = Math.Max(1, (int)(word.Length * width / Wide(word, font)));
            while (fits > 1 && Wide(word[..fits], font) > width)
                fits--;
            if (char.IsHighSurrogate(word[fits - 1]) && fits < word.Length)
                fits = fits > 1 ? fits - 1 : 2;
            yield return word[..fits];
            word = word[fits..];
        }

        yield return word;
    }
}
