namespace Farhold.App.Parts;

public sealed record Choice<T>(T Value, string Text);
