namespace Farhold.Tests.Verdicts;

/// <summary>One limb at a time: the others wait until it has held for a quarter of an hour (design).</summary>
public class OneLimbTests
{
    [Theory] // for how long each leg has been tied, and which comes first
    [InlineData("00:40", "00:50", Limb.RightLeg)]
    [InlineData("00:50", "00:40", Limb.LeftLeg)]
    [InlineData("01:50", "03:00", Limb.LeftLeg)] // nearer its two hours than the other its six
    [InlineData("02:50", "03:00", Limb.RightLeg)]
    public void The_limb_nearer_its_two_hours_then_its_six_comes_first(string left, string right, Limb first)
    {
        var both = Case.Well.TightFor(left).AndRightLeg(right).Advised();
        var other = first == Limb.LeftLeg ? Limb.RightLeg : Limb.LeftLeg;
        Assert.Equal((Verdict.Attempt, Verdict.CheckFirst), (both.VerdictOf(first), both.VerdictOf(other)));
        Assert.StartsWith("Wait with this limb", both.Judgement.Limbs.Single(l => l.Limb == other).Act.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_an_arm_and_a_leg_tied_together_the_leg()
    {
        var both = Case
            .Well.And(
                "00:40",
                new Payload.WoundFound("w2", Limb.LeftArm, null, WoundNature.Bleeding),
                new Payload.TourniquetTightened("t2", Limb.LeftArm, Wound: "w2")
            )
            .And("00:06", new Payload.BleedingChecked("w2", Bleeding.None));
        Assert.Equal((Verdict.Attempt, Verdict.CheckFirst), (both.VerdictOf(Limb.LeftLeg), both.VerdictOf(Limb.LeftArm)));
    }

    [Fact]
    public void A_limb_that_stays_tied_holds_nobody_up() =>
        Assert.Equal(Verdict.Attempt, Case.Well.AndRightLeg("00:50", WoundNature.Amputation).VerdictOf(Limb.LeftLeg));

    [Fact]
    public void While_one_is_under_way_the_other_waits()
    {
        var both = Case.Well.AndRightLeg("00:50").And("00:03", new Payload.AttemptStarted("w2", "t2"));
        Assert.Equal((Verdict.Attempt, Verdict.CheckFirst), (both.VerdictOf(Limb.RightLeg), both.VerdictOf(Limb.LeftLeg)));
    }

    [Theory]
    [InlineData("00:14", Verdict.CheckFirst)]
    [InlineData("00:15", Verdict.Attempt)]
    public void The_next_begins_once_the_first_has_held_for_fifteen_minutes(string loosened, Verdict verdict)
    {
        var both = Case
            .Well.AndRightLeg("00:50")
            .And("00:30", new Payload.AttemptStarted("w2", "t2"), new Payload.WoundPacked("w2", PackingMaterial.PlainGauze))
            .And(loosened, new Payload.TourniquetSlackened("t2"))
            .And("00:00", new Payload.AttemptEnded("w2", "t2", AttemptOutcome.Held));
        Assert.Equal(verdict, both.Verdict);
    }

    [Theory]
    [InlineData("bleeds", Verdict.LeaveOn)]
    [InlineData("strong sign", Verdict.LeaveOn)]
    [InlineData("soft signs", Verdict.Attempt)]
    [InlineData("no more gauze", Verdict.Attempt)]
    [InlineData("nobody to watch", Verdict.Attempt)]
    [InlineData("help at hand", Verdict.Attempt)]
    public void Once_begun_only_bleeding_strong_signs_and_six_hours_stop_it(string what, Verdict verdict)
    {
        Payload news = what switch
        {
            "bleeds" => new Payload.BleedingChecked("w1", Bleeding.Active),
            "strong sign" => new Payload.SignsTaken { RadialPulse = RadialPulse.Absent },
            "soft signs" => new Payload.SignsTaken { Pale = true, Clammy = true },
            "no more gauze" => new Payload.SuppliesStated("plain-gauze", 0),
            "nobody to watch" => new Payload.WatchStated(false),
            _ => new Payload.HelpExpected(Case.In("00:10"), null, Case.In("00:20"), Care: HelpCare.Surgery),
        };
        Assert.Equal(verdict, Case.Well.And("00:04", new Payload.AttemptStarted("w1", "t1")).And("00:02", news).Verdict);
    }

    /// <summary>An hour (design): a forgotten attempt is judged anew.</summary>
    [Theory]
    [InlineData("00:25", Verdict.Attempt)]
    [InlineData("01:00", Verdict.Attempt)]
    [InlineData("01:01", Verdict.CheckFirst)]
    public void Signs_gone_stale_with_both_hands_in_the_wound_do_not_stop_it(string later, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.And("00:00", new Payload.AttemptStarted("w1", "t1")).Later(later).Verdict);

    [Fact]
    public void One_begun_against_the_verdict_is_judged_as_if_it_was_not() =>
        Assert.Equal(Verdict.CheckFirst, Case.Well.With("over", null).And("00:04", new Payload.AttemptStarted("w1", "t1")).Verdict);
}
