namespace Farhold.TextGenerator;

/// <summary>An English text that can be used.</summary>
internal sealed class Text(Entry entry, Wording wording)
{
    public Entry Entry { get; } = entry;

    public Wording Wording { get; } = wording;
}
