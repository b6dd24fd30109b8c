using System.Globalization;
using System.Text.Json;

namespace Farhold.Files;

/// <summary>JSON in one form, so that two texts with the same meaning are the same bytes.</summary>
/// <remarks>
/// Members sorted by name (ordinal), no white space, numbers by value. Numbers beyond what <see cref="decimal"/> holds
/// are kept as written. Not RFC 8785: that one narrows numbers to doubles, which would call two amounts equal that are not.
/// </remarks>
public static class CanonicalJson
{
    public const int MaxDepth = 32;

    /// <exception cref="JsonException">The text is no JSON, or nested deeper than <see cref="MaxDepth"/>.</exception>
    public static JsonText Of(JsonText json)
    {
        using var document = JsonDocument.Parse(json.Utf8, new() { MaxDepth = MaxDepth });
        return Of(document.RootElement);
    }

    public static JsonText Of(JsonElement element)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
            Write(writer, element);
        return new(stream.ToArray());
    }

    private static void Write(Utf8JsonWriter writer, JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                foreach (var member in element.EnumerateObject().OrderBy(m => m.Name, StringComparer.Ordinal))
                {
                    writer.WritePropertyName(member.Name);
                    Write(writer, member.Value);
                }

                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach (var item in element.EnumerateArray())
                    Write(writer, item);
                writer.WriteEndArray();
                break;
            case JsonValueKind.Number:
                writer.WriteRawValue(Number(element));
                break;
            default:
                element.WriteTo(writer);
                break;
        }
    }

    private static string Number(JsonElement element) =>
        element.TryGetDecimal(out var value)
            ? (value / 1.000000000000000000000000000000000m).ToString(CultureInfo.InvariantCulture)
            : element.GetRawText();
}
