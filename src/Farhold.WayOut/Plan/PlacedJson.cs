using System.Buffers;
using System.Text;
using System.Text.Json;

namespace Farhold.WayOut;

/// <summary>A JSON value that knows where it stands in its file.</summary>
internal sealed class PlacedJson
{
    private PlacedJson(JsonTokenType kind, int at) => (Kind, At) = (kind, at);

    public JsonTokenType Kind { get; }

    /// <summary>Byte it begins at.</summary>
    public int At { get; }

    public string Text { get; private init; } = "";

    public double Number { get; private init; }

    public List<(string Name, int At, PlacedJson Value)> Fields { get; } = [];

    public List<PlacedJson> Items { get; } = [];

    /// <summary>The one value of a file, or where and why it is none.</summary>
    public static (PlacedJson? Value, int At, string? Reason) Parse(ReadOnlySpan<byte> utf8)
    {
        var skip = utf8.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? 3 : 0;
        if (System.Text.Unicode.Utf8.IsValid(utf8) is false)
            return (null, FirstInvalid(utf8), "This is not UTF-8 text.");
        var reader = new Utf8JsonReader(utf8[skip..], new JsonReaderOptions { MaxDepth = 64 });
        try
        {
            reader.Read();
            var value = Value(ref reader, skip);
            reader.Read();
            return (value, 0, null);
        }
        catch (JsonException malformed)
        {
            var line = (int)(malformed.LineNumber ?? 0);
            var at = skip + LineStart(utf8[skip..], line) + (int)(malformed.BytePositionInLine ?? 0);
            return (null, Math.Min(at, utf8.Length), "This is not JSON: " + Sentence(malformed.Message));
        }
    }

    private static PlacedJson Value(ref Utf8JsonReader reader, int skip)
    {
        var at = skip + (int)reader.TokenStartIndex;
        var kind = reader.TokenType;
        if (kind == JsonTokenType.StartObject)
        {
            var value = new PlacedJson(kind, at);
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                var (name, nameAt) = (Unescaped(ref reader), skip + (int)reader.TokenStartIndex);
                reader.Read();
                value.Fields.Add((name, nameAt, Value(ref reader, skip)));
            }

            return value;
        }

        if (kind == JsonTokenType.StartArray)
        {
            var value = new PlacedJson(kind, at);
            while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                value.Items.Add(Value(ref reader, skip));
            return value;
        }

        return new(kind, at)
        {
            Text = kind == JsonTokenType.String ? Unescaped(ref reader)
                : Encoding.UTF8.GetString(reader.HasValueSequence ? reader.ValueSequence.ToArray() : reader.ValueSpan),
            Number = kind == JsonTokenType.Number && reader.TryGetDouble(out var number) ? number : double.NaN,
        };
    }

    private static string Unescaped(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString() ?? "";
        }
        catch (InvalidOperationException)
        {
            // Half a surrogate pair, written as an escape: no text has it.
            throw new JsonException("half a character.", null, null, null);
        }
    }

    private static string Sentence(string message) => message.Split(" LineNumber:")[0].TrimEnd() is var first && first.EndsWith('.') ? first : first + ".";

    private static int LineStart(ReadOnlySpan<byte> utf8, int line)
    {
        var start = 0;
        for (; line > 0; line--)
        {
            var end = utf8[start..].IndexOf((byte)'\n');
            if (end < 0)
                break;
            start += end + 1;
        }

        return start;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> utf8)
    {
        var at = 0;
        while (Rune.DecodeFromUtf8(utf8[at..], out _, out var used) == OperationStatus.Done)
            at += used;
        return at;
    }
}
