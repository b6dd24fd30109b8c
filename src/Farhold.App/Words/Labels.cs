namespace Farhold.App.Words;

/// <summary>Lines as they stand on buttons.</summary>
public static class Labels
{
    /// <summary><c>partial-amputation</c> becomes <c>Partial amputation</c>.</summary>
    public static string Plain(string wire) => Sentence(Farhold.Text.Plain.Line(wire.Replace('-', ' ')));

    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
