namespace Farhold.Tests.Verdicts;

/// <summary>
/// After an attempt that bled: leave it on, unless advice since or better light, supplies or hands allow another (JTS combat medic
/// module, design).
/// </summary>
public class FurtherAttemptTests
{
    private static readonly Case Failed = Case
        .Well.TightFor("01:10")
        .ClearLooks("00:17", "00:05")
        .Tried("00:30", "00:20", AttemptOutcome.Bled);

    [Theory]
    [InlineData("00:21", Verdict.LeaveOn)]
    [InlineData("00:20", Verdict.LeaveOn)]
    [InlineData("00:19", Verdict.Attempt)]
    public void Only_advice_given_since_allows_another(string advised, Verdict verdict)
    {
        Assert.Equal(Verdict.LeaveOn, Failed.Verdict);
        Assert.Equal(verdict, Failed.Advised(advised).Verdict);
    }

    [Fact]
    public void Not_reaching_anybody_does_not() => Assert.Equal(Verdict.LeaveOn, Failed.Unreached().Verdict);

    [Fact]
    public void Better_light_supplies_or_hands_said_so_allow_a_second_one_but_no_third()
    {
        Assert.Equal(Verdict.Attempt, Failed.And("00:10", new Payload.TaskDone("improved.left-leg")).Verdict);
        Assert.Equal(Verdict.LeaveOn, Failed.And("00:10", new Payload.TaskDone("improved.right-leg")).Verdict);
        Assert.Equal(Verdict.LeaveOn, Failed.And("00:21", new Payload.TaskDone("improved.left-leg")).Verdict);
        var twice = Failed.Tried("01:00", "00:50", AttemptOutcome.Bled);
        Assert.Equal(Verdict.LeaveOn, twice.And("00:10", new Payload.TaskDone("improved.left-leg")).Verdict);
        Assert.Equal(Verdict.Attempt, twice.Advised().Verdict);
    }

    [Fact]
    public void Neither_beginning_another_nor_giving_it_up_changes_what_the_last_one_showed()
    {
        Assert.Equal(Verdict.LeaveOn, Failed.And("00:02", new Payload.AttemptStarted("w1", "t1")).Verdict);
        Assert.Equal(Verdict.LeaveOn, Failed.Tried("00:04", "00:02", AttemptOutcome.Abandoned).Verdict);
        Assert.Equal(Verdict.Attempt, Failed.Advised("00:08").And("00:02", new Payload.AttemptStarted("w1", "t1")).Verdict);
    }

    [Theory]
    [InlineData(null, Verdict.LeaveOn)]
    [InlineData(TighteningReason.Bleeding, Verdict.LeaveOn)]
    [InlineData(TighteningReason.Precaution, Verdict.Attempt)]
    [InlineData(TighteningReason.ReSited, Verdict.Attempt)]
    public void Tight_again_counts_as_bled_unless_it_says_otherwise(TighteningReason? why, Verdict verdict) =>
        Assert.Equal(
            verdict,
            Case.Well.TightFor("01:10")
                .Tried("00:50", "00:40", AttemptOutcome.Held)
                .And("00:42", new Payload.TourniquetSlackened("t1"))
                .And("00:18", new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1", Why: why))
                .Verdict
        );

    [Theory]
    [InlineData(AttemptOutcome.Abandoned, Verdict.Attempt)]
    [InlineData(AttemptOutcome.Bled, Verdict.LeaveOn)]
    public void One_given_up_shows_nothing_of_the_wound(AttemptOutcome outcome, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.Tried("00:30", "00:20", outcome).Verdict);

    [Fact]
    public void Packed_and_dressed_before_it_bled_does_not_count_as_material_for_the_next()
    {
        var used = Failed
            .With("gauze", new Payload.SuppliesStated("plain-gauze", 1), "00:40")
            .And("00:35", new Payload.SuppliesStated("cloth", 0), new Payload.SuppliesStated("haemostatic-gauze", 0))
            .And("00:28", new Payload.WoundPacked("w1", PackingMaterial.PlainGauze))
            .Advised();
        Assert.NotEqual(Verdict.Attempt, used.Verdict);
        Assert.Equal(Verdict.Attempt, used.And("00:03", new Payload.SuppliesStated("cloth", 4)).Verdict);
    }
}
