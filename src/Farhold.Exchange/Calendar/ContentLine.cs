using System.Text;

namespace Farhold.Exchange.Calendar;

/// <summary>Content lines of iCalendar.</summary>
/// <remarks>Source: RFC 5545 (2009), sections 3.1 (lines, folding) and 3.3.11 (text).</remarks>
internal static class ContentLine
{
    /// <summary>Octets on one line, its end not counted.</summary>
    private const int Longest = 75;

    /// <summary>Writes <c>name:value</c>, folded, with its line end.</summary>
    public static void Write(StringBuilder file, string name, string value)
    {
        var octets = 0;
        foreach (var rune in $"{name}:{value}".EnumerateRunes())
        {
            // A character is never cut in two; the space that begins a continued line counts on it.
            if (octets + rune.Utf8SequenceLength > Longest)
            {
                file.Append("\r\n ");
                octets = 1;
            }

            file.Append(rune.ToString());
            octets += rune.Utf8SequenceLength;
        }

        file.Append("\r\n");
    }

    /// <summary>A value of type TEXT; control characters, which it can't hold, are left out.</summary>
    public static string Text(string text)
    {
        var escaped = new StringBuilder(text.Length + 8);
        foreach (var rune in text.ReplaceLineEndings("\n").EnumerateRunes())
        {
            if (rune.Value is '\\' or ';' or ',')
                escaped.Append('\\');
            if (rune.Value == '\n')
                escaped.Append("\\n");
            else if (!Rune.IsControl(rune) || rune.Value == '\t')
                escaped.Append(rune.ToString());
        }

        return escaped.ToString();
    }
}
