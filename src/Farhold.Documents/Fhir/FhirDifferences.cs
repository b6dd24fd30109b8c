using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.Documents.Fhir;

/// <summary>Where a document no longer says what its record says, found by writing it anew.</summary>
internal static class FhirDifferences
{
    /// <summary>More would only hide the first ones.</summary>
    private const int Most = 20;

    public static ImmutableArray<string> Of(CareRecord record, NodaTime.Instant at, ReadOnlyMemory<byte> utf8, CancellationToken leaving)
    {
        var expected = Resources(FhirDocument.Write(record, at, leaving));
        var found = Resources(utf8);
        var said = expected.Where(e => !found.ContainsKey(e.Key)).Select(e => $"{Named(e)} was left out")
            .Concat(found.Where(f => !expected.ContainsKey(f.Key)).Select(f => $"{Named(f)} was added"))
            .Concat(expected.Where(e => found.TryGetValue(e.Key, out var f) && f.Text != e.Value.Text)
                .Select(e => $"{Named(e)} was changed"))
            .Order(StringComparer.Ordinal).ToArray();
        return said.Length <= Most ? [.. said] : [.. said[..Most], $"and {said.Length - Most} more"];
    }

    private static Dictionary<string, (string Type, JsonText Text)> Resources(ReadOnlyMemory<byte> utf8)
    {
        using var bundle = JsonDocument.Parse(utf8.Span.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8);
        var found = new Dictionary<string, (string, JsonText)>(StringComparer.Ordinal);
        if (!bundle.RootElement.TryGetProperty("entry", out var entries) || entries.ValueKind != JsonValueKind.Array)
            return found;
        foreach (var entry in entries.EnumerateArray())
            if (entry.ValueKind == JsonValueKind.Object && entry.TryGetProperty("resource", out var resource)
                && resource.ValueKind == JsonValueKind.Object)
                found[Text(entry, "fullUrl")] = (Text(resource, "resourceType"), CanonicalJson.Of(resource));
        return found;
    }

    private static string Text(JsonElement of, string name) =>
        of.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";

    private static string Named(KeyValuePair<string, (string Type, JsonText Text)> resource) => $"{resource.Value.Type} {resource.Key}";
}
