using System.Globalization;
using System.Text;

namespace Farhold.Tests.WayOut;

/// <summary>One row of a table of checks; theories show its place and source.</summary>
public sealed class CheckRow(IReadOnlyDictionary<string, string> cells)
{
    public string this[string column] => cells[column];

    public double Number(string column) => cells[column].Length == 0 ? 0 : Number(cells[column], column);

    /// <summary>"key=value;key=value" in a cell.</summary>
    public double? Parameter(string column, string key) =>
        cells[column]
            .Split(';')
            .Select(pair => pair.Split('='))
            .Where(pair => pair[0].Trim() == key)
            .Select(pair => (double?)Number(pair[1], key))
            .FirstOrDefault();

    public static IEnumerable<CheckRow> Of(string table)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "tables", table));
        var header = Split(lines[0]);
        return lines
            .Skip(1)
            .Where(line => line.Length > 0)
            .Select(line => new CheckRow(header.Zip(Split(line)).ToDictionary(pair => pair.First, pair => pair.Second)));
    }

    /// <summary>Data for a theory: the row's place among those chosen, and what to print beside a failure.</summary>
    public static TheoryData<int, string> Theory(string table, Func<CheckRow, bool> chosen, params string[] printed)
    {
        var data = new TheoryData<int, string>();
        foreach (var (row, place) in Of(table).Where(chosen).Select((row, place) => (row, place)))
            data.Add(place, string.Join(" | ", printed.Append("source").Select(column => row[column])));
        return data;
    }

    private static double Number(string text, string what) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new FormatException($"{what}: '{text}' is no number");

    private static List<string> Split(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"')
                cell.Append(line[i++]);
            else if (line[i] == '"')
                quoted = !quoted;
            else if (line[i] == ',' && !quoted)
                (_, cell) = (Add(cell), new StringBuilder());
            else
                cell.Append(line[i]);
        }

        Add(cell);
        return cells;

        bool Add(StringBuilder done)
        {
            cells.Add(done.ToString());
            return true;
        }
    }
}
