namespace Farhold.Tests.Verdicts;

/// <summary>Several wounds on one limb, each looked at for itself: the worst of them counts, and one not seen is not good.</summary>
public class SeveralWoundsTests
{
    /// <summary>A second wound on the leg; the first was seen not bleeding six minutes ago. A look at bleeding lasts 15 minutes.</summary>
    private static readonly Case Two = Case.Well.With("tourniquet", new Payload.TourniquetTightened("t1", Limb.LeftLeg), "00:40")
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
        Assert.Equal(Truth.Unknown, Two.And("00:35", Seen("w2", Bleeding.None)).And("00:02", Seen("w1", Bleeding.Oozing)).State("bleeding.active"));

    [Theory]
    [InlineData("00:35", "00:03")]
    [InlineData("00:03", "00:35")]
    public void One_that_bleeds_now_settles_it_whatever_was_seen_of_the_other_before(string first, string second)
    {
        var bleeding = Two.And(first, Seen("w1", Bleeding.Active)).With("bleeding", null).And(second, Seen("w2", Bleeding.Active));
        Assert.Equal(Truth.Met, bleeding.State("bleeding.active"));
        Assert.Equal(Verdict.LeaveOn, bleeding.Verdict);
    }

    [Fact]
    public void One_that_bled_long_ago_has_to_be_looked_at_again() =>
        Assert.Equal(Truth.Unknown, Two.And("00:35", Seen("w2", Bleeding.Active)).State("bleeding.active"));

    private static Payload.BleedingChecked Seen(string wound, Bleeding bleeding) => new(wound, bleeding);
}
