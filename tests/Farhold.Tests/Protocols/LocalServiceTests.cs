using System.Collections.Immutable;
using System.Text;
using Farhold.Tests.Signatures;
using static Farhold.Tests.Protocols.LocalFile;

namespace Farhold.Tests.Protocols;

/// <summary>What a local protocol says of the service itself: contacts, numbers, who may allow what, names, words.</summary>
public class LocalServiceTests
{
    private const string Contact =
        "\"contacts\":[{\"name\":\"Base doctor\",\"role\":\"duty physician\",\"ways\":[{\"by\":\"phone\",\"number\":\"+47 0000-0130\"},"
        + "{\"by\":\"radio\",\"callSign\":\"Hut base\",\"channel\":\"5\"}],\"zone\":\"Europe/Oslo\","
        + "\"open\":[{\"from\":\"07:00\",\"to\":\"24:00\"},{\"days\":[\"sunday\",\"friday\"],\"from\":\"23:00\",\"to\":\"02:30\"}]}]";

    private const string Names = "\"names\":{\"haemostatic-gauze\":\"Grey roll\",\"paracetamol\":\"White strip\"}";

    [Fact]
    public void All_parts_are_read_and_each_is_a_difference()
    {
        var local = Accepted(
            $$"""
            {{Head}},{{Contact}},"emergency":[{"name":"Rescue centre","number":"0112"}],{{Names}},"words":{"terms":{"litter":"sledge"} } }
            """
        ).Local!;
        var contact = Assert.Single(local.Service.Contacts);
        Assert.Equal(("Base doctor", "duty physician"), (contact.Name, contact.Role));
        Assert.Equal(
            [new ContactWay(ContactChannel.Phone, "+47 0000-0130", null), new ContactWay(ContactChannel.Radio, "Hut base", "5")],
            contact.Ways
        );
        Assert.Equal("Europe/Oslo", contact.Hours!.Zone.Id);
        Assert.Equal([new("Rescue centre", "0112")], local.Service.Emergency);
        Assert.Equal("sledge", local.Service.Words[Term.Litter]);
        Assert.Equal(
            [
                HutsBook,
                "contact: Base doctor, duty physician: phone +47 0000-0130; radio, channel 5, call Hut base; 07:00 to 24:00 every day, "
                    + "23:00 to 02:30 on Friday, Sunday (Europe/Oslo)",
                "emergency number: Rescue centre, 0112",
                "haemostatic-gauze has \"Grey roll\" on its box",
                "paracetamol has \"White strip\" on its box",
                "for litter the service says \"sledge\"",
            ],
            local.Changes
        );
        Assert.All(local.Differences, d => Assert.Equal(Bearing.Neither, d.Bearing));
        Assert.Empty(local.Loosened);
    }

