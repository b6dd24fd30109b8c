using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Json.Schema;

namespace Farhold.Tests.WayOut;

public class PlanSchemaTests
{
    private static readonly JsonSchema schema = JsonSchema.FromText(Encoding.UTF8.GetString(SomePlan.File("plan.schema.json")));

    /// <summary>What a schema can't say: order, sums, calendars, what one field means for another far away.</summary>
    private static readonly string[] beyondSchema =
    [
        "the three times rise", "'p10', 'p50' and 'p90' rise", "'p10' is above 0", "longer than 30 days", "add up to", "Only one way may",
        "sure to come", "'start' is an instant", "is no time zone", "needs 'from'", "is given twice",
    ];

    private static readonly string[] seeds =
    [
        Encoding.UTF8.GetString(SomePlan.File("ridge-hut.plan.json")),
        SomePlan.Text("""{"mode":"walk","distanceKm":3,"ascentM":200,"terrain":"path","rule":"tobler","snowCm":5,"spread":0.3,"dark":"allowed"}"""),
        SomePlan.Text(
            """{"mode":"carry","distanceKm":3,"bearers":8,"wheel":true,"ropePitches":2,"packaging":false,"dark":"stop"},{"mode":"boat","distanceKm":5,"speedKmh":12}""",
            "\"from\":{\"lat\":1,\"lon\":2},\"correlation\":0.2,\"lambda\":3,"),
        SomePlan.Text("""{"all":[{"legs":[{"mode":"wait","low":1,"likely":"PT5M","high":9}]},{"legs":[{"mode":"vehicle","track":"a.gpx","terrain":"road"}]}]}"""),
    ];

    private static readonly string[] values =
    [
        "null", "true", "0", "-1", "1", "1.2", "6.5", "45000", "1e9", "\"\"", "\"PT5M\"", "\"-PT5M\"", "\"PT\"", "\"P40D\"", "\"walk\"", "\"wait\"",
        "\"carry\"", "\"boat\"", "\"aircraft\"", "\"stop\"", "\"daylight\"", "\"2031-02-30T00:00:00Z\"", "\"tobler\"", "\"boulders\"", "[]", "{}",
        "[{\"mode\":\"wait\",\"p10\":1,\"p90\":2}]", "{\"legs\":[]}", "{\"probability\":0.5,\"low\":1,\"likely\":2,\"high\":3}",
    ];

    private static readonly string[] names =
    [
        "mode", "low", "likely", "high", "p10", "p50", "p90", "track", "distanceKm", "ascentM", "descentM", "terrain", "bearers", "dark", "window",
        "hold", "rule", "spread", "snowCm", "wheel", "ropePitches", "packaging", "speedKmh", "branches", "first", "all", "probability", "legs", "name",
        "note", "from", "lat", "start", "timeZone", "correlation", "lambda", "Mode", "speed",
    ];

    [Fact]
    public void The_reader_and_the_schema_agree_over_mutated_plans()
    {
        var (usable, refused) = (0, 0);
        Gen.Select(Gen.Int[0, seeds.Length - 1], Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 2], OneOf(names), OneOf(values)).Array[0, 3])
            .Sample((seed, changes) =>
            {
                var json = JsonNode.Parse(seeds[seed])!;
                foreach (var (place, kind, name, value) in changes)
                    Mutate(json, place, kind, name, value);
                var text = json.ToJsonString();
                var valid = Valid(text);
                var read = SomePlan.Tried(text);
                if (read is Read<Plan>.Refused(var why))
                {
                    Interlocked.Increment(ref refused);
                    Assert.True(!valid || why.All(r => beyondSchema.Any(b => r.Reason.Contains(b, StringComparison.Ordinal))),
                        $"the schema allows {text}\n{string.Join("\n", why)}");
                }
                else
                {
                    Interlocked.Increment(ref usable);
                    Assert.True(valid, $"the reader takes, the schema not: {text}");
                }
            }, iter: 2000);
        Assert.True(usable > 200 && refused > 500, $"{usable} usable, {refused} refused: too one-sided to tell");
    }

    [Fact]
    public void Every_shipped_plan_reads_and_fits_the_schema()
    {
        var plans = Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "plans"), "*.plan.json");
        Assert.NotEmpty(plans);
        Assert.All(plans, path =>
        {
            Assert.True(Valid(File.ReadAllText(path)), path);
            Assert.IsType<Read<Plan>.Usable>(PlanReader.Read(File.ReadAllBytes(path), path));
        });
    }

    [Fact]
    public void Reading_arbitrary_bytes_refuses_and_never_fails() => Gen.Byte.Array[0, 60].Sample(bytes =>
        Assert.IsType<Read<Plan>.Refused>(PlanReader.Read(bytes, "x")));

    private static Gen<string> OneOf(string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static bool Valid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return schema.Evaluate(document.RootElement).IsValid;
    }

    private static void Mutate(JsonNode root, int place, int kind, string name, string value)
    {
        var objects = Objects(root).ToArray();
        var target = objects[place % objects.Length];
        var fields = target.Select(f => f.Key).ToArray();
        if (kind == 0 && fields.Length > 0)
            target.Remove(fields[place % fields.Length]);
        else
            target[kind == 1 && fields.Length > 0 ? fields[place % fields.Length] : name] = JsonNode.Parse(value);
    }

    private static IEnumerable<JsonObject> Objects(JsonNode? node) => node switch
    {
        JsonObject o => o.Select(f => f.Value).SelectMany(Objects).Prepend(o),
        JsonArray a => a.SelectMany(Objects),
        _ => [],
    };
}
