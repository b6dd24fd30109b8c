using static Farhold.Tests.Protocols.LocalFile;

namespace Farhold.Tests.Protocols;

public class LocalReaderTests
{
    [Theory]
    [InlineData("""
        "clock":{"limit":"PT4H"}
        """)]
    [InlineData("""
        "clock":{"window":"PT90M"}
        """)]
    [InlineData("""
        "clock":{"soon":"PT3H"}
        """)]
    [InlineData("""
        "freshness":{"heartRate":"PT10M"}
        """)]
    [InlineData("""
        "criteria":[{"id":"hut.cold","role":"forbids","text":"Cold.","sources":["hut"],"when":{"input":"temperatureC","below":34}}]
        """)]
    [InlineData("""
        "criteria":[{"id":"bleeding.active","role":"forbids","hard":true,"text":"Bleeds.","sources":["hut"],"when":{"input":"bleeding","in":["oozing","active"]}}]
        """)]
    [InlineData("""
        "steps":[{"id":"hold","text":"Press.","minimum":{"haemostatic-gauze":"PT5M","plain-gauze":"PT10M","cloth":"PT10M"},"sources":["hut"]}]
        """)]
    [InlineData("""
        "watch":{"text":"Look.","periods":[{"until":"PT20M"},{"until":"PT2H","every":"PT2M"},{"every":"PT1H"}],"sources":["hut"]}
        """)]
    public void What_only_tightens_needs_no_signature(string change)
    {
        var local = Accepted(Head + ",\n" + change + "}").Local!;
        Assert.Null(local.Authority);
        Assert.Empty(local.Loosened);
        Assert.NotEmpty(local.Changes);
    }

    [Theory]
    [InlineData("\"clock\":{\"limit\":\"PT7H\"}", 9, "the time limit is 7 h 00 min instead of 6 h 00 min")]
    [InlineData("\"clock\":{\"window\":\"PT3H\"}", 9, "the first window is 3 h 00 min instead of 2 h 00 min")]
    [InlineData("\"clock\":{\"soon\":\"PT1H\"}", 9, "help counts as soon within 1 h 00 min instead of 2 h 00 min")]
    [InlineData("\"freshness\":{\"heartRate\":\"PT20M\"}", 26, "heartRate stays fresh 20 min instead of 15 min")]
    [InlineData("\"criteria\":[{\"id\":\"shock.pale\",\"drop\":true}]", 13, "shock.pale is dropped")]
    [InlineData("\"criteria\":[{\"id\":\"help.soon\",\"drop\":true}]", 13, "help.soon is dropped")]
    [InlineData("\"tasks\":[{\"id\":\"signs\",\"drop\":true}]", 10, "the task signs is dropped")]
    [InlineData("\"criteria\":[{\"id\":\"bleeding.active\",\"role\":\"forbids\",\"hard\":true,\"text\":\"B.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"bleeding\",\"in\":[\"none\"]}}]", 13, "bleeding.active is changed")]
    [InlineData("\"criteria\":[{\"id\":\"shock.heart-rate\",\"role\":\"forbids\",\"group\":\"shock\",\"hard\":true,\"text\":\"H.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"heartRate\",\"above\":130}}]", 13, "shock.heart-rate is changed")]
    [InlineData("\"steps\":[{\"id\":\"hold\",\"text\":\"Press.\",\"minimum\":{\"haemostatic-gauze\":\"PT2M\",\"plain-gauze\":\"PT10M\",\"cloth\":\"PT10M\"},\"sources\":[\"hut\"]}]", 10, "the step hold is changed")]
    [InlineData("\"watch\":{\"text\":\"Look.\",\"periods\":[{\"every\":\"PT1H\"}],\"sources\":[\"hut\"]}", 9, "the watch after slackening is changed")]
    public void What_loosens_needs_a_named_authority(string change, int column, string what)
    {
        var refusal = Assert.Single(Refused(Head + ",\n" + change + "}"));
        Assert.Contains("needs a named authority: " + what, refusal.Reason, StringComparison.Ordinal);
        Assert.Equal((3, column), (refusal.Line, refusal.Column));
        Accepted(Head + ",\n" + change + Signed + "}");
    }

