using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;

namespace Farhold.Tests.Records;

/// <summary>Each kind's one walk over its fields, against what is written, what is published, and what people read.</summary>
public class EntryFieldTests
{
    public static TheoryData<Kind> Known => [.. Enum.GetValues<Kind>().Where(k => k != Kind.OfNewerVersion)];

    private static readonly JsonNode Schema = JsonNode.Parse(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "records", "record.schema.json"))
    )!;

    [Fact]
    public void Every_listed_field_is_written_and_no_other()
    {
        var seen = Enum.GetValues<Kind>().ToDictionary(k => k, _ => new HashSet<string>());
        Gen.Select(Gens.Id, Gens.When, Gens.Moment, Gens.AnyPayload)
            .Sample(
                (id, when, recorded, what) =>
                {
                    using var json = JsonDocument.Parse(EntryWriting.Write(id, when, recorded, "Ane", what).Json.Utf8);
                    lock (seen)
                        seen[Kinds.Of(what)].UnionWith(Names(json.RootElement).Except(["id", "happened", "recorded", "by", "kind"]));
                },
                iter: 8_000
            );
        Assert.All(
            Enum.GetValues<Kind>(),
            kind => Assert.Equal(string.Join(' ', Names(Kinds.Fields(kind)).Order()), string.Join(' ', seen[kind].Order()))
        );
    }

    [Theory, MemberData(nameof(Known))]
    public void The_published_schema_has_the_fields_of_the_kind(Kind kind)
    {
        var published = Schema["allOf"]!.AsArray().Single(k => (string?)k!["if"]!["properties"]!["kind"]!["const"] == Kinds.Wire(kind))![
            "then"
        ]!;
        var fields = Kinds.Fields(kind);
        var expected = new JsonObject { ["properties"] = Properties(fields) };
        if (fields.Any(f => f.Required))
            expected["required"] = new JsonArray([.. fields.Where(f => f.Required).Select(f => (JsonNode)f.Name)]);
        Assert.True(
            JsonNode.DeepEquals(expected, published),
            $"{Kinds.Wire(kind)}: records/record.schema.json has to say\n{expected}\nand says\n{published}"
        );
    }

    [Theory, MemberData(nameof(Known))]
    public void Every_field_has_a_name_that_people_know(Kind kind) =>
        Assert.All(
            Names(Kinds.Fields(kind)),
            name => Assert.DoesNotContain(FieldWords.Of(name.Split('.')[^1]).Split('(')[0], char.IsUpper)
        );

    private static JsonObject Properties(IEnumerable<EntryField> fields) =>
        new(fields.Select(f => KeyValuePair.Create(f.Name, (JsonNode?)Property(f))));

    private static JsonObject Property(EntryField field) =>
        field switch
        {
            { Type: FieldType.Text } => Defined("text", field.Required),
            { Type: FieldType.Name } => Defined("name", field.Required),
            { Type: FieldType.Id } => Defined("id", field.Required),
            { Type: FieldType.Time } => Defined("instant", field.Required),
            { Type: FieldType.Word } => new()
            {
                ["enum"] = new JsonArray([.. field.Words.Select(w => (JsonNode)w), .. field.Required ? [] : (JsonNode?[])[null]]),
            },
            { Type: FieldType.Flag } => new() { ["type"] = Or("boolean", field.Required) },
            { Type: FieldType.Number, Range: { } range } => new()
            {
                ["type"] = Or(range.Whole ? "integer" : "number", field.Required),
                ["minimum"] = range.Min,
                ["maximum"] = range.Max,
                ["description"] = range.Unit,
            },
            { Type: FieldType.Texts } => new()
            {
                ["type"] = Or("array", field.Required),
                ["items"] = new JsonObject { ["type"] = "string" },
            },
            { Type: FieldType.Object } => new() { ["type"] = Or("object", field.Required), ["properties"] = Properties(field.Members) },
            { Type: FieldType.ByLimb } => new()
            {
                ["type"] = Or("object", field.Required),
                ["propertyNames"] = new JsonObject { ["enum"] = new JsonArray([.. field.Members.Select(m => (JsonNode)m.Name)]) },
                ["additionalProperties"] = new JsonObject
                {
                    ["enum"] = new JsonArray([.. field.Members[0].Words.Select(w => (JsonNode)w)]),
                },
            },
            { Type: FieldType.Json } => new() { ["type"] = Or("object", field.Required) },
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static JsonObject Defined(string what, bool required)
    {
        var reference = new JsonObject { ["$ref"] = $"#/$defs/{what}" };
        return required ? reference : new() { ["anyOf"] = new JsonArray(reference, new JsonObject { ["type"] = "null" }) };
    }

    private static JsonNode Or(string type, bool required) => required ? type : new JsonArray(type, "null");

    private static IEnumerable<string> Names(IEnumerable<EntryField> fields) =>
        fields.SelectMany(f => f.Type != FieldType.Object ? [f.Name] : f.Members.Select(m => $"{f.Name}.{m.Name}"));

    private static IEnumerable<string> Names(JsonElement entry) =>
        entry
            .EnumerateObject()
            .SelectMany(m =>
                m is { Value.ValueKind: JsonValueKind.Object, Name: "gcs" }
                    ? m.Value.EnumerateObject().Select(i => $"{m.Name}.{i.Name}")
                    : [m.Name]
            );
}
