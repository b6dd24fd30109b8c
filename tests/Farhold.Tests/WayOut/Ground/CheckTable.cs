using System.Globalization;
using System.Text;

namespace Farhold.Tests.WayOut.Ground;

/// <summary>A table of published or independently computed values; every row names its source.</summary>
public sealed class CheckTable
{
    private readonly Dictionary<string, int> columns;
    private readonly List<string[]> rows;

    private CheckTable(string name)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "tables", name));
        columns = Fields(lines[0]).Select((field, i) => (field, i)).ToDictionary(p => p.field, p => p.i);
        rows = [.. lines.Skip(1).Select(Fields)];
    }

    public static CheckTable Of(string name) => new(name);

    public string Text(int row, string column) => rows[row][columns[column]];

    public double Number(int row, string column) => double.Parse(Text(row, column), CultureInfo.InvariantCulture);

    /// <summary>Row number, the text of one column and the source, for the name of a test case.</summary>
    public TheoryData<int, string, string> Rows(Func<CheckTable, int, string> label, Func<CheckTable, int, bool>? where = null)
    {
        var data = new TheoryData<int, string, string>();
        for (var row = 0; row < rows.Count; row++)
            if (where is null || where(this, row))
                data.Add(row, label(this, row), Text(row, "source"));
        return data;
    }

    private static string[] Fields(string line)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (quoted && line[i] == '"' && i + 1 < line.Length && line[i + 1] == '"')
                field.Append(line[i++]);
            else if (line[i] == '"')
                quoted = !quoted;
            else if (line[i] == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
                field.Append(line[i]);
        }

        fields.Add(field.ToString());
        return [.. fields];
    }
}
