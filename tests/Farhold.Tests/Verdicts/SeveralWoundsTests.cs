namespace Farhold.Tests.Verdicts;

/// <summary>Several wounds on one limb, each looked at for itself: the worst of them counts, and one not seen is not good.</summary>
public class SeveralWoundsTests
{
    /// <summary>A second wound on the leg; the first was seen not bleeding six minutes ago. A look at bleeding lasts 30 minutes.</summary>
    private static readonly Case Two = Case
        .Well.With("tourniquet", new Payload.TourniquetTightened("t1", Limb.LeftLeg), "00:40")
        .And("00:39", new Payload.WoundFound("w2", Limb.LeftLeg, null, WoundNature.Bleeding));

    [Fact]
    public void A_wound_never_looked_at_leaves_the_bleeding_unknown() => Assert.Equal(Truth.Unknown, Two.State("bleeding.active"));

    [Fact]
    public void A_wound_seen_long_ago_leaves_it_unknown() =>
        Assert.Equal(Truth.Unknown, Two.And("00:35", Seen("w2", Bleeding.None)).State("bleeding.active"));

    [Fact]
    public void All_seen_of_late_and_none_bleeding_it_is_known() =>
        Assert.Equal(Truth.NotMet, Two.And("00:03", Seen("w2", Bleeding.None)).State("bleeding.active"));

    [Fact]
    public void One_oozing_and_one_dry_are_no_contradiction() =>
        Assert.Equal(Truth.NotMet, Two.And("00:03", Seen("w2", Bleeding.Oozing)).State("bleeding.active"));

    [Fact]
    public void A_fresh_look_at_one_does_not_hide_that_the_other_was_not_seen_of_late() =>
        Assert.Equal(
            Truth.Unknown,
            Two.And("00:35", Seen("w2", Bleeding.None)).And("00:02", Seen("w1", Bleeding.Oozing)).State("bleeding.active")
        );

    [Theory]
    [InlineData("00:35", "00:03")]
    [InlineData("00:03", "00:35")]
    public void One_that_bleeds_now_settles_it_whatever_was_seen_of_the_other_before(string first, string second)
    {
        var bleeding = Two.And(first, Seen("w1", Bleeding.Active)).With("bleeding", null).And(second, Seen("w2", Bleeding.Active));
        Assert.Equal(Truth.Met, bleeding.State("bleeding.active"));
        Assert.Equal(Verdict.LeaveOn, bleeding.Verdict);
    }

    [Theory]
    [InlineData("00:30", Truth.NotMet)]
    [InlineData("00:31", Truth.Unknown)]
    public void A_look_counts_as_long_as_it_is_fresh(string ago, Truth bleeding) =>
        Assert.Equal(bleeding, Two.And(ago, Seen("w2", Bleeding.Oozing)).State("bleeding.active"));

    [Fact]
    public void A_look_that_may_be_too_old_leaves_it_unknown_beside_a_fresh_one() =>
        Assert.Equal(
            Truth.Unknown,
            Two.And(new Happened(Case.Ago("00:38"), Case.Ago("00:10")), Seen("w2", Bleeding.None))
                .And("00:02", Seen("w1", Bleeding.Oozing))
                .State("bleeding.active")
        );

    [Theory]
    [InlineData("00:03", "00:02")]
    [InlineData("00:02", "00:03")]
    public void The_worst_of_two_fresh_looks_is_the_one_shown(string dry, string oozing)
    {
        var used = Two.With("bleeding", null)
            .And(dry, Seen("w1", Bleeding.None))
            .And(oozing, Seen("w2", Bleeding.Oozing))
            .Limb.Findings.Single(f => f.Criterion.Id == "bleeding.active")
            .Trace.Leaves.Single()
            .Used;
        Assert.Equal("oozing", Assert.Single(used).Value);
    }

    [Theory]
    [InlineData(WoundNature.Amputation, Truth.Met)]
    [InlineData(WoundNature.PartialAmputation, Truth.Met)]
    [InlineData(WoundNature.Fracture, Truth.NotMet)]
    public void An_amputation_outweighs_every_other_wound_of_the_limb(WoundNature nature, Truth amputation)
    {
        var limb = Two.And("00:38", new Payload.WoundFound("w3", Limb.LeftLeg, null, nature));
        Assert.Equal(amputation, limb.State("wound.amputation"));
        Assert.Contains(
            limb.Limb.Findings.Single(f => f.Criterion.Id == "wound.amputation").Trace.Leaves.Single().Used,
            u => u.Value == (amputation == Truth.Met ? Wire.Word(nature) : "bleeding")
        );
    }

    [Fact]
    public void One_that_bled_long_ago_has_to_be_looked_at_again() =>
        Assert.Equal(Truth.Unknown, Two.And("00:35", Seen("w2", Bleeding.Active)).State("bleeding.active"));

    private static Payload.BleedingChecked Seen(string wound, Bleeding bleeding) => new(wound, bleeding);
}
