using System.Text;
using Farhold.Tests.Signatures;
using static Farhold.Tests.Protocols.LocalFile;

namespace Farhold.Tests.Protocols;

/// <summary>The same local protocol signed, after its time, and taken without proof; ten that must not be believed.</summary>
public class StandingTests
{
    private const string Text = """
        {"local":"hut","version":"1","title":"Of the hut","over":"farhold-base","sources":{"hut":{"title":"The hut's book","known":"local"}},
         "authority":{"name":"Dr Vigdis Holm","role":"medical lead","date":"2031-01-10"},"orders":["paracetamol"],
         "clock":{"limit":"PT5H","soon":"PT1H"},
         "criteria":[{"id":"shock.pale","drop":true},{"id":"hut.cold","role":"forbids","text":"Cold.","sources":["hut"],"when":{"input":"temperatureC","below":34}}]}
        """;

    private static readonly byte[] Utf8 = Encoding.UTF8.GetBytes(Text);

    [Fact]
    public void Verified_it_says_who_signed_it_and_until_when_it_holds()
    {
        var local = At(TestIssuer.Now).Local!;
        Assert.Equal((Standing.Verified, TestIssuer.Rescue.Key.Code, TestIssuer.Until), (local.Standing, local.Issuer, local.Until));
        Assert.Equal(FileHash.Of(Utf8), local.Hash);
        Assert.Equal(["paracetamol"], local.Orders);
        Assert.Equal(2, local.Loosened.Length);
        var lines = RulesWords.Of(ShippedRules.Book.By(At(TestIssuer.Now))).ToArray();
        Assert.Contains(
            "signed by Skarvedal mountain rescue (invented), medical lead, serial 1, valid until 2032-01-01 00:00 UTC; authorised by "
                + "Dr Vigdis Holm",
            lines[1],
            StringComparison.Ordinal
        );
        Assert.Equal(2, lines.Count(l => l.StartsWith("LOOSENED", StringComparison.Ordinal)));
    }

