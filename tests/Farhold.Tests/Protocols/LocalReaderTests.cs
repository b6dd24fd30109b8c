using static Farhold.Tests.Protocols.LocalFile;

namespace Farhold.Tests.Protocols;

public class LocalReaderTests
{
    [Theory]
    [InlineData("\"clock\":{\"limit\":\"PT4H\"}", "the time limit is 4 h 00 min instead of 6 h 00 min")]
    [InlineData("\"clock\":{\"limit\":\"PT3H\"}", "the time limit is 3 h 00 min instead of 6 h 00 min")]
    [InlineData("\"clock\":{\"window\":\"PT90M\"}", "the first window is 1 h 30 min instead of 2 h 00 min")]
    [InlineData("\"clock\":{\"soon\":\"PT3H\"}", "help counts as soon within 3 h 00 min instead of 2 h 00 min")]
    [InlineData("\"clock\":{\"soonProbability\":0.95}", "a forecast counts for soon at a probability of 0.95 instead of 0.9")]
    [InlineData("\"freshness\":{\"heartRate\":\"PT10M\"}", "heart rate stays fresh 10 min instead of 15 min")]
    [InlineData("\"careFreshness\":{\"pain\":\"PT1H\"}", "for tasks, pain stays fresh 1 h 00 min instead of 4 h 00 min")]
    public void What_only_tightens_a_number_within_bounds_needs_no_signature(string change, string told)
    {
        var local = AcceptedUnsigned($"{Bare},\n{change}}}").Local!;
        Assert.Equal((Standing.Unsigned, null), (local.Standing, local.Issuer));
        Assert.Equal([told], local.Changes);
        Assert.Empty(local.Loosened);
        Assert.Equal([told], Accepted($"{Head},\n{change}{Authorised}}}").Local!.Changes.Except([HutsBook]));
    }

