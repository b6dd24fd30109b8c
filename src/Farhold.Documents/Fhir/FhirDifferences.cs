using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.Documents.Fhir;

/// <summary>Where a document no longer says what its record says, found by writing it anew.</summary>
/// <remarks>
/// What is needed and recommended goes by the rules in force where it was written, which nobody here need have: that section is compared by
/// itself, and a difference may be of the rules.
/// </remarks>
internal static class FhirDifferences
{
    /// <summary>More would only hide the first ones.</summary>
    private const int Most = 20;

    public static ImmutableArray<string> Of(
        CareRecord record,
        Rulebook rules,
        NodaTime.Instant at,
        ReadOnlyMemory<byte> utf8,
        CancellationToken leaving
    )
    {
        var expected = Resources(FhirDocument.Write(record, rules, at, leaving));
        var found = Resources(utf8);
        var said = expected
            .Where(e => !found.ContainsKey(e.Key))
            .Select(e => $"{Named(e)} was left out")
            .Concat(found.Where(f => !expected.ContainsKey(f.Key)).Select(f => $"{Named(f)} was added"))
            .Concat(
                expected.Where(e => found.TryGetValue(e.Key, out var f) && f.Text != e.Value.Text).Select(e => $"{Named(e)} was changed")
            )
            .Concat(
                expected
                    .Where(e => found.TryGetValue(e.Key, out var f) && f.HandOver != e.Value.HandOver)
                    .Select(e => $"{Named(e)}: its needs and recommendation were changed, or go by other rules than those here")
            )
            .Order(StringComparer.Ordinal)
            .ToArray();
        return said.Length <= Most ? [.. said] : [.. said[..Most], $"and {said.Length - Most} more"];
    }

    private static Dictionary<string, Resource> Resources(ReadOnlyMemory<byte> utf8)
    {
        using var bundle = JsonDocument.Parse(utf8.Span.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8);
        var found = new Dictionary<string, Resource>(StringComparer.Ordinal);
        if (!bundle.RootElement.TryGetProperty("entry", out var entries) || entries.ValueKind != JsonValueKind.Array)
            return found;
        foreach (var entry in entries.EnumerateArray())
            if (
                entry.ValueKind == JsonValueKind.Object
                && entry.TryGetProperty("resource", out var resource)
                && resource.ValueKind == JsonValueKind.Object
            )
                found[Text(entry, "fullUrl")] = Of(resource);
        return found;
    }

    /// <summary>A composition without its section of needs, and that section beside it.</summary>
    private static Resource Of(JsonElement resource) =>
        Text(resource, "resourceType") is var type && type == "Composition"
            ? new(type, Only(resource, handOver: false), Only(resource, handOver: true))
            : new(type, CanonicalJson.Of(resource), default);

    private static JsonText Only(JsonElement composition, bool handOver)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            writer.WriteStartObject();
            foreach (var member in composition.EnumerateObject())
                if (member.Name != "section" || member.Value.ValueKind != JsonValueKind.Array)
                {
                    if (!handOver)
                        member.WriteTo(writer);
                }
                else
                {
                    writer.WriteStartArray("section");
                    foreach (var section in member.Value.EnumerateArray().Where(s => IsHandOver(s) == handOver))
                        section.WriteTo(writer);
                    writer.WriteEndArray();
                }

            writer.WriteEndObject();
        }

        return CanonicalJson.Of(new JsonText(stream.ToArray()));
    }

    private static bool IsHandOver(JsonElement section) =>
        section.ValueKind == JsonValueKind.Object
        && section.TryGetProperty("code", out var code)
        && code.ValueKind == JsonValueKind.Object
        && code.TryGetProperty("coding", out var codings)
        && codings.ValueKind == JsonValueKind.Array
        && codings.EnumerateArray().Any(c => c.ValueKind == JsonValueKind.Object && Text(c, "code") == HandOverSection.Word);

    private static string Text(JsonElement of, string name) =>
        of.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";

    private static string Named(KeyValuePair<string, Resource> resource) => $"{resource.Value.Type} {resource.Key}";

    /// <param name="Text">Of a composition all but its needs and recommendation, which are beside it.</param>
    private readonly record struct Resource(string Type, JsonText Text, JsonText HandOver);
}