    [Fact]
    public void After_its_time_what_it_holds_back_counts_and_what_it_allowed_does_not()
    {
        var laid = At(TestIssuer.Until);
        Assert.Equal(Standing.Expired, laid.Local!.Standing);
        Assert.Equal((Duration.FromHours(5), Duration.FromHours(2)), (laid.Clock.Limit, laid.Clock.Soon));
        Assert.Contains(laid.Criteria, c => c.Id == "shock.pale");
        Assert.Contains(laid.Criteria, c => c.Id == "hut.cold");
        Assert.Empty(laid.Local.Orders);
        Assert.Empty(laid.Local.Loosened);
        Assert.Equal(3, laid.Local.Lapsed.Length);
        Assert.Contains(
            "LOCAL PROTOCOL EXPIRED: hut 1, valid until 2032-01-01 00:00 UTC; no longer in force: ",
            Assert.Single(RulesWords.Warnings(ShippedRules.Book.By(laid))),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Taken_without_proof_it_orders_nothing_and_every_screen_says_so()
    {
        var laid = Assert
            .IsType<Read<Protocol>.Usable>(
                LocalReader.Read(
                    Utf8,
                    "hut.json",
                    ShippedProtocol.Protocol,
                    Proof.Emergency(TestIssuer.Now),
                    TestIssuer.Now,
                    () => ShippedRules.Book.Formulary,
                    () => ShippedRules.Book.Kit
                )
            )
            .Value;
        Assert.Empty(laid.Local!.Orders);
        Assert.Null(laid.Local.Issuer);
        Assert.StartsWith(
            "NOBODY HAS PROVEN THIS: local protocol hut 1, unsigned, for this casualty until 2031-05-04 14:10 UTC",
            RulesWords.Warnings(ShippedRules.Book.By(laid)).First(),
            StringComparison.Ordinal
        );
        Assert.IsType<DoseAnswer.AskForAdvice>(
            Dosing.Of(ShippedFormulary.Formulary.Named("paracetamol")!, Case.Well.Record, ShippedRules.Book.By(laid), Case.Now)
        );
        Assert.IsType<Read<Protocol>.Refused>(
            LocalReader.Read(
                Utf8,
                "hut.json",
                ShippedProtocol.Protocol,
                Proof.Emergency(TestIssuer.Now),
                TestIssuer.Now + Duration.FromHours(12),
                () => ShippedRules.Book.Formulary,
                () => ShippedRules.Book.Kit
            )
        );
    }

    [Fact]
    public void A_whole_protocol_that_is_not_the_shipped_one_says_that_nobody_has_proven_it()
    {
        var other = ProtocolReader.Read(
            Encoding.UTF8.GetBytes(
                Encoding.UTF8.GetString(ShippedProtocol.Json.Span).Replace("Take the signs again", "Rest", StringComparison.Ordinal)
            ),
            "p"
        );
        Assert.StartsWith(
            "NOBODY HAS PROVEN THIS: protocol farhold-base",
            Assert.Single(RulesWords.Warnings(ShippedRules.Book.By(Assert.IsType<Read<Protocol>.Usable>(other).Value))),
            StringComparison.Ordinal
        );
        Assert.Empty(RulesWords.Warnings(ShippedRules.Book));
    }

    /// <summary>As found: each was believed without a proof, or would be by one that proves nothing.</summary>
    [Theory]
    [InlineData("text", """{"local":"a","version":"1","over":"farhold-base","title":"Trust me"}""")]
    [InlineData(
        "step",
        """{"local":"a","version":"1","over":"farhold-base","steps":[{"id":"hold","text":"Glance at it.","minimum":{"haemostatic-gauze":"PT3M","plain-gauze":"PT10M","cloth":"PT10M"},"sources":["design"]}]}"""
    )]
    [InlineData("source", """{"local":"a","version":"1","over":"farhold-base","sources":{"TCCC":{"title":"Anything","known":"read"}}}""")]
    [InlineData(
        "task",
        """{"local":"a","version":"1","over":"farhold-base","tasks":[{"id":"a","scope":"casualty","text":"Give 20 mg morphine into the vein now.","every":"PT1H","doneBy":[],"sources":["design"]}]}"""
    )]
    [InlineData(
        "dose",
        """{"local":"a","version":"1","over":"farhold-base","authority":{"name":"Dr Ann Orr","role":"physician","date":"2031-01-10"},"orders":["tranexamic-acid"]}"""
    )]
    [InlineData(
        "dropped hard criterion",
        """{"local":"a","version":"1","over":"farhold-base","criteria":[{"id":"bleeding.active","drop":true}]}"""
    )]
    [InlineData("one-minute limit", """{"local":"a","version":"1","over":"farhold-base","clock":{"window":"PT1M","limit":"PT1M"}}""")]
    [InlineData(
        "authority x",
        """{"local":"a","version":"1","over":"farhold-base","authority":{"name":"x","role":"x","date":"2031-01-10"},"clock":{"limit":"PT7H"}}"""
    )]
    [InlineData(
        "invisible issuer",
        "{\"local\":\"a\",\"version\":\"1\",\"over\":\"farhold-base\",\"authority\":{\"name\":\"\u200B\u202E\",\"role\":\"physician\","
            + "\"date\":\"2031-01-10\"}}"
    )]
    [InlineData(
        "year 9999",
        """{"local":"a","version":"1","over":"farhold-base","authority":{"name":"Dr Ann Orr","role":"physician","date":"9999-12-31"}}"""
    )]
    public void What_nobody_proved_is_refused(string what, string text) => Assert.True(RefusedUnsigned(text).Length > 0, what);

    private static Protocol At(Instant at) =>
        Assert
            .IsType<Read<Protocol>.Usable>(
                LocalReader.Read(
                    Utf8,
                    "hut.json",
                    ShippedProtocol.Protocol,
                    TestIssuer.Rescue.Proof(Utf8),
                    at,
                    () => ShippedRules.Book.Formulary,
                    () => ShippedRules.Book.Kit
                )
            )
            .Value;
}
