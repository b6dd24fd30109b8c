using System.Text;
using System.Text.Json;
using CsCheck;
using Json.Schema;

namespace Farhold.Tests.Protocols;

/// <summary>The published schemas against the readers. The reader is the judge: the schema may never refuse what it accepts.</summary>
public class SchemaTests
{
    private static readonly JsonSchema ProtocolSchema = JsonSchema.FromText(File.ReadAllText(Beside("protocols", "protocol.schema.json")));
    private static readonly JsonSchema LocalSchema = JsonSchema.FromText(File.ReadAllText(Beside("protocols", "local.schema.json")));
    private static readonly string Shipped = Encoding.UTF8.GetString(ShippedProtocol.Json.Span);
    private static readonly string Local = File.ReadAllText(Beside("demo", "skarvedal-local.json"));

    [Fact]
    public void The_shipped_protocol_and_the_local_one_of_the_demo_have_the_form() =>
        Assert.True(Fits(ProtocolSchema, Shipped) && Fits(LocalSchema, Local));

    [Fact]
    public void The_schema_never_refuses_a_protocol_that_the_reader_accepts()
    {
        var accepted = 0;
        JsonMutations.Of(Shipped).Sample(text =>
        {
            if (ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "x") is not Read<Protocol>.Usable)
                return true;
            Interlocked.Increment(ref accepted);
            return Fits(ProtocolSchema, text);
        }, iter: Gens.Cases(600), print: t => t);
        Assert.True(accepted >= Gens.Cases(20), $"only {accepted} accepted");
    }

    [Fact]
    public void The_schema_never_refuses_a_local_protocol_that_the_reader_accepts()
    {
        var accepted = 0;
        Gen.OneOf(JsonMutations.Of(Local), Gens.Overlay.Select(o => Encoding.UTF8.GetString(o.Span))).Sample(text =>
        {
            if (LocalReader.Read(Encoding.UTF8.GetBytes(text), "x", ShippedProtocol.Protocol) is not Read<Protocol>.Usable)
                return true;
            Interlocked.Increment(ref accepted);
            return Fits(LocalSchema, text);
        }, iter: Gens.Cases(600), print: t => t);
        Assert.True(accepted >= Gens.Cases(20), $"only {accepted} accepted");
    }

    [Theory]
    [InlineData("\"version\": \"1.1.0\"", "\"version\": 1")]
    [InlineData("\"version\": \"1.1.0\",", "")]
    [InlineData("\"title\": \"Rep", "\"name\": \"Rep")]
    [InlineData("\"window\": \"PT2H\"", "\"window\": 2")]
    [InlineData("\"role\": \"forbids\"", "\"role\": \"hinders\"")]
    [InlineData("\"atLeast\": \"limit\"", "\"atLeast\": \"limit\", \"above\": \"limit\"")]
    [InlineData("\"atLeast\": \"limit\"", "\"atLeast\": true")]
    [InlineData("\"input\": \"woundNature\", \"in\"", "\"input\": \"woundNature\", \"of\"")]
    [InlineData("\"input\": \"dizzy\"", "\"input\": \"giddy\"")]
    [InlineData("\"hard\": true", "\"hard\": \"yes\"")]
    [InlineData("\"known\": \"design\"", "\"known\": \"hearsay\"")]
    [InlineData("\"sources\": [\"TCCC-25-2\"]", "\"sources\": []")]
    [InlineData("\"plain-gauze\": \"PT10M\"", "\"wool\": \"PT10M\"")]
    [InlineData("\"scope\": \"limb\"", "\"scope\": \"arm\"")]
    [InlineData("[\"signs.taken\"]", "[\"signs.seen\"]")]
    [InlineData("\"heartRate\": \"PT15M\"", "\"massKg\": \"PT15M\"")]
    [InlineData("\"people\": 2", "\"people\": 3")]
    [InlineData("\"group\": \"nursing\"", "\"group\": \"kindness\"")]
    [InlineData("\"seen\": [\"pain\"]", "\"seen\": [\"ache\"]")]
    [InlineData("\"input\": \"woundElsewhere\"", "\"input\": \"woundThere\"")]
    [InlineData("\"helpWithin\": \"PT12H\"", "\"occluded\": \"PT12H\"")]
    public void An_error_of_form_is_refused_by_both(string right, string wrong)
    {
        var at = Shipped.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, "the shipped protocol no longer has this text");
        var text = Shipped[..at] + wrong + Shipped[(at + right.Length)..];
        Assert.False(Fits(ProtocolSchema, text));
        Assert.IsType<Read<Protocol>.Refused>(ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "x"));
    }

    [Fact]
    public void The_schema_knows_the_same_inputs_and_kinds()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Beside("protocols", "protocol.schema.json")));
        var defs = schema.RootElement.GetProperty("$defs");
        IEnumerable<string> Words(JsonElement e) => e.GetProperty("enum").EnumerateArray().Select(v => v.GetString()!);
        Assert.Equal(Input.All.Select(i => i.Name), Words(defs.GetProperty("condition").GetProperty("oneOf")[3].GetProperty("properties").GetProperty("input")));
        Assert.Equal(Input.All.Where(i => i.Expires).Select(i => i.Name), Words(defs.GetProperty("freshness").GetProperty("propertyNames")));
        Assert.Equal(LongInput.All.Select(i => i.Name), Words(defs.GetProperty("careCondition").GetProperty("oneOf")[3].GetProperty("properties").GetProperty("input")));
        Assert.Equal(LongInput.All.Where(i => i.Expires).Select(i => i.Name), Words(defs.GetProperty("careFreshness").GetProperty("propertyNames")));
        Assert.Equal(LongInput.All.Select(i => i.Name), Words(defs.GetProperty("task").GetProperty("properties").GetProperty("seen").GetProperty("items")));
        Assert.Equal(Enum.GetValues<Kind>().SkipLast(1).Select(Kinds.Wire), Words(defs.GetProperty("task").GetProperty("properties").GetProperty("doneBy").GetProperty("items")));
    }

    private static bool Fits(JsonSchema schema, string text)
    {
        using var document = JsonDocument.Parse(text);
        return schema.Evaluate(document.RootElement).IsValid;
    }

    private static string Beside(string folder, string file) => Path.Combine(AppContext.BaseDirectory, folder, file);
}
