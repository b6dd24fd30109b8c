namespace Farhold.App.Parts;

/// <param name="Text">As it is shown: it may be a name out of a record.</param>
/// <param name="Short">Shown instead where there is little room; the text is then what is read aloud.</param>
public sealed record Choice<T>(T Value, string Text, string? Short = null)
{
    public string Text { get; init; } = Plain.Line(Text);
}
