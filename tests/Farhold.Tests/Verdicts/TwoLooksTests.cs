namespace Farhold.Tests.Verdicts;

/// <summary>An attempt needs two clear looks ten minutes apart, the newest fresh, and no sign from the first of them on (design).</summary>
public class TwoLooksTests
{
    private static readonly Payload.SignsTaken Pale = Some.GoodSigns with { Pale = true };

    [Theory]
    [InlineData("00:15:00", "00:05:00", Verdict.Attempt)]
    [InlineData("00:14:59", "00:05:00", Verdict.CheckFirst)]
    [InlineData("00:40:00", "00:05:00", Verdict.Attempt)]
    [InlineData("00:16:00", "00:16:00", Verdict.CheckFirst)]
    public void Two_clear_looks_are_ten_minutes_apart(string first, string second, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.ClearLooks(first, second).Verdict);

    [Fact]
    public void One_look_is_not_enough_and_the_second_is_asked_for_with_its_time()
    {
        var one = Case.Well.ClearLooks("00:05").Limb;
        Assert.Equal(Verdict.CheckFirst, one.Verdict);
        Assert.Equal([Input.ClearLooks], one.CheckFirst);
        Assert.Equal("Second look: take all the signs of shock again.", one.Act.Text);
        Assert.Equal(Some.At("12:05"), one.Act.LookAgain);
    }

    [Fact]
    public void Once_ten_minutes_are_over_the_second_look_is_asked_for_at_once() =>
        Assert.StartsWith("Second look", Case.Well.ClearLooks("00:10").Limb.Act.Text, StringComparison.Ordinal);

    /// <summary>Between them only what was surely ten minutes counts, and a look surely within five.</summary>
    [Theory]
    [InlineData("00:20", "00:15", Verdict.Attempt)]
    [InlineData("00:19", "00:14", Verdict.CheckFirst)]
    [InlineData("00:21", "00:15", Verdict.CheckFirst)]
    public void A_look_taken_between_two_times_counts_on_the_worse_side(string earliest, string latest, Verdict verdict) =>
        Assert.Equal(
            verdict,
            Case.Well.ClearLooks("00:05").And(new Happened(Case.Ago(earliest), Case.Ago(latest)), Some.GoodSigns).Verdict
        );

    [Theory]
    [InlineData("00:10:00", Verdict.Attempt)]
    [InlineData("00:10:01", Verdict.CheckFirst)]
    public void A_look_may_be_taken_over_five_minutes(string begun, Verdict verdict)
    {
        var half = new Payload.SignsTaken
        {
            HeartRate = 84,
            RespiratoryRate = 16,
            Systolic = 124,
            Mental = Mental.Alert,
            RadialPulse = RadialPulse.Strong,
        };
        var rest = new Payload.SignsTaken
        {
            Pale = false,
            Cool = false,
            Clammy = false,
            Dizzy = false,
        };
        Assert.Equal(verdict, Case.Well.ClearLooks("00:30").And(begun, half).And("00:05", rest).Verdict);
    }

    /// <summary>With the first two hours closing within twenty minutes one clear look is enough, if no sign was ever seen.</summary>
    [Theory]
    [InlineData("01:39", Verdict.CheckFirst)]
    [InlineData("01:40", Verdict.Attempt)]
    [InlineData("01:59", Verdict.Attempt)]
    [InlineData("02:00", Verdict.CheckFirst)]
    public void As_the_window_closes_one_look_is_enough(string tightFor, Verdict verdict)
    {
        Assert.Equal(verdict, Case.Well.ClearLooks("00:05").TightFor(tightFor).Advised().Verdict);
        Assert.Equal(
            Verdict.CheckFirst,
            Case.Well.Looks(("00:40", Pale), ("00:05", Some.GoodSigns)).TightFor(tightFor).Advised("00:04").Verdict
        );
    }

