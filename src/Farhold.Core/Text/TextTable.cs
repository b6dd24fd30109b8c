using System.Text;

namespace Farhold.Text;

/// <summary>A table in plain text: columns of fixed width, cells folded between words, rows written as they come.</summary>
/// <param name="widths">Characters of each column, at least one.</param>
public sealed class TextTable(TextWriter to, params int[] widths)
{
    private const string Between = "  ";

    /// <summary>One row; a cell of several lines is given with line feeds.</summary>
    public void Row(params string[] cells)
    {
        var folded = cells.Select((cell, i) => cell.Split('\n').SelectMany(line => Fold(line, widths[i])).ToArray()).ToArray();
        var line = new StringBuilder();
        for (var row = 0; row < folded.Max(f => f.Length); row++)
        {
            line.Clear();
            for (var i = 0; i < folded.Length; i++)
                line.Append(i == 0 ? "" : Between).Append((row < folded[i].Length ? folded[i][row] : "").PadRight(widths[i]));
            to.Write(line.ToString().TrimEnd() + "\n");
        }
    }

    /// <summary>A line under the heads of all columns.</summary>
    public void Rule() => Row([.. widths.Select(w => new string('-', w))]);

    /// <summary>Lines of at most <paramref name="width"/> characters, broken at spaces; a word that is longer is broken anywhere.</summary>
    public static IEnumerable<string> Fold(string text, int width)
    {
        var rest = text.AsMemory();
        while (rest.Length > width)
        {
            var space = rest.Span[..(width + 1)].LastIndexOf(' ');
            var end = space > 0 ? space : width;
            yield return rest[..end].ToString();
            rest = rest[(space > 0 ? end + 1 : end)..];
        }

        yield return rest.ToString();
    }
}
