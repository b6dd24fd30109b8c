namespace Farhold.Tests.Verdicts;

/// <summary>By which rules care went stands in the record, and changes no verdict.</summary>
public class RulesStatedTests
{
    private static readonly Payload.RulesStated Here = RulesWords.Stated(ShippedProtocol.Protocol);

    [Fact]
    public void The_same_rules_are_no_matter() => Assert.Empty(Judged(Here).Remarks);

    [Fact]
    public void Other_rules_are_told_with_their_hash_and_change_no_verdict()
    {
        var other = Here with
        {
            Local = "hut 1",
            LocalHash = new string('a', 64),
            Standing = Standing.Verified,
            Issuer = "Hut rescue, 12345",
        };
        var judged = Judged(other);
        Assert.Contains("care went by other rules than these", Assert.Single(judged.Remarks).Text, StringComparison.Ordinal);
        Assert.Contains("local protocol hut 1 (aaaaaaaa), signed by Hut rescue", judged.Remarks[0].Text, StringComparison.Ordinal);
        Assert.Equal(Case.Well.Verdict, judged.Limbs.Single().Verdict);
        Assert.Empty(judged.Doubts);
    }

    /// <summary>A hub that knows only the shipped rules prints what another phone's local protocol loosened.</summary>
    [Fact]
    public void What_another_phone_loosened_is_shown_where_only_the_shipped_rules_are_known() =>
        Assert.Contains(
            "LOOSENED by the local protocol: looks at least 5 min apart",
            Assert
                .Single(
                    Judged(Here with { Local = "hut 1", Standing = Standing.Verified, Loosened = ["looks at least 5 min apart"] }).Remarks
                )
                .Text,
            StringComparison.Ordinal
        );

    [Fact]
    public void What_was_said_last_counts() =>
        Assert.Empty(
            Case.Well.And("00:30", Here with { LocalHash = new string('a', 64), Standing = Standing.Unsigned })
                .And("00:10", Here)
                .Judgement.Remarks
        );

    private static Judgement Judged(Payload.RulesStated stated) => Case.Well.And("00:20", stated).Judgement;
}
