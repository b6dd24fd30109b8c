using System.Text;

namespace Farhold.Tests;

/// <summary>Comma-separated tables with quoted fields (RFC 4180), by the names of their first row.</summary>
internal static class Csv
{
    public static IEnumerable<Dictionary<string, string>> Rows(string path)
    {
        var lines = File.ReadLines(path).Where(l => l.Length > 0 && l[0] != '#').Select(Fields).ToArray();
        return lines.Skip(1).Select(values => lines[0].Zip(values).ToDictionary(f => f.First, f => f.Second));
    }

    private static List<string> Fields(string line)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
                field.Append(c);
        }

        fields.Add(field.ToString());
        return fields;
    }
}
