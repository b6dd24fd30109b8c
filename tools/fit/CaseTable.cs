using System.Globalization;
using System.Text.RegularExpressions;

namespace Farhold.Tools.Fit;

/// <summary>One published rescue: a row of a table of cases, its cells by column.</summary>
public sealed partial class CaseRow(IReadOnlyDictionary<string, string> cells)
{
    public string this[string column] => cells[column];

    /// <summary>Null where the report does not say.</summary>
    public double? Number(string column) => cells[column].Length == 0 ? null : double.Parse(cells[column], CultureInfo.InvariantCulture);

    public static IReadOnlyList<CaseRow> Of(string path)
    {
        var lines = File.ReadAllLines(path);
        var header = Split(lines[0]);
        return
        [
            .. lines
                .Skip(1)
                .Where(line => line.Length > 0)
                .Select(line => new CaseRow(header.Zip(Split(line)).ToDictionary(pair => pair.First, pair => pair.Second))),
        ];
    }

    private static string[] Split(string line) =>
        [.. Cell().Matches(line).Select(m => m.Groups["quoted"].Success ? m.Groups["quoted"].Value : m.Groups["plain"].Value)];

    [GeneratedRegex("(?:^|(?<=,))(?:\"(?<quoted>[^\"]*)\"|(?<plain>[^,\"]*))(?=,|$)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Cell();
}
