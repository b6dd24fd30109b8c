namespace Farhold.Tests.Verdicts;

/// <summary>Which help is worth waiting for: surgery within two hours and before the limb's six, a clinic before its two.</summary>
public class HelpSoonTests
{
    [Theory] // JTS combat medic module: two hours
    [InlineData("02:00", Verdict.AwaitHelp)]
    [InlineData("02:01", Verdict.Attempt)]
    public void Surgery_within_two_hours(string latest, Verdict verdict) => Assert.Equal(verdict, Case.Well.HelpIn(latest).Verdict);

    [Theory] // the limb has been on for 4 h 10: surgery in 1 h 50 comes at its six hours
    [InlineData("01:49", Verdict.AwaitHelp)]
    [InlineData("01:50", Verdict.Attempt)]
    public void Surgery_that_comes_after_six_hours_is_too_late_for_the_limb(string latest, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.TightFor("04:10").Advised().HelpIn(latest).Verdict);

    [Theory] // the limb has been on for 40 minutes
    [InlineData("01:19", Verdict.AwaitHelp)]
    [InlineData("01:20", Verdict.Attempt)]
    public void A_clinic_before_the_limbs_two_hours(string latest, Verdict verdict) =>
        Assert.Equal(verdict, Help(HelpCare.Clinic, latest).Verdict);

    [Fact]
    public void More_hands_are_never_waited_for() =>
        Assert.Equal(Verdict.Attempt, Case.Well.And("00:05", Expected("00:10", "00:20", HelpCare.Hands)).Verdict);

    [Fact]
    public void The_newest_of_each_kind_counts()
    {
        var surgery = Case.Well.HelpIn("01:00");
        Assert.Equal(Verdict.AwaitHelp, surgery.And("00:01", Expected("09:00", "10:00", HelpCare.Clinic)).Verdict);
        Assert.Equal(Verdict.AwaitHelp, surgery.And("00:01", Expected("00:10", "00:20", HelpCare.Hands)).Verdict);
        Assert.Equal(Verdict.Attempt, surgery.And("00:01", Expected("09:00", "10:00", HelpCare.Surgery)).Verdict);
    }

    [Theory]
    [InlineData("01:00", "01:30", Verdict.CheckFirst)]
    [InlineData("01:00", null, Verdict.CheckFirst)]
    [InlineData("02:01", "08:00", Verdict.Attempt)]
    [InlineData("02:01", null, Verdict.Attempt)]
    public void Help_of_a_kind_nobody_named_is_asked_about_if_it_may_come_soon(string likely, string? latest, Verdict verdict)
    {
        var limb = Case.Well.With("help", Expected(likely, latest, null)).Limb;
        Assert.Equal(verdict, limb.Verdict);
        if (verdict == Verdict.CheckFirst)
            Assert.StartsWith("Ask what comes, hands, clinic or surgery", limb.Act.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("01:59", Verdict.CheckFirst)]
    [InlineData("02:01", Verdict.Attempt)]
    public void Surgery_without_a_latest_time_is_asked_about_if_it_is_likely_soon(string likely, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.With("help", Expected(likely, null, HelpCare.Surgery)).Verdict);

    [Fact]
    public void Once_the_latest_time_has_passed_it_is_unknown()
    {
        var passed = Case.Well.With(
            "help",
            new Payload.HelpExpected(Case.Ago("00:30"), null, Case.Ago("00:01"), Care: HelpCare.Surgery),
            "02:00"
        );
        Assert.Equal(Verdict.CheckFirst, passed.Verdict);
        Assert.Equal([Input.HelpSoon], passed.Limb.CheckFirst);
    }

    [Fact]
    public void Without_an_entry_it_is_unknown_and_where_nobody_can_be_reached_not_soon()
    {
        Assert.Equal(Verdict.CheckFirst, Case.Well.With("help", null).Verdict);
        Assert.Equal(Verdict.Attempt, Case.Well.With("help", null).Unreached().Verdict);
    }

    [Fact]
    public void Help_soon_hides_nothing_that_forbids_or_has_to_be_looked_at()
    {
        Assert.Equal(Verdict.LeaveOn, Case.Well.HelpIn("01:00").Signs(s => s with { HeartRate = 130 }).Verdict);
        Assert.Equal(Verdict.CheckFirst, Case.Well.HelpIn("01:00").With("over", null).Verdict);
    }

    private static Case Help(HelpCare care, string latest) => Case.Well.With("help", Expected("00:10", latest, care));

    private static Payload.HelpExpected Expected(string likely, string? latest, HelpCare? care) =>
        new(Case.In(likely), null, latest is null ? null : Case.In(latest), Care: care);
}
