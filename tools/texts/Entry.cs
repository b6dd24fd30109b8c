using Microsoft.CodeAnalysis.Text;

namespace Farhold.TextGenerator;

/// <summary>One line of a file of texts, and where its text stands.</summary>
internal sealed class Entry(string key, string text, TextSpan at)
{
    public string Key { get; } = key;

    public string Text { get; } = text;

    public TextSpan At { get; } = at;
}
