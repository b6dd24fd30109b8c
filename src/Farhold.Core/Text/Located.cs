using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace Farhold;

/// <summary>A JSON value that knows where it stood, for files that people write by hand.</summary>
/// <param name="Offset">Bytes from the start of the file.</param>
/// <param name="Text">The value of a string; otherwise the JSON as written.</param>
public sealed record Located(
    int Offset,
    JsonValueKind Kind,
    string Text,
    ImmutableArray<LocatedMember> Members,
    ImmutableArray<Located> Items)
{
    public Located? this[string name] => Members.FirstOrDefault(m => m.Name == name)?.Value;
}

public sealed record LocatedMember(int Offset, string Name, Located Value);

/// <summary>Parses a hand-written JSON file, keeping places. Comments and trailing commas are refused, as in the standard.</summary>
public sealed class LocatedJson(ReadOnlyMemory<byte> utf8, string file)
{
    public const int MaxFile = 4 * 1024 * 1024;
    private const int MaxDepth = 32;
    private const int MaxRefusals = 100;

    private readonly List<Refusal> refusals = [];

    public IReadOnlyList<Refusal> Refusals => refusals;

    /// <summary>The whole value, or null with at least one refusal.</summary>
    public Located? Parse()
    {
        if (utf8.Length is 0 or > MaxFile)
            return Fail(0, utf8.Length == 0 ? "the file is empty" : $"the file is larger than {MaxFile / (1024 * 1024)} MiB");
        if (!System.Text.Unicode.Utf8.IsValid(utf8.Span))
            return Fail(0, "the file is not UTF-8");
        var text = utf8.Span.StartsWith("\uFEFF"u8) ? utf8.Span[3..] : utf8.Span;
        var skipped = utf8.Length - text.Length;
        var reader = new Utf8JsonReader(text, new JsonReaderOptions { MaxDepth = MaxDepth });
        try
        {
            reader.Read();
            var value = Value(ref reader, skipped);
            reader.Read();
            return refusals.Count == 0 ? value : null;
        }
        catch (JsonException e)
        {
            var line = (int)(e.LineNumber ?? 0);
            return Fail((line == 0 ? skipped : LineStart(line)) + (int)(e.BytePositionInLine ?? 0), JsonFault.Of(e));
        }
        catch (InvalidOperationException)
        {
            return Fail(skipped + (int)reader.TokenStartIndex, "a text holds an escape that stands for no character");
        }
    }

    /// <summary>Adds a refusal at a place; past the hundredth there is nothing new to learn.</summary>
    public void Refuse(int offset, string reason)
    {
        if (refusals.Count == MaxRefusals)
            return;
        var before = utf8.Span[..Math.Min(offset, utf8.Length)];
        var lineStart = before.LastIndexOf((byte)'\n') + 1;
        if (lineStart == 0 && before.StartsWith("\uFEFF"u8))
            lineStart = 3;
        refusals.Add(new(file, before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[lineStart..]) + 1, reason));
    }

    private Located Value(ref Utf8JsonReader reader, int skipped)
    {
        var at = skipped + (int)reader.TokenStartIndex;
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                var members = ImmutableArray.CreateBuilder<LocatedMember>();
                var names = new HashSet<string>();
                while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
                {
                    var place = skipped + (int)reader.TokenStartIndex;
                    var name = reader.GetString()!;
                    if (!names.Add(name))
                        Refuse(place, $"{name} is given twice");
                    reader.Read();
                    members.Add(new(place, name, Value(ref reader, skipped)));
                }

                return new(at, JsonValueKind.Object, "{}", members.ToImmutable(), []);
            case JsonTokenType.StartArray:
                var items = ImmutableArray.CreateBuilder<Located>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                    items.Add(Value(ref reader, skipped));
                return new(at, JsonValueKind.Array, "[]", [], items.ToImmutable());
            case JsonTokenType.String:
                return new(at, JsonValueKind.String, reader.GetString()!, [], []);
            default:
                var kind = reader.TokenType switch
                {
                    JsonTokenType.Number => JsonValueKind.Number,
                    JsonTokenType.True => JsonValueKind.True,
                    JsonTokenType.False => JsonValueKind.False,
                    _ => JsonValueKind.Null,
                };
                return new(at, kind, Encoding.UTF8.GetString(reader.ValueSpan), [], []);
        }
    }

    private int LineStart(int line)
    {
        var at = 0;
        for (; line > 0; line--)
            at += utf8.Span[at..].IndexOf((byte)'\n') + 1;
        return at;
    }

    private Located? Fail(int offset, string reason)
    {
        Refuse(offset, reason);
        return null;
    }
}
