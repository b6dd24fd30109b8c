using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace Farhold.Files;

/// <summary>Turns JSON text into values that know where they stood; members given twice are all kept.</summary>
internal static class LocatedText
{
    /// <returns>The one value of a file; or null, with the byte at which it fails and why.</returns>
    public static (Located? Value, int At, string? Reason) Parse(ReadOnlySpan<byte> utf8, int maxDepth)
    {
        if (!System.Text.Unicode.Utf8.IsValid(utf8))
            return (null, FirstInvalid(utf8), "the file is not UTF-8");
        var skipped = utf8.StartsWith("\uFEFF"u8) ? 3 : 0;
        var reader = new Utf8JsonReader(utf8[skipped..], new JsonReaderOptions { MaxDepth = maxDepth });
        try
        {
            reader.Read();
            var value = Value(ref reader, skipped);
            reader.Read();
            return (value, 0, null);
        }
        catch (JsonException fault)
        {
            var at = skipped + LineStart(utf8[skipped..], (int)(fault.LineNumber ?? 0)) + (int)(fault.BytePositionInLine ?? 0);
            return (null, Math.Min(at, utf8.Length), JsonFault.Of(fault));
        }
        catch (InvalidOperationException)
        {
            return (null, skipped + (int)reader.TokenStartIndex, "a text holds an escape that stands for no character");
        }
    }

    private static Located Value(ref Utf8JsonReader reader, int skipped)
    {
        var at = skipped + (int)reader.TokenStartIndex;
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                var members = ImmutableArray.CreateBuilder<LocatedMember>();
                while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
                {
                    var (place, name) = (skipped + (int)reader.TokenStartIndex, reader.GetString()!);
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

    private static int LineStart(ReadOnlySpan<byte> utf8, int line)
    {
        var at = 0;
        for (; line > 0; line--)
            at += utf8[at..].IndexOf((byte)'\n') + 1;
        return at;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> utf8)
    {
        var at = 0;
        while (Rune.DecodeFromUtf8(utf8[at..], out _, out var used) == OperationStatus.Done)
            at += used;
        return at;
    }
}
