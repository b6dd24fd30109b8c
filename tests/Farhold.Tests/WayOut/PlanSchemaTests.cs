using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Json.Schema;

namespace Farhold.Tests.WayOut;

public class PlanSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Encoding.UTF8.GetString(SomePlan.File("plan.schema.json")));

    /// <summary>What a schema can't say: order, sums, calendars, what one field means for another far away.</summary>
    private static readonly string[] BeyondSchema =
    [
        "the three times rise",
        "p10, p50 and p90 have to rise",
        "p10 has to be above 0",
        "from 0 to 30 days",
        "add up to",
        "only one way may",
        "a minute at least",
        "steeper than anyone walks",
        "start has to be an instant",
        "has to be a time zone",
        "needs from",
        "is given twice",
    ];

    private static readonly string[] Seeds =
    [
        Encoding.UTF8.GetString(SomePlan.File("ridge-hut.plan.json")),
        SomePlan.Text(
            """{"mode":"walk","distanceKm":3,"ascentM":200,"terrain":"path","rule":"tobler","snowCm":5,"spread":0.3,"dark":"allowed"}"""
        ),
        SomePlan.Text(
            """{"mode":"carry","distanceKm":3,"bearers":8,"wheel":true,"ropePitches":2,"packaging":false,"dark":"stop","joining":{"bearers":9,"low":10,"likely":60,"high":90},"halts":{"every":"PT30M","for":"PT3M"}},{"mode":"boat","distanceKm":5,"speedKmh":12}""",
            "\"from\":{\"lat\":1,\"lon\":2},\"correlation\":0.2,\"weather\":0.4,\"lambda\":3,"
        ),
        SomePlan.Text(
            """{"waitFor":{"name":"h","probability":0.5,"legs":[{"mode":"wait","p10":1,"p90":2}]},"until":60,"onward":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"otherwise":{"legs":[{"mode":"wait","p10":1,"p90":2}]}}"""
        ),
        SomePlan.Text(
            """{"try":{"name":"f","probability":0.5,"legs":[{"mode":"wait","p10":1,"p90":2}]},"closes":{"low":1,"likely":60,"high":90},"onward":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"otherwise":{"legs":[{"mode":"wait","p10":1,"p90":2}]}},{"try":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"closes":"PT5M"}"""
        ),
        SomePlan.Text(
            """{"all":[{"legs":[{"mode":"wait","low":1,"likely":"PT5M","high":9}]},{"legs":[{"mode":"vehicle","track":"a.gpx","terrain":"road"}]}]}"""
        ),
    ];

    private static readonly string[] Values =
    [
        "null",
        "true",
        "0",
        "-1",
        "1",
        "1.2",
        "6.5",
        "45000",
        "1e9",
        "\"\"",
        "\"PT5M\"",
        "\"-PT5M\"",
        "\"PT\"",
        "\"P40D\"",
        "\"walk\"",
        "\"wait\"",
        "\"carry\"",
        "\"boat\"",
        "\"aircraft\"",
        "\"stop\"",
        "\"daylight\"",
        "\"2031-02-30T00:00:00Z\"",
        "\"tobler\"",
        "\"boulders\"",
        "[]",
        "{}",
        "[{\"mode\":\"wait\",\"p10\":1,\"p90\":2}]",
        "{\"legs\":[]}",
        "{\"probability\":0.5,\"low\":1,\"likely\":2,\"high\":3}",
    ];

    private static readonly string[] Names =
    [
        "mode",
        "low",
        "likely",
        "high",
        "p10",
        "p50",
        "p90",
        "track",
        "distanceKm",
        "ascentM",
        "descentM",
        "terrain",
        "bearers",
        "dark",
        "window",
        "hold",
        "rule",
        "spread",
        "snowCm",
        "wheel",
        "ropePitches",
        "packaging",
        "speedKmh",
        "branches",
        "first",
        "all",
        "waitFor",
        "try",
        "closes",
        "until",
        "onward",
        "otherwise",
        "probability",
        "legs",
        "name",
        "note",
        "from",
        "lat",
        "start",
        "timeZone",
        "correlation",
        "lambda",
        "Mode",
        "speed",
    ];

    [Fact]
    public void The_reader_and_the_schema_agree_over_mutated_plans()
    {
        var (usable, refused) = (0, 0);
        Gen.Select(Gen.Int[0, Seeds.Length - 1], Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 2], OneOf(Names), OneOf(Values)).Array[0, 3])
            .Sample(
                (seed, changes) =>
                {
                    var json = JsonNode.Parse(Seeds[seed])!;
                    foreach (var (place, kind, name, value) in changes)
                        Mutate(json, place, kind, name, value);
                    var text = json.ToJsonString();
                    var valid = Valid(text);
                    var read = SomePlan.Tried(text);
                    if (read is Read<Plan>.Refused(var why))
                    {
                        Interlocked.Increment(ref refused);
                        Assert.True(
                            !valid || why.All(r => BeyondSchema.Any(b => r.Reason.Contains(b, StringComparison.Ordinal))),
                            $"the schema allows {text}\n{string.Join("\n", why)}"
                        );
                    }
                    else
                    {
                        Interlocked.Increment(ref usable);
                        Assert.True(valid, $"the reader takes, the schema not: {text}");
                    }
                },
                iter: 2000
            );
        Assert.True(usable > 200 && refused > 500, $"{usable} usable, {refused} refused: too one-sided to tell");
    }

    [Fact]
    public void Every_shipped_plan_reads_and_fits_the_schema()
    {
        var plans = Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "plans"), "*.plan.json");
        Assert.NotEmpty(plans);
        Assert.All(
            plans,
            path =>
            {
                Assert.True(Valid(File.ReadAllText(path)), path);
                Assert.IsType<Read<Plan>.Usable>(PlanReader.Read(File.ReadAllBytes(path), path));
            }
        );
    }

    [Fact]
    public void Reading_arbitrary_bytes_refuses_and_never_fails() =>
        Gen.Byte.Array[0, 60].Sample(bytes => Assert.IsType<Read<Plan>.Refused>(PlanReader.Read(bytes, "x")));

    private static Gen<string> OneOf(string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static bool Valid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
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

    private static IEnumerable<JsonObject> Objects(JsonNode? node) =>
        node switch
        {
            JsonObject o => o.Select(f => f.Value).SelectMany(Objects).Prepend(o),
            JsonArray a => a.SelectMany(Objects),
            _ => [],
        };
}