    /// <summary>A limit of one minute is as refused as one that is too long, also where it is signed.</summary>
    [Theory]
    [InlineData("\"clock\":{\"limit\":\"PT2H59M\"}")]
    [InlineData("\"clock\":{\"limit\":\"PT1M\",\"window\":\"PT1M\"}")]
    [InlineData("\"clock\":{\"window\":\"PT59M\"}")]
    [InlineData("\"clock\":{\"soon\":\"PT6H1M\"}")]
    [InlineData("\"clock\":{\"soonProbability\":0.995}")]
    [InlineData("\"freshness\":{\"heartRate\":\"PT9M\"}")]
    [InlineData("\"careFreshness\":{\"pain\":\"PT59M\"}")]
    public void What_forbids_everything_is_refused_whoever_signs(string change)
    {
        Assert.All(
            RefusedUnsigned($"{Bare},\n{change}}}"),
            r => Assert.Contains("tighter than a local protocol may be, whoever signs", r.Reason, StringComparison.Ordinal)
        );
        Assert.All(
            Refused($"{Head},\n{change}{Authorised}}}"),
            r => Assert.Contains("tighter than a local protocol may be, whoever signs", r.Reason, StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("\"clock\":{\"limit\":\"PT6H1M\"}")]
    [InlineData("\"clock\":{\"window\":\"PT3H1M\"}")]
    [InlineData("\"clock\":{\"soon\":\"PT59M\"}")]
    [InlineData("\"clock\":{\"soonProbability\":0.59}")]
    [InlineData("\"freshness\":{\"helpWithin\":\"PT8H1M\"}")]
    [InlineData(
        "\"steps\":[{\"id\":\"hold\",\"text\":\"Press.\",\"minimum\":{\"haemostatic-gauze\":\"PT1M\",\"plain-gauze\":\"PT10M\","
            + "\"cloth\":\"PT10M\"},\"sources\":[\"hut\"]}]"
    )]
    [InlineData(
        "\"steps\":[{\"id\":\"hold\",\"text\":\"Press.\",\"minimum\":{\"haemostatic-gauze\":\"PT3M\",\"plain-gauze\":\"PT10M\"},"
            + "\"sources\":[\"hut\"]}]"
    )]
    public void What_allows_too_much_is_refused_whoever_signs(string change) =>
        Assert.Contains("whoever signs", Assert.Single(Refused($"{Head},\n{change}{Authorised}}}")).Reason, StringComparison.Ordinal);

    [Theory]
    [InlineData("\"clock\":{\"window\":\"PT3H\"}", 9, "the first window is 3 h 00 min instead of 2 h 00 min")]
    [InlineData("\"clock\":{\"soon\":\"PT1H\"}", 9, "help counts as soon within 1 h 00 min instead of 2 h 00 min")]
    [InlineData("\"clock\":{\"soonProbability\":0.6}", 9, "a forecast counts for soon at a probability of 0.6 instead of 0.9")]
    [InlineData("\"freshness\":{\"helpWithin\":\"PT8H\"}", 27, "help, at the latest in stays fresh 8 h 00 min instead of 4 h 00 min")]
    [InlineData("\"careFreshness\":{\"pain\":\"PT8H\"}", 25, "for tasks, pain stays fresh 8 h 00 min instead of 4 h 00 min")]
    public void A_number_that_loosens_needs_a_signature_and_is_told(string change, int column, string what)
    {
        var refusal = Assert.Single(RefusedUnsigned($"{Bare},\n{change}}}"));
        Assert.Equal((3, column, $"this needs a signature: {what}"), (refusal.Line, refusal.Column, refusal.Reason));
        Assert.Equal([what], Accepted($"{Head},\n{change}}}").Local!.Loosened);
    }

    [Theory]
    [InlineData("\"criteria\":[{\"id\":\"shock.pale\",\"drop\":true}]", "shock.pale is dropped")]
    [InlineData("\"criteria\":[{\"id\":\"help.soon\",\"drop\":true}]", "help.soon is dropped")]
    [InlineData("\"criteria\":[{\"id\":\"rest.cold\",\"drop\":true}]", "rest.cold is dropped")]
    [InlineData("\"tasks\":[{\"id\":\"signs\",\"drop\":true}]", "the task signs is dropped")]
    [InlineData(
        "\"steps\":[{\"id\":\"hold\",\"text\":\"Press.\",\"minimum\":{\"haemostatic-gauze\":\"PT2M\",\"plain-gauze\":\"PT10M\","
            + "\"cloth\":\"PT10M\"},\"sources\":[\"hut\"]}]",
        "the step hold is changed"
    )]
    public void What_is_on_the_list_is_loosened_by_a_signature_and_told(string change, string what)
    {
        var local = Accepted($"{Head},{change}}}").Local!;
        Assert.StartsWith(what, Assert.Single(local.Loosened), StringComparison.Ordinal);
        Assert.Contains(local.Loosened[0], local.Changes);
    }

    /// <summary>A trusted signature stands on all of these; none of it helps.</summary>
    [Theory]
    [InlineData("\"freshness\":{\"heartRate\":\"PT20M\"}")]
    [InlineData("\"freshness\":{\"bleeding\":\"PT50M\"}")]
    [InlineData("\"freshness\":{\"pale\":\"PT16M\"}")]
    [InlineData("\"criteria\":[{\"id\":\"materials.packing\",\"drop\":true}]")]
    [InlineData("\"criteria\":[{\"id\":\"late.oversight\",\"drop\":true}]")]
    [InlineData("\"criteria\":[{\"id\":\"advice.no\",\"drop\":true}]")]
    [InlineData(
        "\"criteria\":[{\"id\":\"bleeding.active\",\"role\":\"forbids\",\"hard\":true,\"text\":\"B.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"bleeding\",\"in\":[\"none\"]}}]"
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"shock.heart-rate\",\"role\":\"forbids\",\"group\":\"shock\",\"hard\":true,\"text\":\"H.\","
            + "\"sources\":[\"hut\"],\"when\":{\"input\":\"heartRate\",\"above\":130}}]"
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"timeOn\",\"atLeast\":\"PT7H\"}}]"
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"timeOn\",\"above\":\"limit\"}}]"
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"occluded\",\"atLeast\":\"limit\"}}]"
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"limit.time\",\"role\":\"forbids\",\"hard\":true,\"text\":\"L.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"all\":[{\"input\":\"timeOn\",\"atLeast\":\"limit\"},{\"input\":\"dizzy\",\"is\":true}]}}]"
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"watch.able\",\"role\":\"requires\",\"hard\":true,\"text\":\"W.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"any\":[{\"input\":\"watchAble\",\"is\":true},{\"input\":\"dizzy\",\"is\":false}]}}]"
    )]
    [InlineData("\"watch\":{\"text\":\"Look.\",\"periods\":[{\"every\":\"PT1H\"}],\"sources\":[\"hut\"]}")]
    [InlineData("\"steps\":[{\"id\":\"slacken\",\"text\":\"S.\",\"minimum\":{\"\":\"PT1M\"},\"gate\":\"mouth\",\"sources\":[\"hut\"]}]")]
    public void What_is_on_no_list_is_loosened_by_nobody(string change) =>
        Assert.Contains(
            Refused($"{Head},{change}{Authorised}}}"),
            r => r.Reason.Contains("this can't be loosened, whoever signs", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData(
        "\"criteria\":[{\"id\":\"wound.amputation\",\"role\":\"forbids\",\"text\":\"A.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"woundNature\",\"in\":[\"amputation\"]}}]"
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"wound.amputation\",\"role\":\"awaits\",\"hard\":true,\"text\":\"A.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"woundNature\",\"in\":[\"amputation\"]}}]"
    )]
    public void A_hard_limit_keeps_its_role_group_and_hardness(string change) =>
        Assert.Contains(
            Refused($"{Head},{change}{Authorised}}}"),
            r => r.Reason.Contains("role, group and hardness can't be changed", StringComparison.Ordinal)
        );

    [Theory]
    [InlineData(
        "\"criteria\":[{\"id\":\"hut.cold\",\"role\":\"forbids\",\"text\":\"Cold.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"temperatureC\",\"below\":34}}]",
        "added hut.cold: Cold."
    )]
    [InlineData(
        "\"criteria\":[{\"id\":\"bleeding.active\",\"role\":\"forbids\",\"hard\":true,\"text\":\"Bleeds.\",\"sources\":[\"hut\"],"
            + "\"when\":{\"input\":\"bleeding\",\"in\":[\"oozing\",\"active\"]}}]",
        "bleeding.active is changed: Bleeds."
    )]
    [InlineData(
        "\"steps\":[{\"id\":\"hold\",\"text\":\"Press.\",\"minimum\":{\"haemostatic-gauze\":\"PT5M\",\"plain-gauze\":\"PT10M\","
            + "\"cloth\":\"PT10M\"},\"sources\":[\"hut\"]}]",
        "the step hold is changed: Press."
    )]
    [InlineData(
        "\"watch\":{\"text\":\"Look.\",\"periods\":[{\"until\":\"PT20M\"},{\"until\":\"PT2H\",\"every\":\"PT2M\"},"
            + "{\"every\":\"PT1H\"}],\"sources\":[\"hut\"]}",
        "the watch after slackening is changed: Look."
    )]
    public void A_rule_that_tightens_is_signed_too_and_is_no_loosening(string change, string told)
    {
        var local = Accepted($"{Head},{change}}}").Local!;
        Assert.Empty(local.Loosened);
        Assert.Contains(local.Changes, c => c.StartsWith(told, StringComparison.Ordinal));
        Assert.Contains(
            RefusedUnsigned($"{Bare},{change}}}"),
            r => r.Reason.Contains("needs a signature: without one", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Every_rewording_is_told()
    {
        const string Hard =
            "\"criteria\":[{\"id\":\"shock.mental\",\"role\":\"forbids\",\"group\":\"shock\",\"hard\":true,\"stops\":true,"
            + "\"text\":\"Not clear.\",\"sources\":[\"hut\"],\"when\":{\"input\":\"mental\",\"in\":[\"confused\",\"voice\",\"pain\","
            + "\"unresponsive\"]}}]";
        Assert.Contains(
            Accepted($"{Head},{Hard}}}").Local!.Changes,
            c => c.StartsWith("shock.mental is reworded: Not clear.", StringComparison.Ordinal)
        );
        const string Acts =
            "\"criteria\":[{\"id\":\"materials.packing\",\"role\":\"requires\",\"text\":\"There is gauze.\",\"acts\":[{\"text\":\"Tear "
            + "a shirt.\"}],\"sources\":[\"hut\"],\"when\":{\"input\":\"packing\",\"is\":true}}]";
        Assert.Contains(
            Accepted($"{Head},{Acts}}}").Local!.Changes,
            c =>
                c.StartsWith(
                    "materials.packing is reworded: There is gauze. Asks: material to pack with is true.",
                    StringComparison.Ordinal
                ) && c.Contains("Tear a shirt.", StringComparison.Ordinal)
        );
        const string Shipped = "\"sources\":{\"TCCC\":{\"title\":\"Anything\",\"known\":\"local\"}}";
        Assert.Equal(["the source TCCC is changed: Anything (local)"], Accepted($"{Bare},\"title\":\"T\",{Shipped}}}").Local!.Changes);
    }

    /// <summary>Without them a step would lose its gate and the longer pressure for thinned blood by silence.</summary>
    [Fact]
    public void What_a_step_does_not_name_stays()
    {
        var shipped = ShippedProtocol.Protocol;
        var laid = Accepted(
            $$"""{{Head}},"steps":[{"id":"slacken","text":"Slowly.","minimum":{"":"PT2M"},"sources":["hut"]},{"id":"hold","text":"Press.","minimum":{"haemostatic-gauze":"PT3M","plain-gauze":"PT10M","cloth":"PT10M"},"sources":["hut"]},{"id":"pack","text":"Pack.","minimum":{},"sources":["hut"]}]}"""
        );
        Assert.Equal(shipped.Steps.Select(s => (s.Gate, s.Twice is null)), laid.Steps.Select(s => (s.Gate, s.Twice is null)));
        Assert.Equal(shipped.Steps[0].Before, laid.Steps[0].Before);
    }

    public static TheoryData<string> HardLimits => [.. ShippedProtocol.Protocol.Criteria.Where(c => c.Hard).Select(c => c.Id)];

    /// <summary>Bleeding, the whole record, six hours, amputation, strong signs of shock, the watch and the looks.</summary>
    [Theory, MemberData(nameof(HardLimits))]
    public void No_hard_limit_is_dropped_whoever_signs(string id) =>
        Assert.Contains(
            "can't be dropped, whoever signs",
            Assert.Single(Refused($$"""{{Head}},"criteria":[{"id":"{{id}}","drop":true}]{{Authorised}}}""")).Reason,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("{\"local\":\"hut\",", 1, 15, "this is not JSON")]
    [InlineData("{\"local\":\"hut\",\n\"local\":\"hut\"}", 2, 1, "local is given twice")]
    [InlineData(
        "{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\"mood\":1}",
        2,
        24,
        "mood is not known here"
    )]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"else\"}", 2, 9, "meant for else, not for farhold-base")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\n\"over\":\"farhold-base\"}", 1, 1, "title is missing")]
    [InlineData("{\"local\":\"Hut\",\"version\":\"1\"}", 1, 10, "up to 32 of a to z")]
    [InlineData("{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\u202E\"}", 1, 38, "a character that can't be seen")]
    [InlineData(
        "{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\n\"criteria\":[{\"id\":\"no.such\","
            + "\"drop\":true}]}",
        3,
        13,
        "there is no criterion no.such to drop"
    )]
    [InlineData(
        "{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\n\"authority\":{\"name\":\"Anna\","
            + "\"role\":\"nurse\",\"date\":\"soon\"}}",
        3,
        50,
        "date has to be a date such as 2031-05-04"
    )]
    [InlineData(
        "{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\n\"authority\":{\"name\":\"x\","
            + "\"role\":\"nurse\",\"date\":\"2031-01-10\"}}",
        3,
        21,
        "the name has to have at least two letters"
    )]
    [InlineData(
        "{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\n \"over\":\"farhold-base\",\n\"clock\":{\"window\":\"PT5H\","
            + "\"limit\":\"PT4H\"}}",
        3,
        9,
        "the window can't be longer than the limit"
    )]
    [InlineData(
        "{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\"over\":\"farhold-base\",\n\"watch\":{\"text\":\"Look.\","
            + "\"periods\":[],\"sources\":[]}}",
        2,
        35,
        "the last period of the watch has no until, all others have one"
    )]
    [InlineData(
        "{\"local\":\"hut\",\"version\":\"1\",\"title\":\"T\",\"over\":\"farhold-base\",\n\"watch\":{\"text\":\"Look.\","
            + "\"periods\":[{\"every\":\"PT2M\",\"until\":\"PT3H\"}],\"sources\":[]}}",
        2,
        35,
        "the last period of the watch has no until, all others have one"
    )]
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
    public void Drugs_are_ordered_by_a_named_authority_under_a_verified_signature_or_not_at_all()
    {
        const string Orders = "\"orders\":[\"paracetamol\"]";
        Assert.Contains(
            "needs a named authority: drugs are ordered: paracetamol",
            Assert.Single(Refused($"{Head},\n{Orders}}}")).Reason,
            StringComparison.Ordinal
        );
        Assert.Equal(["paracetamol"], Accepted($"{Head},\n{Orders}{Authorised}}}").Local!.Orders);
        Assert.Contains(
            "willow is no drug of the formulary",
            Assert.Single(Refused($"{Head},\n\"orders\":[\"willow\"]{Authorised}}}")).Reason,
            StringComparison.Ordinal
        );
    }
}
