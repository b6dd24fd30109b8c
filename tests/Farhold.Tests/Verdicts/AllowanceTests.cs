using System.Collections.Immutable;

namespace Farhold.Tests.Verdicts;

/// <summary>Whose yes counts for what, where a local protocol says so.</summary>
public class AllowanceTests
{
    private static readonly ImmutableArray<Allowance> List =
    [
        new("duty physician", [AllowedActs.Attempt], []),
        new("team leader", ["shock.pale", AllowedActs.Further], []),
    ];

    private static readonly Case Late = Case.Well.TightFor("04:00");
    private static readonly Case Pale = Case.Well.Signs(s => s with { Pale = true });

    [Theory]
    [InlineData(null, Verdict.CheckFirst)]
    [InlineData("team leader", Verdict.CheckFirst)]
    [InlineData("duty  Physician", Verdict.Attempt)]
    [InlineData("duty physician of elsewhere", Verdict.CheckFirst)]
    public void After_two_hours_only_a_yes_from_the_list_counts(string? office, Verdict verdict)
    {
        Assert.Equal(verdict, By(Yes(Late, office)).Verdict);
        Assert.Equal(Verdict.Attempt, Yes(Late, office).Verdict);
    }

    [Theory]
    [InlineData(null, Verdict.LeaveOn)]
    [InlineData("nurse", Verdict.LeaveOn)]
    [InlineData("team leader", Verdict.Attempt)]
    [InlineData("duty physician", Verdict.Attempt)]
    public void A_soft_sign_is_lifted_by_those_who_may(string? office, Verdict verdict)
    {
        Assert.Equal(verdict, By(Yes(Pale, office)).Verdict);
        Assert.Equal(Verdict.Attempt, Yes(Pale, office).Verdict);
        var cool = Case.Well.Signs(s => s with { Cool = true });
        Assert.Equal(office == "duty physician" ? Verdict.Attempt : Verdict.LeaveOn, By(Yes(cool, office)).Verdict);
    }

    [Theory]
    [InlineData("team leader", Verdict.Attempt)]
    [InlineData("nurse", Verdict.LeaveOn)]
    public void So_is_a_further_attempt(string office, Verdict verdict) =>
        Assert.Equal(verdict, By(Yes(Case.Well.Tried("00:35", "00:25", AttemptOutcome.Bled), office)).Verdict);

    [Fact]
    public void A_no_counts_whoever_says_it_and_is_ended_by_those_who_may_allow_everything()
    {
        var no = Late.Refused("01:10");
        Assert.Equal(Verdict.LeaveOn, By(no).Verdict);
        Assert.Equal(Verdict.LeaveOn, By(Yes(no, "team leader")).Verdict);
        Assert.Equal(Verdict.LeaveOn, By(Yes(no, null)).Verdict);
        Assert.Equal(Verdict.Attempt, By(Yes(no, "duty physician")).Verdict);
        Assert.Equal(Verdict.Attempt, Yes(no, null).Verdict);
    }

    /// <summary>Without the list the newer word has ended, and nothing stands: an older one does not come back.</summary>
    [Fact]
    public void A_yes_that_does_not_count_still_ends_the_one_before_it()
    {
        var over = Yes(Late, "duty physician", "01:00")
            .And("00:30", new Payload.AdviceReceived("Bo", "go on", ["attempt"], Until: Case.Ago("00:10")));
        Assert.Equal(Verdict.CheckFirst, over.Verdict);
        Assert.Equal(Verdict.CheckFirst, By(over).Verdict);
    }

    [Fact]
    public void Whose_yes_does_not_count_is_said_beside_the_verdict()
    {
        const string Nobody =
            "The yes of Dr Vann, whose office was not said, does not count: by the local protocol it has to come from the duty physician.";
        const string Part = "The yes of Dr Vann, team leader, counts by the local protocol for this alone: a further attempt";
        Assert.Equal(Nobody, By(Yes(Late, null)).Act.Changes[0]);
        Assert.Equal(Nobody, By(Yes(Late.Refused("01:10"), null)).Act.Changes[0]);
        Assert.Contains(Nobody, By(Yes(Case.Well, null)).Act.Cautions);
        Assert.StartsWith(Part, By(Yes(Late, "team leader")).Act.Changes[0], StringComparison.Ordinal);
        Assert.Contains(By(Yes(Pale, "team leader")).Act.Cautions, c => c.StartsWith(Part, StringComparison.Ordinal));
        Assert.DoesNotContain(By(Yes(Late, "duty physician")).Act.Cautions, c => c.Contains("count", StringComparison.Ordinal));
    }

    private static Case Yes(Case before, string? office, string ago = "00:05") =>
        before.And(ago, new Payload.AdviceReceived("Dr Vann", "go ahead", ["attempt"], Authority: office));

    private static LimbVerdict By(Case asked)
    {
        var shipped = ShippedProtocol.Protocol;
        var rules = ShippedRules.Book.By(shipped with { Advice = shipped.Advice with { Allowances = List } });
        return Judge.At(asked.Record, rules, Case.Now).Limbs.Single(l => l.Limb == Limb.LeftLeg);
    }
}
