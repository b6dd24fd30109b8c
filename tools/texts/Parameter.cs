namespace Farhold.TextGenerator;

/// <param name="mark">As a placeholder says it: a name, behind <c>#</c> where it is a whole number.</param>
internal sealed class Parameter(string mark) : IEquatable<Parameter>
{
    public string Mark { get; } = mark;

    public bool IsNumber => Mark.StartsWith("#", StringComparison.Ordinal);

    public string Name => Mark.TrimStart('#');

    public bool Equals(Parameter? other) => other?.Mark == Mark;

    public override bool Equals(object? obj) => Equals(obj as Parameter);

    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Mark);
}
