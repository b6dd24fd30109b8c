namespace Farhold.Exchange.Spreadsheet;

/// <summary>A text as a cell that no spreadsheet takes for a formula.</summary>
/// <remarks>
/// Source: OWASP ASVS 5.0.0 (2025), 1.2.10, and OWASP, CSV Injection (from memory): a cell that begins with = + - @, a tab, a
/// null or a line end is put behind an apostrophe; every quote is doubled and the cell quoted. Full-width forms of those signs
/// are treated alike. Spaces are looked past, since spreadsheets trim.
/// </remarks>
internal static class Cell
{
    private const string Dangerous = "=+-@\t\r\n\0＝＋－＠|%";

    public static string Of(string text)
    {
        var begin = text.AsSpan().TrimStart(' ');
        var safe = begin.Length > 0 && Dangerous.Contains(begin[0], StringComparison.Ordinal) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(",\"\r\n'") >= 0 || safe.Length != safe.AsSpan().Trim().Length
            ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : safe;
    }
}
