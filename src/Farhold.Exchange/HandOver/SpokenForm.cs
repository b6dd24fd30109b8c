using System.Collections.Immutable;
using System.Text;

namespace Farhold.Exchange.HandOver;

/// <summary>One part of a form, under its letter or number and its name.</summary>
public sealed record FormPart(string Key, string Name, ImmutableArray<string> Lines);

/// <summary>A form to be read aloud or handed on as text.</summary>
/// <param name="Heads">What stands above it: practice, instant, caution.</param>
public sealed record SpokenForm(string Title, ImmutableArray<string> Heads, ImmutableArray<FormPart> Parts)
{
    /// <summary>Plain text, one line a fact.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        text.Append(Title).Append('\n');
        foreach (var head in Heads)
            text.Append(head).Append('\n');
        foreach (var part in Parts)
        {
            text.Append('\n')
                .Append(part.Key.Length > 0 && part.Name.Length > 0 ? $"{part.Key}  {part.Name}" : part.Key + part.Name)
                .Append('\n');
            foreach (var line in part.Lines)
                text.Append("   ").Append(line).Append('\n');
        }

        return text.ToString();
    }
}

/// <summary>The forms there are; wire words <c>mist</c>, <c>atmist</c>, <c>sbar</c>, <c>nine-line</c>, <c>radio</c>.</summary>
public enum FormKind
{
    Mist,
    Atmist,
    Sbar,
    NineLine,
    Radio,
}
