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
    private static readonly JsonSchema KitSchema = JsonSchema.FromText(File.ReadAllText(Beside("protocols", "kit.schema.json")));
    private static readonly string Kit = File.ReadAllText(Beside("protocols", ShippedKit.FileName));
    private static readonly string Shipped = Encoding.UTF8.GetString(ShippedProtocol.Json.Span);
    private static readonly string Local = File.ReadAllText(Beside("demo", "skarvedal-local.json"));

    [Fact]
    public void The_shipped_protocol_and_the_local_one_of_the_demo_have_the_form() =>
        Assert.True(Fits(ProtocolSchema, Shipped) && Fits(LocalSchema, Local));

    [Fact]
    public void The_schema_never_refuses_a_protocol_that_the_reader_accepts()
    {
        var accepted = 0;
        JsonMutations
            .Of(Shipped)
            .Sample(
                text =>
                {
                    if (ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "x") is not Read<Protocol>.Usable)
                        return true;
                    Interlocked.Increment(ref accepted);
                    return Fits(ProtocolSchema, text);
                },
                iter: Gens.Cases(600),
                print: t => t
            );
        Assert.True(accepted >= Gens.Cases(20), $"only {accepted} accepted");
    }

    [Fact]
    public void The_schema_never_refuses_a_local_protocol_that_the_reader_accepts()
    {
        var accepted = 0;
        Gen.OneOf(JsonMutations.Of(Local), Gens.Overlay.Select(o => Encoding.UTF8.GetString(o.Span)))
            .Sample(
                text =>
                {
                    if (LocalFile.Read(text) is not Read<Protocol>.Usable)
                        return true;
                    Interlocked.Increment(ref accepted);
                    return Fits(LocalSchema, text);
                },
                iter: Gens.Cases(600),
                print: t => t
            );
        Assert.True(accepted >= Gens.Cases(20), $"only {accepted} accepted");
    }

    [Fact]
    public void The_shipped_kit_list_has_the_form() => Assert.True(Fits(KitSchema, Kit));

    [Fact]
    public void The_schema_never_refuses_a_kit_list_that_the_reader_accepts()
    {
        var (accepted, both) = (0, 0);
        JsonMutations
            .Of(Kit)
            .Sample(
                text =>
                {
                    var usable = KitReader.Read(Encoding.UTF8.GetBytes(text), "x") is Read<KitList>.Usable;
                    Interlocked.Add(ref accepted, usable ? 1 : 0);
                    if (!usable && !Fits(KitSchema, text))
                        Interlocked.Increment(ref both);
                    return !usable || Fits(KitSchema, text);
                },
                iter: Gens.Cases(600),
                print: t => t
            );
        Assert.True(accepted >= Gens.Cases(100) && both >= Gens.Cases(100), $"{accepted} accepted, {both} refused by both");
    }

    [Theory]
    [InlineData("\"version\": \"1.0.0\",", "")]
    [InlineData("\"title\": \"What", "\"name\": \"What")]
    [InlineData("\"known\": \"read\"", "\"known\": \"heard\"")]
    [InlineData("\"unit\": \"roll\"", "\"unit\": \" \"")]
    [InlineData("\"step\": 1", "\"step\": 1.5")]
    [InlineData("\"step\": 1", "\"step\": 0")]
    [InlineData("\"kind\": \"wound.packed\"", "\"kind\": \"wound.found\"")]
    [InlineData("\"kind\": \"wound.packed\", \"of\"", "\"kind\": \"wound.packed\", \"with\"")]
    [InlineData("\"kind\": \"task.done\", \"of\": \"wound\"", "\"kind\": \"task.done\"")]
    [InlineData("\"each\": [1, 2]", "\"each\": [1]")]
    [InlineData("\"each\": [1, 2]", "\"each\": [-1, 2]")]
    [InlineData("\"pieceMg\": 500", "\"pieceMg\": 0")]
    [InlineData("\"pieceMg\": 500", "\"pieceMg\": 500, \"each\": [1, 1]")]
    [InlineData("\"every\": \"PT24H\"", "\"every\": 24")]
    [InlineData("\"per\": \"casualty\"", "\"per\": \"head\"")]
    [InlineData("\"water\": true", "\"water\": \"yes\"")]
    [InlineData("\"keep\": 1, ", "")]
    [InlineData("\"keepFor\": \"bleeding that starts again\",", "")]
    [InlineData("\"instead\": [\"plain-gauze\", \"cloth\"]", "\"instead\": [\"plain-gauze\", \"\"]")]
    [InlineData("\"carry\": {\"party\": 2}", "\"carry\": {\"party\": -2}")]
    [InlineData("\"carry\": {\"party\": 2}", "\"carry\": {\"hut\": 2}")]
    [InlineData("\"sources\": [\"TCCC\", \"design\"]", "\"sources\": []")]
    public void An_error_of_form_in_a_kit_list_is_refused_by_both(string right, string wrong)
    {
        var text = Broken(Kit, right, wrong);
        Assert.False(Fits(KitSchema, text));
        Assert.IsType<Read<KitList>.Refused>(KitReader.Read(Encoding.UTF8.GetBytes(text), "x"));
    }

    [Theory]
    [InlineData("\"version\": \"2.0.0\"", "\"version\": 1")]
    [InlineData("\"version\": \"2.0.0\",", "")]
    [InlineData("\"title\": \"Conv", "\"name\": \"Conv")]
    [InlineData("\"window\": \"PT2H\"", "\"window\": 2")]
    [InlineData("\"role\": \"forbids\"", "\"role\": \"hinders\"")]
    [InlineData("\"atLeast\": \"limit\"", "\"atLeast\": \"limit\", \"above\": \"limit\"")]
    [InlineData("\"atLeast\": \"limit\"", "\"atLeast\": true")]
    [InlineData("\"input\": \"woundNature\", \"in\"", "\"input\": \"woundNature\", \"of\"")]
    [InlineData("\"input\": \"dizzy\"", "\"input\": \"giddy\"")]
    [InlineData("\"hard\": true", "\"hard\": \"yes\"")]
    [InlineData("\"known\": \"design\"", "\"known\": \"hearsay\"")]
    [InlineData("\"sources\": [\"TCCC-25-2\", \"Drew-2015\", \"design\"]", "\"sources\": []")]
    [InlineData("\"plain-gauze\": \"PT10M\"", "\"wool\": \"PT10M\"")]
    [InlineData("\"scope\": \"limb\"", "\"scope\": \"arm\"")]
    [InlineData("[\"signs.taken\"]", "[\"signs.seen\"]")]
    [InlineData("\"heartRate\": \"PT15M\"", "\"massKg\": \"PT15M\"")]
    [InlineData("\"people\": 2", "\"people\": 3")]
    [InlineData("\"group\": \"nursing\"", "\"group\": \"kindness\"")]
    [InlineData("\"child\": { \"reason\"", "\"child\": { \"because\"")]
    [InlineData("\"seen\": [\"pain\"]", "\"seen\": [\"ache\"]")]
    [InlineData("\"input\": \"woundElsewhere\"", "\"input\": \"woundThere\"")]
    [InlineData("\"helpWithin\": \"PT12H\"", "\"occluded\": \"PT12H\"")]
    public void An_error_of_form_is_refused_by_both(string right, string wrong)
    {
        var text = Broken(Shipped, right, wrong);
        Assert.False(Fits(ProtocolSchema, text));
        Assert.IsType<Read<Protocol>.Refused>(ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "x"));
    }

    /// <summary>The worked example leaves no part out.</summary>
    [Fact]
    public void The_local_protocol_of_the_demo_uses_every_part()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Beside("protocols", "local.schema.json")));
        using var demo = JsonDocument.Parse(Local);
        string[] Names(JsonElement e) => [.. e.EnumerateObject().Select(m => m.Name).Order(StringComparer.Ordinal)];
        Assert.Equal(Names(schema.RootElement.GetProperty("properties")), Names(demo.RootElement));
    }

    [Fact]
    public void The_schema_knows_the_same_terms_channels_and_days()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Beside("protocols", "local.schema.json")));
        IEnumerable<string> Words(JsonElement e) => e.GetProperty("enum").EnumerateArray().Select(v => v.GetString()!);
        JsonElement At(params string[] path) => path.Aggregate(schema.RootElement, (e, name) => e.GetProperty(name));
        Assert.Equal(Wire.Words<Term>(), Words(At("properties", "words", "properties", "terms", "propertyNames")));
        var ways = At("$defs", "contact", "properties", "ways", "items", "oneOf");
        Assert.Equal(Wire.Words<ContactChannel>().SkipLast(1), Words(ways[0].GetProperty("properties").GetProperty("by")));
        Assert.Equal(
            ContactWords.Week.Select(ContactWords.Day),
            Words(At("$defs", "contact", "properties", "open", "items", "properties", "days", "items"))
        );
    }

    [Theory]
    [InlineData("\"number\": \"+47 0000 0130\"", "\"number\": \"+47  0000 0130\"")]
    [InlineData("\"number\": \"+47 0000 0130\"", "\"number\": \"base\"")]
    [InlineData("\"number\": \"+47 0000 0130\"", "\"call\": \"+47 0000 0130\"")]
    [InlineData("\"callSign\": \"Skarvedal base\", ", "")]
    [InlineData("\"by\": \"radio\"", "\"by\": \"flag\"")]
    [InlineData("\"zone\": \"Europe/Oslo\",", "")]
    [InlineData("\"from\": \"07:00\"", "\"from\": \"24:00\"")]
    [InlineData("\"days\": [\"friday\", \"saturday\"]", "\"days\": []")]
    [InlineData("\"days\": [\"friday\", \"saturday\"]", "\"days\": [\"Friday\"]")]
    [InlineData("\"role\": \"duty physician\",", "")]
    [InlineData("\"role\": \"team leader\", \"allows\": [\"shock.cool\", \"shock.dizzy\"]", "\"role\": \"team leader\"")]
    [InlineData("\"paracetamol\": \"White strip\"", "\"paracetamol\": \"\"")]
    [InlineData("\"paracetamol\": \"White strip\"", "\"paracetamol\": \"White strip that is much longer than a name on a box\"")]
    [InlineData("\"litter\": \"sledge\"", "\"stretcher\": \"sledge\"")]
    [InlineData("\"terms\": {", "\"cautions\": {}, \"terms\": {")]
    public void An_error_of_form_in_what_a_service_says_is_refused_by_both(string right, string wrong)
    {
        var text = Broken(Local, right, wrong);
        Assert.False(Fits(LocalSchema, text));
        Assert.IsType<Read<Protocol>.Refused>(LocalFile.Read(text));
    }

    [Fact]
    public void The_schema_knows_the_same_inputs_and_kinds()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Beside("protocols", "protocol.schema.json")));
        var defs = schema.RootElement.GetProperty("$defs");
        IEnumerable<string> Words(JsonElement e) => e.GetProperty("enum").EnumerateArray().Select(v => v.GetString()!);
        Assert.Equal(
            Input.All.Select(i => i.Name),
            Words(defs.GetProperty("condition").GetProperty("oneOf")[3].GetProperty("properties").GetProperty("input"))
        );
        Assert.Equal(
            Input.All.Where(i => i.Expires).Select(i => i.Name),
            Words(defs.GetProperty("freshness").GetProperty("propertyNames"))
        );
        Assert.Equal(
            LongInput.All.Select(i => i.Name),
            Words(defs.GetProperty("careCondition").GetProperty("oneOf")[3].GetProperty("properties").GetProperty("input"))
        );
        Assert.Equal(
            LongInput.All.Where(i => i.Expires).Select(i => i.Name),
            Words(defs.GetProperty("careFreshness").GetProperty("propertyNames"))
        );
        Assert.Equal(
            LongInput.All.Select(i => i.Name),
            Words(defs.GetProperty("task").GetProperty("properties").GetProperty("seen").GetProperty("items"))
        );
        Assert.Equal(
            Enum.GetValues<Kind>().SkipLast(1).Select(Kinds.Wire),
            Words(defs.GetProperty("task").GetProperty("properties").GetProperty("doneBy").GetProperty("items"))
        );
    }

    [Fact]
    public void The_schema_of_the_kit_list_knows_the_same_kinds_and_words()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Beside("protocols", "kit.schema.json")));
        var defs = schema.RootElement.GetProperty("$defs");
        IEnumerable<string> Words(string def, string member) =>
            defs.GetProperty(def)
                .GetProperty("properties")
                .GetProperty(member)
                .GetProperty("enum")
                .EnumerateArray()
                .Select(v => v.GetString()!);
        Assert.Equal(KitReader.Using.Select(Kinds.Wire), Words("use", "kind"));
        Assert.Equal(Wire.Words<UsedPer>(), Words("planned", "per"));
    }

    private static bool Fits(JsonSchema schema, string text)
    {
        using var document = JsonDocument.Parse(text);
        return schema.Evaluate(document.RootElement).IsValid;
    }

    private static string Beside(string folder, string file) => Path.Combine(AppContext.BaseDirectory, folder, file);

    /// <summary>A shipped file with the first such text in it put wrong.</summary>
    private static string Broken(string shipped, string right, string wrong)
    {
        var at = shipped.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, "the shipped file no longer has this text");
        return shipped[..at] + wrong + shipped[(at + right.Length)..];
    }
}
