using System.Collections.Immutable;
using System.Text;

namespace Farhold.Study.Reports;

/// <summary>A table of a report: one content for text, spreadsheet and page.</summary>
public sealed record StudyTable(string Id, string Title, ImmutableArray<string> Heads, ImmutableArray<ImmutableArray<string>> Rows)
{
    private const int Widest = 34;

    public void Write(TextWriter to)
    {
        ArgumentNullException.ThrowIfNull(to);
        foreach (var line in TextTable.Fold(Title, 118))
            to.Write(line + "\n");
        var widths = Heads.Select((head, i) => Math.Min(Widest, Rows.Select(r => r[i].Length).Append(Shortest(head)).Max())).ToArray();
        var table = new TextTable(to, widths);
        table.Row([.. Heads]);
        table.Rule();
        foreach (var row in Rows)
            table.Row([.. row]);
    }

    /// <summary>Comma-separated, RFC 4180, lines ended by a line feed; the first says what it is not.</summary>
    public string Csv()
    {
        var text = new StringBuilder().Append(Quoted("# " + StudyTexts.NotGuidance)).Append('\n');
        foreach (var row in Rows.Prepend(Heads))
            text.AppendJoin(',', row.Select(Quoted)).Append('\n');
        return text.ToString();
    }

    public string Markdown()
    {
        var text = new StringBuilder($"**{Title}**\n\n");
        text.Append("| ").AppendJoin(" | ", Heads).Append(" |\n|").Insert(text.Length, "---|", Heads.Length).Append('\n');
        foreach (var row in Rows)
            text.Append("| ").AppendJoin(" | ", row.Select(c => c.Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
        return text.ToString();
    }

    private static int Shortest(string head) => head.Split(' ').Max(w => w.Length);

    private static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny(",\"\n#") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