    [Fact]
    public void Rewording_a_hard_limit_needs_a_named_authority_and_every_rewording_is_told()
    {
        const string Hard = "\"criteria\":[{\"id\":\"shock.mental\",\"role\":\"forbids\",\"group\":\"shock\",\"hard\":true,\"text\":\"Confused is fine.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"mental\",\"in\":[\"confused\",\"voice\",\"pain\",\"unresponsive\"]}}]";
        Assert.Contains("needs a named authority: shock.mental is reworded: Confused is fine.", Assert.Single(Refused(Head + ",\n" + Hard + "}")).Reason, StringComparison.Ordinal);
        Assert.Equal(["shock.mental is reworded: Confused is fine."], Accepted(Head + ",\n" + Hard + Signed + "}").Local!.Changes);

        const string Soft = "\"criteria\":[{\"id\":\"materials.packing\",\"role\":\"requires\",\"text\":\"There is gauze.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"packing\",\"is\":true}}]";
        Assert.Equal(["materials.packing is reworded: There is gauze."], Accepted(Head + ",\n" + Soft + "}").Local!.Changes);
    }

    [Theory]
    [InlineData("\"clock\":{\"limit\":\"PT8H\"}", true)]
    [InlineData("\"criteria\":[{\"id\":\"shock.pale\",\"drop\":true}]", false)]
    [InlineData("\"freshness\":{\"heartRate\":\"PT20M\"}", true)]
    [InlineData("\"criteria\":[{\"id\":\"help.soon\",\"drop\":true}]", false)]
    [InlineData("\"clock\":{\"window\":\"PT3H\"}", false)]
    [InlineData("\"freshness\":{\"bleeding\":\"PT50M\"}", true)]
    public void A_hard_limit_that_is_loosened_is_told(string change, bool hard)
    {
        var local = Accepted(Head + "," + change + Signed + "}").Local!;
        Assert.Equal(hard, !local.Loosened.IsEmpty);
        Assert.Equal("Dr Vigdis Holm", local.Authority!.Name);
    }

    /// <summary>The authority's signature stands on all of these; none of it helps.</summary>
    [Theory]
    [InlineData("\"clock\":{\"limit\":\"PT8H1M\"}", "may not be longer than 8 h 00 min, whoever signs")]
    [InlineData("\"criteria\":[{\"id\":\"wound.amputation\",\"drop\":true}]", "wound.amputation is a hard limit and can't be dropped")]
    [InlineData("\"criteria\":[{\"id\":\"limit.time\",\"drop\":true}]", "limit.time is a hard limit and can't be dropped")]
    [InlineData("\"criteria\":[{\"id\":\"wound.amputation\",\"role\":\"forbids\",\"text\":\"A.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"woundNature\",\"in\":[\"amputation\"]}}]", "role, group and hardness can't be changed")]
    [InlineData("\"criteria\":[{\"id\":\"wound.amputation\",\"role\":\"awaits\",\"hard\":true,\"text\":\"A.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"woundNature\",\"in\":[\"amputation\"]}}]", "role, group and hardness can't be changed")]
    [InlineData("\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"sinceFirstTightened\",\"atLeast\":\"PT9H\"}}]", "has to forbid at 8 h 00 min")]
    [InlineData("\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"sinceFirstTightened\",\"above\":\"limit\"}}]", "has to forbid at 8 h 00 min")]
    [InlineData("\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"occluded\",\"atLeast\":\"limit\"}}]", "has to forbid at 8 h 00 min")]
    [InlineData("\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],\"when\":{\"all\":[{\"input\":\"sinceFirstTightened\",\"atLeast\":\"limit\"},{\"input\":\"dizzy\",\"is\":true}]}}]", "has to forbid at 8 h 00 min")]
    public void Some_things_no_signature_can_do(string change, string reason) =>
        Assert.Contains(Refused(Head + "," + change + Signed + "}"), r => r.Reason.Contains(reason, StringComparison.Ordinal));

