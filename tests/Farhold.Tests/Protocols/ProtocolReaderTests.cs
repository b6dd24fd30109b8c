using System.Text;

namespace Farhold.Tests.Protocols;

/// <summary>Files with one fault each, made from the shipped protocol: the reason, and what stands where it is told to be.</summary>
public class ProtocolReaderTests
{
    private static readonly string Shipped = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "protocols", "farhold-base.json"))
        .Replace("\r", "", StringComparison.Ordinal);

    [Theory]
    [InlineData("""{"input":"heartRate","above":100,"mood":1}""", "mood is not known here", "\"mood\"")]
    [InlineData("""{"not":{"input":"pale","is":true},"mood":1}""", "mood is not known here", "\"mood\"")]
    [InlineData("""{"all":[{"input":"pale","is":true}],"mood":1}""", "mood is not known here", "\"mood\"")]
    [InlineData("""{"any":[]}""", "any needs at least one condition", "{\"any\"")]
    [InlineData("""{"all":[]}""", "all needs at least one condition", "{\"all\"")]
    [InlineData("""{"all":[{"input":"pale","is":true},{"input":"nose","is":true}]}""", "there is no input nose; there are ", "\"nose\"")]
    [InlineData("""{"any":[{"input":"nose","is":true}]}""", "there is no input nose", "\"nose\"")]
    [InlineData("""{"not":{"input":"nose","is":true}}""", "there is no input nose", "\"nose\"")]
    [InlineData("""{"above":1}""", "a condition has to be one of all, any, not, or an input with what it is held against", "{\"above\"")]
    [InlineData("""[]""", "a condition has to be an object", "[]")]
    [InlineData("""{"input":"heartRate"}""", "an input is held against exactly one of in, is, above, atLeast, below, atMost", "{\"input\"")]
    [InlineData("""{"input":"heartRate","above":1,"below":2}""", "held against exactly one of", "{\"input\"")]
    [InlineData("""{"input":"pale","is":"yes"}""", "is has to be true or false", "\"yes\"")]
    [InlineData("""{"input":"mental","is":true}""", "mental is not a flag", "true")]
    [InlineData("""{"input":"heartRate","in":["fast"]}""", "heartRate is not a word", "[\"fast\"]")]
    [InlineData("""{"input":"pale","above":1}""", "pale is not a number", "1}")]
    [InlineData(
        """{"input":"mental","in":["alert","drunk"]}""",
        "mental has to be one of alert, confused, voice, pain, unresponsive",
        "\"drunk\""
    )]
    [InlineData("""{"input":"mental","in":[true]}""", "mental has to be one of", "true")]
    [InlineData("""{"input":"mental","in":[]}""", "in needs at least one word", "[]")]
    [InlineData("""{"input":"mental","in":["alert"],"byAge":[]}""", "only numbers have limits by age", "[]")]
    [InlineData("""{"input":"heartRate","above":"many"}""", "heartRate", "\"many\"")]
    [InlineData("""{"input":"occluded","above":"long"}""", "occluded (or one of window, limit, soon)", "\"long\"")]
    [InlineData(
        """{"input":"heartRate","above":1,"byAge":[{"from":0,"under":5,"limit":1,"mood":2}]}""",
        "mood is not known here",
        "\"mood\""
    )]
    [InlineData("""{"input":"heartRate","above":1,"byAge":[3]}""", "a band has to be an object", "3]")]
    [InlineData("""{"input":"heartRate","above":1,"byAge":[{"from":0,"under":5}]}""", "limit is missing", "{\"from\"")]
    [InlineData(
        """{"input":"heartRate","above":1,"byAge":[{"from":-1,"under":5,"limit":1}]}""",
        "bands run upwards from 0 years and do not overlap",
        "{\"from\":-1"
    )]
    [InlineData("""{"input":"heartRate","above":1,"byAge":[{"from":5,"under":5,"limit":1}]}""", "bands run upwards", "{\"from\":5")]
    [InlineData(
        """{"input":"heartRate","above":1,"byAge":[{"from":0,"under":5,"limit":1},{"from":4,"under":8,"limit":1}]}""",
        "bands run upwards",
        "{\"from\":4"
    )]
    public void A_faulty_condition_is_refused_where_it_is_faulty(string when, string reason, string at) =>
        Refuses(
            Shipped.Replace(
                "\"criteria\": [",
                "\"criteria\": [{\"id\":\"x\",\"role\":\"forbids\",\"text\":\"X.\",\"sources\":[\"common\"],\"when\":" + when + "},",
                StringComparison.Ordinal
            ),
            reason,
            at
        );

    [Theory]
    [InlineData("""{"input":"heartRate","above":1,"byAge":[{"from":0,"under":5,"limit":1},{"from":5,"under":8,"limit":1}]}""")]
    [InlineData("""{"not":{"input":"occluded","atMost":"window"}}""")]
    [InlineData(
        """{"any":[{"input":"occluded","below":"PT10M"},{"input":"mental","in":["alert"]},{"all":[{"input":"pale","is":false}]}]}"""
    )]
    public void A_sound_condition_is_read(string when) =>
        Assert.IsType<Read<Protocol>.Usable>(
            Read(
                Shipped.Replace(
                    "\"criteria\": [",
                    "\"criteria\": [{\"id\":\"x\",\"role\":\"forbids\",\"text\":\"X.\",\"sources\":[\"common\"],\"when\":" + when + "},",
                    StringComparison.Ordinal
                )
            )
        );

    [Theory]
    [InlineData("\"clock\": {", "\"clock\": {\"mood\": 1, ", "mood is not known here", "\"mood\"")]
    [InlineData("\"clock\": {", "\"clock\": [], \"x\": {", "clock has to be an object", "[]")]
    [InlineData("\"window\": \"PT2H\",", "", "window is missing", "{")]
    [InlineData("\"window\": \"PT2H\"", "\"window\": \"PT7H\"", "the window can't be longer than the limit", "{")]
    [InlineData("\"title\": \"Converting", "\"mood\": 1, \"title\": \"Converting", "mood is not known here", "\"mood\"")]
    [InlineData("\"common\": { ", "\"common\": { \"mood\": 1, ", "mood is not known here", "\"mood\"")]
    [InlineData(
        "\"known\": \"common practice\" }",
        "\"known\": \"hearsay\" }",
        "known has to be one of read, read-2, memory, design, common practice, local",
        "\"hearsay\""
    )]
    [InlineData("\"sources\": {", "\"sources\": {\"odd\": 3, ", "a source has to be an object", "3,")]
    [InlineData("\"freshness\": {", "\"freshness\": {\"ageYears\": \"PT1H\", ", "ageYears is no input that goes stale", "\"ageYears\"")]
    [InlineData("\"freshness\": {", "\"freshness\": {\"nose\": \"PT1H\", ", "nose is no input that goes stale", "\"nose\"")]
    [InlineData("\"criteria\": [", "\"criteria\": [7, ", "a criterion has to be an object", "7,")]
    [InlineData("\"id\": \"wound.amputation\",", "\"id\": \"wound.amputation\", \"mood\": 1,", "mood is not known here", "\"mood\"")]
    [InlineData("\"id\": \"shock.pale\"", "\"id\": \"shock.dizzy\"", "criterion shock.dizzy is given twice", "{")]
    [InlineData("\"steps\": [", "\"steps\": [8, ", "a step has to be an object", "8,")]
    [InlineData("\"id\": \"pack\",", "\"id\": \"pack\", \"mood\": 1,", "mood is not known here", "\"mood\"")]
    [InlineData("\"id\": \"pack\"", "\"id\": \"hold\"", "steps have to be pack, hold, dress, slacken, watch, in this order", "{")]
    [InlineData(
        "\"plain-gauze\": \"PT10M\",",
        "\"moss\": \"PT10M\",",
        "minimum has to be by haemostatic-gauze, plain-gauze, cloth or \"\" for any",
        "\"moss\""
    )]
    [InlineData("\"periods\": [", "\"mood\": 1, \"periods\": [", "mood is not known here", "\"mood\"")]
    [InlineData("\"periods\": [", "\"periods\": [9, ", "a period has to be an object", "9,")]
    [InlineData("{ \"until\": \"PT15M\" }", "{ \"until\": \"PT15M\", \"mood\": 1 }", "mood is not known here", "\"mood\"")]
    [InlineData(
        "\"until\": \"PT15M\"",
        "\"until\": \"PT1H\"",
        "periods run on: each ends later than the one before",
        "{ \"until\": \"PT1H\", \"every\""
    )]
    [InlineData("\"until\": \"PT1H\", ", "", "periods run on: each ends later than the one before", "{ \"until\": \"PT2H\"")]
    [InlineData(
        "{ \"every\": \"PT1H\" }",
        "{ \"until\": \"PT9H\", \"every\": \"PT1H\" }",
        "the last period of the watch has no until, all others have one",
        "["
    )]
    [InlineData("{ \"every\": \"PT1H\" }", "{}", "the last period needs an every", "{}")]
    [InlineData("\"tasks\": [", "\"tasks\": [4, ", "a task has to be an object", "4,")]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"every\":\"PT1H\",\"doneBy\":[],\"sources\":[\"common\"],"
            + "\"mood\":1}, ",
        "mood is not known here",
        "\"mood\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"doneBy\":[],\"sources\":[\"common\"]}, ",
        "a task is done once, or every so often",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"limb\",\"text\":\"X.\",\"once\":\"PT1H\",\"every\":\"PT1H\",\"doneBy\":[],"
            + "\"sources\":[\"common\"]}, ",
        "a task is done once, or every so often",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"limb\",\"text\":\"X.\",\"once\":\"PT1H\",\"unstable\":\"PT1H\",\"doneBy\":[],"
            + "\"sources\":[\"common\"]}, ",
        "a task is done once, or every so often",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"once\":\"window\",\"doneBy\":[],\"sources\":[\"common\"]}, ",
        "its scope has to be limb",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"loosened\",\"text\":\"X.\",\"once\":\"PT1H\",\"doneBy\":[],\"sources\":[\"common\"]}, ",
        "or from the injury",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"once\":\"PT1H\",\"drugs\":[\"a\"],\"doneBy\":[],"
            + "\"sources\":[\"common\"]}, ",
        "a task about drugs is done by drug.given",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"once\":\"PT1H\",\"drugs\":[7],\"doneBy\":[\"drug.given\"],"
            + "\"sources\":[\"common\"]}, ",
        "drugs is a list of names",
        "7]"
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"once\":\"PT1H\","
            + "\"unless\":{\"input\":\"pale\",\"is\":true},\"doneBy\":[],\"sources\":[\"common\"]}, ",
        "unless goes with instead",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"once\":\"PT1H\",\"instead\":\"Y.\","
            + "\"unless\":{\"input\":\"bleeding\",\"in\":[\"none\"]},\"doneBy\":[],\"sources\":[\"common\"]}, ",
        "can't ask about a limb",
        "{\"id\":\"x\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"every\":\"PT1H\",\"doneBy\":[\"dance\"],"
            + "\"sources\":[\"common\"]}, ",
        "there is no kind of entry dance",
        "\"dance\""
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"every\":\"PT1H\",\"doneBy\":[],\"sources\":[]}, ",
        "at least one source has to be named",
        "[]}"
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"every\":\"PT1H\",\"doneBy\":[],\"sources\":[5]}, ",
        "a source has to be a text, the key it has under sources, not 5",
        "5]}"
    )]
    [InlineData(
        "\"tasks\": [",
        "\"tasks\": [{\"id\":\"x\",\"scope\":\"casualty\",\"text\":\"X.\",\"every\":\"PT1H\",\"doneBy\":[],\"sources\":[\"nobody\"]}, ",
        "nobody",
        "{"
    )]
    public void A_fault_is_refused_where_it_is(string find, string put, string reason, string at)
    {
        Assert.Contains(find, Shipped, StringComparison.Ordinal);
        var first = Shipped.IndexOf(find, StringComparison.Ordinal);
        Refuses(string.Concat(Shipped.AsSpan(0, first), put, Shipped.AsSpan(first + find.Length)), reason, at);
    }

    [Fact]
    public void Every_input_that_goes_stale_and_is_asked_about_needs_to_say_how_long_it_stays_fresh()
    {
        foreach (var (name, _) in ShippedProtocol.Protocol.Freshness)
        {
            var lines = Shipped.Split('\n');
            var first = Array.FindIndex(lines, l => l.Contains("\"freshness\"", StringComparison.Ordinal));
            var at = Array.FindIndex(lines, first, l => l.Contains($"\"{name}\"", StringComparison.Ordinal));
            var asked = ShippedProtocol.Protocol.Criteria.Any(c => c.Condition.Inputs.Any(i => i.Name == name));
            var left = System.Text.RegularExpressions.Regex.Replace(lines[at], $"\"{name}\": \"[A-Z0-9]+\",?", "");
            lines[at] = left;
            var text = System.Text.RegularExpressions.Regex.Replace(string.Join('\n', lines), @",(\s*})", "$1");
            if (asked)
                Refuses(text, $"freshness has to say how long {name} stays fresh", "{");
            else
                Assert.IsType<Read<Protocol>.Usable>(Read(text));
        }
    }

    [Fact]
    public void A_protocol_that_only_awaits_is_none()
    {
        var from = Shipped.IndexOf("\"criteria\": [", StringComparison.Ordinal);
        var to = Shipped.IndexOf("\"steps\": [", StringComparison.Ordinal);
        Refuses(
            string.Concat(
                Shipped.AsSpan(0, from),
                "\"criteria\": [{\"id\":\"x\",\"role\":\"awaits\",\"text\":\"X.\",\"sources\":[\"common\"],"
                    + "\"when\":{\"input\":\"ageYears\",\"above\":1}}], ",
                Shipped.AsSpan(to)
            ),
            "a protocol needs criteria that forbid or require something",
            "{"
        );
    }

    [Fact]
    public void What_the_shipped_file_says_is_what_is_read()
    {
        var read = Assert.IsType<Read<Protocol>.Usable>(Read(Shipped)).Value;
        Assert.Equal(
            ClockLimits.UsualSoonProbability,
            Assert
                .IsType<Read<Protocol>.Usable>(Read(Shipped.Replace(", \"soonProbability\": 0.9", "", StringComparison.Ordinal)))
                .Value.Clock.SoonProbability
        );
        Assert.Equal(["pack", "hold", "dress", "slacken", "watch"], read.Steps.Select(s => Wire.Word(s.Id)));
        Assert.Equal(Duration.FromMinutes(3), read.Steps[1].Minimum["haemostatic-gauze"]);
        Assert.Equal(
            [Duration.FromMinutes(15), Duration.FromHours(1), Duration.FromHours(2), null],
            read.Watch.Periods.Select(p => p.Until)
        );
    }

    private static void Refuses(string text, string reason, string at)
    {
        var refusals = Assert.IsType<Read<Protocol>.Refused>(Read(text)).Refusals;
        var refusal = Assert.Single(refusals, r => r.Reason.Contains(reason, StringComparison.Ordinal));
        Assert.StartsWith(at, text.Split('\n')[refusal.Line - 1][(refusal.Column - 1)..], StringComparison.Ordinal);
    }

    private static Read<Protocol> Read(string text) => ProtocolReader.Read(Encoding.UTF8.GetBytes(text), "p.json");
}
