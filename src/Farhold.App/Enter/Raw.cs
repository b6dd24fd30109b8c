using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;

namespace Farhold.App.Enter;

/// <summary>A field's value as it stands in an entry: JSON text. Null where the field is not given.</summary>
public static class Raw
{
    public static string Text(string text) =>
        '"' + JsonEncodedText.Encode(text, System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping).ToString() + '"';

    public static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    public static string Flag(bool flag) => flag ? "true" : "false";

    public static string Time(Instant instant) => Text(WrittenInstant.Write(instant));

    public static string When(Happened happened) =>
        happened.IsInstant ? Time(happened.Earliest) : $$"""{"earliest":{{Time(happened.Earliest)}},"latest":{{Time(happened.Latest)}}}""";

    public static string List(IEnumerable<string> texts) => '[' + string.Join(',', texts.Select(Text)) + ']';

    public static string Members(IEnumerable<(string Name, string Value)> members) =>
        '{' + string.Join(',', members.Select(m => $"{Text(m.Name)}:{m.Value}")) + '}';

    public static string? AsText(string? raw) => Read(raw, JsonValueKind.String, e => e.GetString());

    public static double? AsNumber(string? raw) => Read<double?>(raw, JsonValueKind.Number, e => e.GetDouble());

    public static bool? AsFlag(string? raw) =>
        raw switch
        {
            "true" => true,
            "false" => false,
            _ => null,
        };

    public static Instant? AsTime(string? raw) =>
        AsText(raw) is { } text ? WrittenInstant.TryParse(System.Text.Encoding.UTF8.GetBytes(text)) : null;

    /// <summary>Empty where it is no list.</summary>
    public static ImmutableArray<string> AsList(string? raw) =>
        Read(
            raw,
            JsonValueKind.Array,
            e => e.EnumerateArray().Select(i => i.ValueKind == JsonValueKind.String ? i.GetString()! : i.GetRawText()).ToImmutableArray(),
            []
        );

    public static ImmutableSortedDictionary<string, string> AsMembers(string? raw) =>
        Read(
            raw,
            JsonValueKind.Object,
            e => e.EnumerateObject().ToImmutableSortedDictionary(m => m.Name, m => m.Value.GetRawText(), StringComparer.Ordinal),
            ImmutableSortedDictionary<string, string>.Empty
        )!;

    private static T? Read<T>(string? raw, JsonValueKind kind, Func<JsonElement, T?> read, T? otherwise = default)
    {
        if (raw is null)
            return otherwise;
        using var json = JsonDocument.Parse(raw);
        return json.RootElement.ValueKind == kind ? read(json.RootElement) : otherwise;
    }
}
