using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace Farhold.Text;

/// <summary>What one generated class of texts says, in the language of the culture that the caller is in.</summary>
/// <param name="of">Name of the class.</param>
/// <param name="english">A line for each text.</param>
/// <param name="keys">A line for each text: its key, how many things it is given, and a bar where it has two forms.</param>
public sealed class TextLines(string of, Func<string> english, Func<string> keys)
{
    private readonly Lazy<string[]> lines = new(() => english().Split('\n'));
    private Spoken? last;

    /// <param name="line">Number of the text.</param>
    public string Said(int line) => (Translation.None ? lines.Value : Current())[line];

    /// <param name="given">What is filled in, written already.</param>
    public string Said(int line, params ReadOnlySpan<string?> given) => Filled(Said(line), given);

    /// <param name="one">Whether the first of two forms stands.</param>
    public string Said(int line, bool one, params ReadOnlySpan<string?> given) => Filled(Said(line).Split('|')[one ? 0 : 1], given);

    public static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Filled(ReadOnlySpan<char> text, ReadOnlySpan<string?> given)
    {
        var filled = new DefaultInterpolatedStringHandler(text.Length, given.Length, CultureInfo.InvariantCulture);
        for (int mark; (mark = text.IndexOf('{')) >= 0; text = text[(mark + 3)..])
        {
            filled.AppendFormatted(text[..mark]);
            filled.AppendFormatted(given[text[mark + 1] - '0']);
        }

        filled.AppendFormatted(text);
        return filled.ToStringAndClear();
    }

    /// <summary>Whether a text can stand for an English one: it asks for the same things by their numbers, in as many forms.</summary>
    internal static bool Fits(string text, int given, bool forms)
    {
        var all = (1 << given) - 1;
        var parts = text.Split('|');
        return parts.Length == (forms ? 2 : 1)
            && parts.All(p => !string.IsNullOrWhiteSpace(p) && (Asked(p) & ~all) == 0)
            && Asked(parts[^1]) == all;
    }

    /// <summary>A bit for each placeholder; all bits where a brace stands for none.</summary>
    private static int Asked(string form)
    {
        var asked = 0;
        for (var i = 0; i < form.Length; i++)
            if (form[i] == '{' && i + 2 < form.Length && char.IsAsciiDigit(form[i + 1]) && form[i + 2] == '}')
            {
                asked |= 1 << (form[i + 1] - '0');
                i += 2;
            }
            else if (form[i] is '{' or '}')
                return -1;
        return asked;
    }

    private string[] Current()
    {
#pragma warning disable RS0030 // The language is the one thing that is not an argument (docs/decisions/words-of-the-core.md).
        var culture = CultureInfo.CurrentUICulture.Name;
#pragma warning restore RS0030
        var stage = Translation.Stage;
        if (last is { } spoken && spoken.Culture == culture && spoken.Stage == stage)
            return spoken.Lines;
        var texts = Translation.Texts(culture, of);
        var said = new Spoken(culture, stage, [.. keys().Split('\n').Select((key, n) => Line(key, texts) ?? lines.Value[n])]);
        last = said;
        return said.Lines;
    }

    private static string? Line(string key, ImmutableDictionary<string, string>? texts)
    {
        var space = key.IndexOf(' ', StringComparison.Ordinal);
        return texts?.GetValueOrDefault(key[..space]) is { } text && Fits(text, key[space + 1] - '0', key[^1] == '|') ? text : null;
    }

    private sealed record Spoken(string Culture, object Stage, string[] Lines);
}
