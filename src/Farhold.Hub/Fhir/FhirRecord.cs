using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Farhold.Hub.Fhir;

/// <summary>The resources of one casualty, one by one: those of the FHIR document, which refer to each other by type and id.</summary>
/// <param name="All">By <c>Type/id</c>, in the order of the document.</param>
internal sealed record FhirRecord(ImmutableArray<(string Type, string Id, JsonObject Resource)> All)
{
    /// <summary>The types that a record can hold, as the statement of what the hub can do lists them.</summary>
    public static readonly ImmutableArray<string> Types =
    [
        "AllergyIntolerance",
        "Communication",
        "Composition",
        "Condition",
        "DetectedIssue",
        "Device",
        "Encounter",
        "Location",
        "MedicationAdministration",
        "MedicationStatement",
        "Observation",
        "Patient",
        "Practitioner",
        "Procedure",
        "Provenance",
        "Task",
    ];

    /// <param name="document">A bundle of type document, whose entries refer to each other as <c>urn:uuid:…</c>.</param>
    public static FhirRecord Of(ReadOnlySpan<byte> document)
    {
        var bundle = JsonNode.Parse(document)!.AsObject();
        var entries = bundle["entry"]!.AsArray().Select(e => e!.AsObject()).ToArray();
        var names = entries.ToDictionary(e => (string)e["fullUrl"]!, e => Name(e["resource"]!.AsObject()), StringComparer.Ordinal);
        var all = ImmutableArray.CreateBuilder<(string, string, JsonObject)>();
        foreach (var entry in entries)
        {
            var resource = entry["resource"]!.DeepClone().AsObject();
            Refer(resource, names);
            all.Add(((string)resource["resourceType"]!, (string)resource["id"]!, resource));
        }

        return new(all.ToImmutable());
    }

    public JsonObject? Read(string type, string id) => All.FirstOrDefault(r => r.Type == type && r.Id == id).Resource;

    /// <summary>The one casualty of the record.</summary>
    public string? Patient => All.FirstOrDefault(r => r.Type == "Patient").Id;

    private static string Name(JsonObject resource) => $"{resource["resourceType"]}/{resource["id"]}";

    private static void Refer(JsonNode? node, Dictionary<string, string> names)
    {
        switch (node)
        {
            case JsonObject members:
                if (members["reference"] is JsonValue value && value.GetValueKind() == JsonValueKind.String)
                    if (names.TryGetValue((string)value!, out var name))
                        members["reference"] = name;
                foreach (var (_, member) in members)
                    Refer(member, names);
                break;
            case JsonArray items:
                foreach (var item in items)
                    Refer(item, names);
                break;
        }
    }
}
