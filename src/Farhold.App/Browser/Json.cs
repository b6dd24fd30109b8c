using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Farhold.App.Browser;

/// <summary>Small JSON texts written and read without reflection.</summary>
internal static class Json
{
    // Texts stay readable in the record file; nothing here is ever put into HTML as markup.
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Text(Action<Utf8JsonWriter> fields) =>
        Write(w =>
        {
            w.WriteStartObject();
            fields(w);
            w.WriteEndObject();
        });

    public static string List<T>(IEnumerable<T> items, Action<Utf8JsonWriter, T> fields) =>
        Write(w =>
        {
            w.WriteStartArray();
            foreach (var item in items)
            {
                w.WriteStartObject();
                fields(w, item);
                w.WriteEndObject();
            }
            w.WriteEndArray();
        });

    public static ImmutableArray<T> Each<T>(string json, Func<JsonElement, T> read)
    {
        using var document = JsonDocument.Parse(json);
        return [.. document.RootElement.EnumerateArray().Select(read)];
    }

    /// <summary>What the phone kept as an object; null where it kept nothing, or nothing that can be read.</summary>
    public static T? Kept<T>(string text, Func<JsonElement, T?> read)
        where T : class
    {
        if (text.Length == 0)
            return null;
        try
        {
            using var json = JsonDocument.Parse(text);
            return read(json.RootElement);
        }
        catch (Exception spoilt)
            when (spoilt is JsonException or InvalidOperationException or KeyNotFoundException or FormatException or ArgumentException)
        {
            return null;
        }
    }

    public static string Text(this JsonElement e, string name) => e.GetProperty(name).GetString() ?? "";

    public static int Number(this JsonElement e, string name) => e.GetProperty(name).GetInt32();

    private static string Write(Action<Utf8JsonWriter> content)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, Plain))
            content(writer);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }
}