    public static TheoryData<string> HardLimits => [.. ShippedProtocol.Protocol.Criteria.Where(c => c.Hard).Select(c => c.Id)];

    /// <summary>Bleeding, the whole record, six hours, amputation, strong signs of shock, the watch and the looks.</summary>
    [Theory, MemberData(nameof(HardLimits))]
    public void No_hard_limit_is_dropped_whoever_signs(string id) => Assert.Contains(
        "can't be dropped, whoever signs",
        Assert.Single(Refused($$"""{{Head}},"criteria":[{"id":"{{id}}","drop":true}]{{Signed}}}""")).Reason, StringComparison.Ordinal);

    [Theory]
    [InlineData("{\"local\":\"hut\",", 1, 15, "this is not JSON")]
    [InlineData("{\"local\":\"hut\",\n\"local\":\"hut\"}", 2, 1, "local is given twice")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\"mood\":1}", 2, 24, "mood is not known here")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"else\"}", 2, 9, "meant for else, not for farhold-base")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\n\"over\":\"farhold-base\"}", 1, 1, "title is missing")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\n\"criteria\":[{\"id\":\"no.such\",\"drop\":true}]}", 3, 13, "there is no criterion no.such to drop")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\n\"authority\":{\"name\":\"A\",\"role\":\"B\",\"date\":\"soon\"}}", 3, 43, "date has to be a date such as 2031-05-04")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\n\"clock\":{\"window\":\"PT5H\",\"limit\":\"PT4H\"}}", 3, 9, "the window can't be longer than the limit")]
    [InlineData("[]", 1, 1, "a local protocol has to be an object")]
    [InlineData("", 1, 1, "the file is empty")]
    [InlineData("\uFEFF{\"local\":}", 1, 10, "this is not JSON")]
    [InlineData("{\"local\":\"a\\ud800\"}", 1, 10, "an escape that stands for no character")]
    public void A_faulty_file_is_refused_where_it_is_faulty(string text, int line, int column, string reason)
    {
        var refusal = Refused(text).First(r => r.Reason.Contains(reason, StringComparison.Ordinal));
        Assert.Equal((line, column), (refusal.Line, refusal.Column));
    }

    [Fact]
    public void Of_very_many_faults_a_hundred_are_told()
    {
        var many = string.Join(',', Enumerable.Range(0, 100_000).Select(i => $"\"x{i}\":0"));
        Assert.Equal(100, Refused($"{{{many}}}").Length);
    }

    [Fact]
    public void The_local_protocol_of_the_demo_is_accepted_and_says_what_it_loosens()
    {
        var local = Accepted(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal-local.json"))).Local!;
        Assert.Contains(local.Changes, c => c.Contains("shock.cool is changed", StringComparison.Ordinal));
        Assert.Empty(local.Loosened); // no hard limit
        Assert.Equal(5, local.Changes.Length);
        Assert.Equal(["paracetamol", "meloxicam", "tranexamic-acid"], local.Orders);
    }

    [Fact]
    public void Drugs_are_ordered_by_a_named_authority_or_not_at_all()
    {
        const string Orders = "\"orders\":[\"paracetamol\"]";
        Assert.Contains("needs a named authority: drugs are ordered: paracetamol", Assert.Single(Refused(Head + ",\n" + Orders + "}")).Reason, StringComparison.Ordinal);
        Assert.Equal(["paracetamol"], Accepted(Head + ",\n" + Orders + Signed + "}").Local!.Orders);
        Assert.Contains("willow is no drug of the formulary", Assert.Single(Refused(Head + ",\n\"orders\":[\"willow\"]" + Signed + "}")).Reason, StringComparison.Ordinal);
    }
}
