using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.Files;

/// <summary>A JSON value that knows where it stood, for files that people write by hand.</summary>
/// <param name="Offset">Bytes from the start of the file.</param>
/// <param name="Text">The value of a string; otherwise the JSON as written.</param>
public sealed record Located(
    int Offset,
    JsonValueKind Kind,
    string Text,
    ImmutableArray<LocatedMember> Members,
    ImmutableArray<Located> Items
)
{
    public Located? this[string name] => Members.FirstOrDefault(m => m.Name == name)?.Value;
}

public sealed record LocatedMember(int Offset, string Name, Located Value);
