using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis.Text;

namespace Farhold.TextGenerator;

/// <summary>Reads one JSON object whose values are strings. The compiler brings no JSON reader that knows where a text stood.</summary>
internal sealed class JsonTexts
{
    private readonly string json;
    private int at;

    private JsonTexts(string json) => this.json = json;

    /// <exception cref="UnreadableException">It is not such an object.</exception>
    public static IReadOnlyList<Entry> Read(string json) => new JsonTexts(json).Entries();

    private List<Entry> Entries()
    {
        var entries = new List<Entry>();
        Take('{');
        if (Next() == '}')
            at++;
        else
            do
            {
                Next();
                var key = String();
                Take(':');
                Next();
                var start = at;
                var text = String();
                entries.Add(new Entry(key, text, TextSpan.FromBounds(start, at)));
            } while (More());

        if (Next() != '\0')
            throw Unreadable("the end of the file");
        return entries;
    }

    private bool More()
    {
        if (Next() is not (',' or '}'))
            throw Unreadable("a comma or a closing brace");
        return json[at++] == ',';
    }

    private string String()
    {
        Take('"');
        var text = new StringBuilder();
        while (at < json.Length && json[at] is not ('"' or < ' '))
            text.Append(json[at] == '\\' ? Escaped() : json[at++]);
        if (at == json.Length || json[at] != '"')
            throw Unreadable("a closing quote");
        at++;
        return text.ToString();
    }

    private char Escaped()
    {
        at++;
        if (at >= json.Length)
            throw Unreadable("an escaped character");
        var c = json[at++];
        switch (c)
        {
            case '"' or '\\' or '/':
                return c;
            case 'u' when Code(out var code):
                at += 4;
                return code;
            default:
                at -= 2;
                throw Unreadable("\\\", \\\\, \\/ or \\u and four digits, since a text is one line");
        }
    }

    private bool Code(out char code)
    {
        code = default;
        if (
            at + 4 > json.Length
            || !ushort.TryParse(json.Substring(at, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value)
            || value < ' '
        )
            return false;
        code = (char)value;
        return true;
    }

    private void Take(char wanted)
    {
        if (Next() != wanted)
            throw Unreadable(wanted.ToString());
        at++;
    }

    /// <summary>The next character that is no white space, still to be taken; <c>\0</c> at the end.</summary>
    private char Next()
    {
        while (at < json.Length && json[at] is ' ' or '\t' or '\r' or '\n')
            at++;
        return at < json.Length ? json[at] : '\0';
    }

    private UnreadableException Unreadable(string wanted) =>
        new($"expected {wanted}", new TextSpan(Math.Min(at, json.Length), at < json.Length ? 1 : 0));
}

/// <summary>A file that is not an object of texts, and the place where that showed.</summary>
internal sealed class UnreadableException(string why, TextSpan at) : Exception(why)
{
    public TextSpan At { get; } = at;
}