    [Theory]
    [InlineData("01:55", "01:41", Verdict.Attempt)]
    [InlineData("01:55", "00:40", Verdict.CheckFirst)] // perhaps on for 40 minutes only: there is time for a second look
    public void Not_knowing_when_it_was_tightened_saves_no_look(string earliest, string latest, Verdict verdict) =>
        Assert.Equal(
            verdict,
            Case.Well.ClearLooks("00:05")
                .With("tourniquet", null)
                .And(new Happened(Case.Ago(earliest), Case.Ago(latest)), new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"))
                .Verdict
        );

    [Fact]
    public void As_the_window_closes_by_the_worse_side() =>
        Assert.Equal(
            Verdict.CheckFirst,
            Case.Well.ClearLooks("00:05")
                .With("tourniquet", null)
                .And(new Happened(Case.Ago("02:00"), Case.Ago("01:45")), new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"))
                .Advised()
                .Verdict
        );

    [Theory]
    [InlineData("00:28", "00:16", Verdict.CheckFirst)] // clear, pale, clear
    [InlineData("00:16", "00:28", Verdict.Attempt)] // pale, clear, clear
    public void A_look_with_a_sign_makes_them_begin_afresh(string clear, string pale, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.Looks((clear, Some.GoodSigns), (pale, Pale), ("00:05", Some.GoodSigns)).Verdict);

    [Fact]
    public void A_strong_sign_is_lifted_by_two_looks_and_never_by_time()
    {
        var racing = Some.GoodSigns with { HeartRate = 130 };
        Assert.Equal(Verdict.LeaveOn, Case.Well.Looks(("00:15", racing)).Verdict);
        Assert.Equal(Verdict.CheckFirst, Case.Well.Looks(("00:50", racing)).Verdict);
        Assert.Equal(Verdict.CheckFirst, Case.Well.Looks(("00:50", racing), ("00:05", Some.GoodSigns)).Verdict);
        Assert.Equal(Verdict.Attempt, Case.Well.Looks(("00:50", racing), ("00:15", Some.GoodSigns), ("00:05", Some.GoodSigns)).Verdict);
    }

    [Fact]
    public void A_sign_seen_by_the_way_between_two_looks_counts()
    {
        Assert.Equal(Verdict.CheckFirst, Case.Well.And("00:11", new Payload.SignsTaken { RadialPulse = RadialPulse.Weak }).Verdict);
        Assert.Equal(Verdict.Attempt, Case.Well.And("00:11", new Payload.SignsTaken { RadialPulse = RadialPulse.Strong }).Verdict);
        Assert.Equal(Verdict.Attempt, Case.Well.And("00:11", new Payload.SignsTaken { Pain = 3 }).Verdict);
    }

    [Fact]
    public void A_look_begun_and_not_finished_is_not_clear() =>
        Assert.Equal(
            Verdict.CheckFirst,
            Case.Well.Looks(
                ("00:30", Some.GoodSigns),
                ("00:16", Some.GoodSigns with { HeartRate = null }),
                ("00:05", Some.GoodSigns)
            ).Verdict
        );

    [Theory]
    [InlineData("00:26", "00:14", Verdict.CheckFirst)] // the first before it ended
    [InlineData("00:19", "00:05", Verdict.Attempt)]
    public void After_an_attempt_that_bled_they_begin_afresh(string first, string second, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.ClearLooks(first, second, "00:05").Tried("00:30", "00:20", AttemptOutcome.Bled).Advised().Verdict);

    [Fact]
    public void After_another_limb_bled_they_begin_afresh_too()
    {
        Case Bled(string ago) =>
            Case
                .Well.TightFor("01:10")
                .AndRightLeg("00:50")
                .ClearLooks("00:25", "00:05")
                .And("00:30", new Payload.AttemptStarted("w2", "t2"))
                .And(ago, new Payload.AttemptEnded("w2", "t2", AttemptOutcome.Bled));
        Assert.Equal(Verdict.Attempt, Bled("00:26").VerdictOf(Limb.LeftLeg));
        Assert.Equal(Verdict.CheckFirst, Bled("00:25").VerdictOf(Limb.LeftLeg));
    }
}
