using System.Text;

namespace Farhold.Files;

/// <summary>One JSON value as UTF-8, kept as it was written.</summary>
/// <remarks><c>default</c> is empty and no JSON. Equality is by bytes.</remarks>
public readonly struct JsonText(ReadOnlyMemory<byte> utf8) : IEquatable<JsonText>
{
    public ReadOnlyMemory<byte> Utf8 { get; } = utf8;

    public static JsonText Of(string json) => new(Encoding.UTF8.GetBytes(json));

    public bool Equals(JsonText other) => Utf8.Span.SequenceEqual(other.Utf8.Span);

    public override bool Equals(object? obj) => obj is JsonText other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.AddBytes(Utf8.Span);
        return hash.ToHashCode();
    }

    public override string ToString() => Encoding.UTF8.GetString(Utf8.Span);

    public static bool operator ==(JsonText left, JsonText right) => left.Equals(right);

    public static bool operator !=(JsonText left, JsonText right) => !left.Equals(right);
}
