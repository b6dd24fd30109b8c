using System.Text;
using System.Text.Json;
using CsCheck;
using Json.Schema;

namespace Farhold.Tests.Records;

/// <summary>The published schema of a record's line against the reader, which is the judge.</summary>
public class RecordSchemaTests
{
    private static readonly string Text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "records", "record.schema.json"));
    private static readonly JsonSchema Schema = JsonSchema.FromText(Text);

    private static readonly Gen<string> Lines = Gen.Select(
        Gens.Id,
        Gens.When,
        Gens.Moment,
        Gens.AnyPayload,
        (id, when, recorded, what) => Encoding.UTF8.GetString(EntryWriting.Write(id, when, recorded, "Ane", what).Json.Utf8.Span)
    );

    [Fact]
    public void Every_line_of_the_demo_has_the_form() =>
        Assert.All(Demo.Record().Entries, e => Assert.True(Fits(Encoding.UTF8.GetString(e.Json.Utf8.Span)), e.Id.ToString()));

    [Fact]
    public void The_schema_never_refuses_a_line_that_the_reader_accepts()
    {
        var (accepted, both) = (0, 0);
        Lines
            .SelectMany(line => Gen.OneOf(Gen.Const(line), JsonMutations.Of(line)))
            .Sample(
                line =>
                {
                    var usable = new EntryReader().Read(Encoding.UTF8.GetBytes(line), "x", 1) is Read<Entry>.Usable;
                    Interlocked.Add(ref accepted, usable ? 1 : 0);
                    if (!usable && !Fits(line))
                        Interlocked.Increment(ref both);
                    return !usable || Fits(line);
                },
                iter: Gens.Cases(3_000),
                print: t => t
            );
        Assert.True(accepted >= Gens.Cases(1_000) && both >= Gens.Cases(300), $"{accepted} accepted, {both} refused by both");
    }

    [Fact]
    public void The_schema_knows_the_same_kinds_and_ranges()
    {
        using var schema = JsonDocument.Parse(Text);
        var kinds = schema
            .RootElement.GetProperty("allOf")
            .EnumerateArray()
            .ToDictionary(
                k => k.GetProperty("if").GetProperty("properties").GetProperty("kind").GetProperty("const").GetString()!,
                k => k.GetProperty("then").GetProperty("properties")
            );
        Assert.Equal(Enum.GetValues<Kind>().SkipLast(1).Select(Kinds.Wire), kinds.Keys);
        var ranges = typeof(FieldRange)
            .GetFields()
            .Where(f => f.FieldType == typeof(FieldRange))
            .Select(f => (FieldRange)f.GetValue(null)!);
        Assert.All(
            ranges,
            range =>
            {
                var field = kinds
                    .Values.Concat(
                        kinds.Values.Where(k => k.TryGetProperty("gcs", out _)).Select(k => k.GetProperty("gcs").GetProperty("properties"))
                    )
                    .First(k => k.TryGetProperty(range.Field, out _))
                    .GetProperty(range.Field);
                Assert.Equal((range.Min, range.Max), (field.GetProperty("minimum").GetDouble(), field.GetProperty("maximum").GetDouble()));
            }
        );
    }

    private static bool Fits(string line)
    {
        using var document = JsonDocument.Parse(line);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
