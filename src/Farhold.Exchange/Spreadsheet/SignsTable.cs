using System.Globalization;
using System.Text;
using Farhold.Exchange.HandOver;

namespace Farhold.Exchange.Spreadsheet;

/// <summary>
/// Every look at the signs and over the casualty as a table for a spreadsheet: CSV by RFC 4180, one look a row, in order of time.
/// </summary>
/// <remarks>Times are instants in UTC; where a time is only known as a range, first and last possible. An empty cell: not looked at.
/// Where the record is in doubt every row says so, and one stands alone where nobody looked: rows are sorted and copied apart.</remarks>
public static class SignsTable
{
    public const string MediaType = "text/csv";

    public static string Write(CareFacts facts)
    {
        var table = new StringBuilder();
        var doubts = string.Join("; ", facts.Doubts);
        string[] heads =
        [
            "id",
            "happenedEarliest",
            "happenedLatest",
            "by",
            .. SignKind.All.Select(Head),
            "pulseBeyond",
            .. RestFact.Kinds.Select(k => k.Field),
            "corrected",
            "disputed",
            "doubts",
        ];
        Row(table, heads);
        if (facts.Looks.IsEmpty && facts.LookedOver.IsEmpty && doubts.Length > 0)
            Row(table, [.. Enumerable.Repeat("", heads.Length - 1), doubts]);
        foreach (
            var look in facts.Looks.Concat(facts.LookedOver).OrderBy(s => s.When.Latest).ThenBy(s => s.When.Earliest).ThenBy(s => s.Id)
        )
        {
            var signs = look.What as Payload.SignsTaken ?? new();
            var over = look.What as Payload.CasualtyLookedOver ?? new();
            Row(
                table,
                [
                    look.Id.ToString(),
                    WrittenInstant.Write(look.When.Earliest),
                    WrittenInstant.Write(look.When.Latest),
                    look.By,
                    .. SignKind.All.Select(k => Value(k, signs)),
                    string.Join(' ', signs.DistalPulse?.Select(p => $"{Wire.Word(p.Key)}:{Wire.Word(p.Value)}") ?? []),
                    .. RestFact.Kinds.Select(k =>
                        k.Of(over) switch
                        {
                            true => "yes",
                            false => "no",
                            null => "",
                        }
                    ),
                    look.Corrected ? "yes" : "",
                    look.Disputed ? "yes" : "",
                    doubts,
                ]
            );
        }

        return table.ToString();
    }

    private static string Head(SignKind kind) =>
        kind.Unit.Length == 0 || kind.Field.EndsWith('C') || kind.Field.EndsWith('S') ? kind.Field : $"{kind.Field} ({kind.Unit})";

    /// <summary>A number alone where there is one, so that it can be reckoned with; else the word.</summary>
    private static string Value(SignKind kind, Payload.SignsTaken signs) =>
        kind.Number(signs) is { } number ? number.ToString("R", CultureInfo.InvariantCulture) : kind.Text(signs) ?? "";

    private static void Row(StringBuilder table, string[] cells) => table.Append(string.Join(',', cells.Select(Cell.Of))).Append("\r\n");
}