    [Theory]
    [InlineData("\"contacts\":[]")]
    [InlineData("\"emergency\":[]")]
    [InlineData("\"mayAllow\":[]")]
    [InlineData("\"names\":{}")]
    [InlineData("\"words\":{}")]
    public void Without_a_signature_none_of_it_is_taken(string part) =>
        Assert.EndsWith(
            "needs a signature: without one a local protocol may only tighten numbers",
            Assert.Single(RefusedUnsigned($"{Bare},\n{part}}}")).Reason,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(
        "\"contacts\":[{\"name\":\"A\",\"role\":\"bb\",\"ways\":[{\"by\":\"phone\",\"number\":\"112\"}]}]",
        21,
        "at least two letters"
    )]
    [InlineData("\"contacts\":[{\"name\":\"Ann\",\"role\":\"bb\",\"ways\":[]}]", 46, "at least one way")]
    [InlineData(
        "\"contacts\":[{\"name\":\"Ann\",\"role\":\"bb\",\"ways\":[{\"by\":\"pigeon\"}]}]",
        53,
        "one of phone, satellite, message, radio"
    )]
    [InlineData(
        "\"contacts\":[{\"name\":\"Ann\",\"role\":\"bb\",\"ways\":[{\"by\":\"phone\",\"number\":\"call me\"}]}]",
        70,
        "a number of 3 to 15 digits"
    )]
    [InlineData(
        "\"contacts\":[{\"name\":\"Ann\",\"role\":\"bb\",\"ways\":[{\"by\":\"phone\",\"number\":\"+1  22\"}]}]",
        70,
        "not \"+1  22\""
    )]
    [InlineData("\"emergency\":[{\"name\":\"Centre\",\"number\":\"12\"}]", 40, "not \"12\"")]
    [InlineData("\"emergency\":[{\"name\":\"Cen\\u202Etre\",\"number\":\"112\"}]", 22, "can't be seen")]
    [InlineData("\"emergency\":[{\"name\":\"Cen\\ntre\",\"number\":\"112\"}]", 22, "can't be seen")]
    [InlineData("\"mayAllow\":[{\"role\":\"team leader\",\"allows\":[\"late\"]}]", 12, "somebody has to be able to end a no")]
    [InlineData("\"mayAllow\":[{\"role\":\"lead\",\"allows\":[\"attempt\",\"limit.time\"]}]", 48, "not \"limit.time\"")]
    [InlineData("\"mayAllow\":[{\"role\":\"lead\",\"allows\":[\"attempt\",\"wound.amputation\"]}]", 48, "not \"wound.amputation\"")]
    [InlineData("\"mayAllow\":[{\"role\":\"lead\",\"allows\":[\"attempt\"],\"drugs\":[\"rum\"]}]", 58, "not \"rum\"")]
    [InlineData("\"names\":{\"gauze\":\"Grey roll\"}", 10, "gauze is no kit item or drug")]
    [InlineData("\"names\":{\"paracetamol\":\"Meloxicam box\"}", 24, "would be taken for meloxicam, not for paracetamol")]
    [InlineData("\"names\":{\"paracetamol\":\"Ibuprofen\"}", 24, "would be taken for ibuprofen, not for paracetamol")]
    [InlineData("\"names\":{\"paracetamol-500-mg\":\"TXA tin\"}", 31, "would be taken for txa")]
    [InlineData("\"names\":{\"plain-gauze\":\"haemostatic gauze\"}", 24, "would be taken for haemostatic gauze")]
    [InlineData("\"names\":{\"paracetamol\":\"Tin\",\"meloxicam\":\"TIN\"}", 42, "is the name of paracetamol already")]
    [InlineData("\"names\":{\"plain-gauze\":\"01234567890123456789012345678901234567890\"}", 24, "1 to 40 characters")]
    [InlineData("\"names\":{\"plain-gauze\":\"Roll\\\") or (\\\"X\"}", 24, "holds a quotation mark")]
    [InlineData("\"words\":{\"terms\":{\"caution\":\"hint\"}}", 19, "caution is no term that has other words")]
    [InlineData("\"words\":{\"cautions\":{}}", 10, "cautions is not known here")]
    [InlineData("\"words\":{\"tasks\":{\"rest\":\"Rest.\"}}", 19, "rest is no task here")]
    [InlineData("\"words\":{\"tasks\":{\"warmth\":\" \"}}", 28, "a text of 1 to 200 characters")]
    public void What_does_not_fit_is_refused_at_its_place(string part, int column, string reason)
    {
        var refusals = Refused($"{Head},\n{part}}}");
        Assert.Contains(refusals, r => r.Line == 3 && r.Column == column && r.Reason.Contains(reason, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("\"open\":[]", "a list of 1 to 14")]
    [InlineData("\"open\":[{\"from\":\"7:00\",\"to\":\"08:00\"}]", "from has to be a time such as 07:00, not \"7:00\"")]
    [InlineData("\"open\":[{\"from\":\"24:00\",\"to\":\"08:00\"}]", "not \"24:00\"")]
    [InlineData("\"open\":[{\"from\":\"07:00\",\"to\":\"00:00\"}]", "to has to be a time such as 22:30, or 24:00")]
    [InlineData("\"open\":[{\"from\":\"07:00\",\"to\":\"07:60\"}]", "not \"07:60\"")]
    [InlineData("\"open\":[{\"from\":\"07:00\",\"to\":\"07:00\"}]", "from and to are the same")]
    [InlineData("\"open\":[{\"days\":[\"Monday\"],\"from\":\"07:00\",\"to\":\"08:00\"}]", "not \"Monday\"")]
    [InlineData("\"open\":[{\"days\":[],\"from\":\"07:00\",\"to\":\"08:00\"}]", "not an empty list")]
    [InlineData("\"hours\":1", "is not known here")]
    public void Hours_that_are_none_are_refused(string hours, string reason) =>
        Assert.Contains(Refused(With(hours, "Europe/Oslo")), r => r.Reason.Contains(reason, StringComparison.Ordinal));

    [Fact]
    public void A_zone_that_nobody_knows_is_refused()
    {
        const string Open = "\"open\":[{\"from\":\"07:00\",\"to\":\"08:00\"}]";
        Assert.Contains(
            Refused(With(Open, "Europe/Skarvedal")),
            r => r.Reason.Contains("named like Europe/Oslo", StringComparison.Ordinal)
        );
        Assert.NotNull(Accepted(With(Open, "Europe/Oslo")).Local);
    }

    [Fact]
    public void A_name_on_a_box_stands_beside_the_generic_name_and_is_known_where_a_drug_was_given()
    {
        var rules = ShippedRules.Book.By(Accepted($"{Head},{Names}}}"));
        Assert.Equal("haemostatic gauze (\"Grey roll\")", rules.Kit.Named("haemostatic-gauze")!.Name);
        Assert.Equal(ShippedRules.Book.Kit.Named("cloth")!.Name, rules.Kit.Named("cloth")!.Name);
        var drug = rules.Formulary.Named("white strip")!;
        Assert.Equal("paracetamol", drug.Id);
        Assert.Null(ShippedRules.Book.Formulary.Named("white strip"));
        Assert.StartsWith(
            "paracetamol (\"White strip\"): ",
            DoseWords.Of(drug, new DoseAnswer.Not([]), rules.Formulary).First(),
            StringComparison.Ordinal
        );
        var fewer = ShippedRules.Book.By(ShippedProtocol.Protocol with { Title = "Without" });
        Assert.Same(ShippedRules.Book.Kit, fewer.Kit);
        Assert.Same(rules.Kit, rules.By(rules.Protocol with { Title = "Same names" }).Kit);
    }

    [Fact]
    public void The_shipped_words_of_a_task_stay_beside_the_services_own()
    {
        var shipped = ShippedProtocol.Protocol.Tasks.Single(t => t.Id == "warmth");
        var laid = Accepted($$"""{{Head}},"words":{"tasks":{"warmth":"Into the sack."} } }""");
        var task = laid.Tasks.Single(t => t.Id == "warmth");
        Assert.Equal($"Into the sack. In full: {shipped.Text}", task.Text);
        Assert.Equal((shipped.Reason, shipped.Every), (task.Reason, task.Every));
        Assert.Equal(ShippedProtocol.Protocol.Cautions, laid.Cautions);
    }

    [Fact]
    public void Expired_it_still_says_whom_to_call_and_unproven_it_does_not()
    {
        var file = Encoding.UTF8.GetBytes($$"""{{Head}},{{Contact}},{{Names}},"mayAllow":[{"role":"lead","allows":["attempt"]}]}""");
        Protocol At(Proof proof, Instant at) =>
            Assert
                .IsType<Read<Protocol>.Usable>(
                    LocalReader.Read(
                        file,
                        "hut.json",
                        ShippedProtocol.Protocol,
                        proof,
                        at,
                        () => ShippedRules.Book.Formulary,
                        () => ShippedRules.Book.Kit
                    )
                )
                .Value;
        var expired = At(TestIssuer.Rescue.Proof(file), TestIssuer.Until);
        Assert.Equal((1, 2), (expired.Local!.Service.Contacts.Length, expired.Local.Service.StockNames.Count));
        var unproven = At(Proof.Emergency(TestIssuer.Now), TestIssuer.Now);
        Assert.Same(LocalService.None, unproven.Local!.Service);
        Assert.Contains(unproven.Local.Lapsed, l => l.StartsWith("contact: Base doctor", StringComparison.Ordinal));
        Assert.Contains(unproven.Local.Lapsed, l => l.Contains("White strip", StringComparison.Ordinal));
        Assert.All([expired, unproven], p => Assert.Single(p.Advice.Allowances));
    }

    [Fact]
    public void Each_difference_says_which_way_it_goes_and_on_whose_authority()
    {
        var laid = Accepted(
            $$"""
            {{Head}}{{Authorised}},"clock":{"limit":"PT5H","soon":"PT1H"},"orders":["paracetamol"],
            "mayAllow":[{"role":"lead","allows":["attempt"]}]}
            """
        );
        var lines = DifferenceWords.Lines(laid.Local!).ToArray();
        Assert.All(lines, l => Assert.EndsWith(" [Dr Vigdis Holm, medical lead]", l, StringComparison.Ordinal));
        string[] begins =
        [
            "differs, stricter: the time limit is 5 h 00 min instead of 6 h 00 min",
            "differs, laxer: help counts as soon within 1 h 00 min instead of 2 h 00 min",
            "differs, laxer: drug ordered: paracetamol",
            "differs, neither stricter nor laxer: the source hut is added",
            "differs, stricter: a yes counts only from the lead for: an attempt after 2 h 00 min;",
        ];
        Assert.Equal(begins.Length, lines.Length);
        Assert.All(begins.Zip(lines), pair => Assert.StartsWith(pair.First, pair.Second, StringComparison.Ordinal));
        Assert.Contains("[signed by ", DifferenceWords.Lines(Accepted($"{Head}}}").Local!).Single(), StringComparison.Ordinal);
        Assert.EndsWith(
            "[nobody has to answer for it: it only holds back]",
            DifferenceWords.Lines(AcceptedUnsigned($"{Bare},\"clock\":{{\"limit\":\"PT5H\"}}}}").Local!).Single(),
            StringComparison.Ordinal
        );
    }

    private static string With(string hours, string zone) =>
        $$"""{{Head}},"contacts":[{"name":"Ann","role":"lead","ways":[{"by":"phone","number":"112"}],"zone":"{{zone}}",{{hours}}}]}""";
}
