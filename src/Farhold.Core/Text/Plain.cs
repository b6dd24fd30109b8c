using System.Globalization;
using System.Text;

namespace Farhold.Text;

/// <summary>Text from a record as it may stand in a line, a terminal or a picture.</summary>
public static class Plain
{
    /// <summary>
    /// One line: breaks become spaces; control characters and marks that turn the direction of writing are left out, so
    /// that no entry can repaint a terminal or pass for another.
    /// </summary>
    public static string Line(string text)
    {
        if (text.All(c => c is >= ' ' and <= '~'))
            return text;
        var plain = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value is '\n' or '\r' or '\t' or 0x2028 or 0x2029)
                plain.Append(' ');
            else if (Rune.GetUnicodeCategory(rune) != UnicodeCategory.Control && !TurnsDirection(rune.Value))
                plain.Append(rune);
        }

        return plain.ToString();
    }

    private static bool TurnsDirection(int c) => c is 0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069);
}
