namespace Farhold.App.Parts;

/// <param name="Text">As it is shown: it may be a name out of a record.</param>
public sealed record Choice<T>(T Value, string Text)
{
    public string Text { get; init; } = Plain.Line(Text);
}
