namespace Farhold.Tests.Verdicts;

/// <summary>Two hours, four, six, and what still fits in before six; all counted since first tightened, on the worse side.</summary>
public class LateHoursTests
{
    /// <summary>
    /// Under two hours the carer decides (TCCC wording); then advice, or nobody can be reached (TCCC Change 25-2, Drew 2015).
    /// </summary>
    [Theory]
    [InlineData("01:59", Verdict.Attempt, Verdict.Attempt)]
    [InlineData("02:00", Verdict.CheckFirst, Verdict.Attempt)]
    [InlineData("03:59", Verdict.CheckFirst, Verdict.Attempt)]
    [InlineData("04:00", Verdict.CheckFirst, Verdict.Attempt)]
    [InlineData("05:40", Verdict.CheckFirst, Verdict.Attempt)]
    [InlineData("05:41", Verdict.LeaveOn, Verdict.LeaveOn)] // plain gauze: no time left
    [InlineData("06:00", Verdict.LeaveOn, Verdict.LeaveOn)]
    [InlineData("24:00", Verdict.LeaveOn, Verdict.LeaveOn)]
    public void By_the_time_it_has_been_on(string tightFor, Verdict alone, Verdict allowed)
    {
        var limb = Case.Well.TightFor(tightFor);
        Assert.Equal(alone, limb.Verdict);
        Assert.Equal(allowed, limb.Advised().Verdict);
        Assert.Equal(allowed, limb.Unreached().Verdict);
    }

    [Fact]
    public void At_two_hours_advice_is_all_that_is_asked_for()
    {
        var limb = Case.Well.TightFor("02:00").Limb;
        Assert.Equal([Input.Oversight], limb.CheckFirst);
        Assert.StartsWith("Ask for advice", limb.Act.Text, StringComparison.Ordinal);
    }

    /// <summary>
    /// Packing, hold, dressing and the beginning of slackening: 13 minutes with haemostatic gauze, 20 with anything else (design).
    /// </summary>
    [Theory]
    [InlineData("haemostatic-gauze", "05:47", Verdict.Attempt)]
    [InlineData("haemostatic-gauze", "05:48", Verdict.LeaveOn)]
    [InlineData("plain-gauze", "05:40", Verdict.Attempt)]
    [InlineData("plain-gauze", "05:41", Verdict.LeaveOn)]
    [InlineData("cloth", "05:40", Verdict.Attempt)]
    [InlineData("cloth", "05:41", Verdict.LeaveOn)]
    public void None_begins_that_can_not_be_done_before_six_hours(string material, string tightFor, Verdict verdict)
    {
        var limb = Case.Well.With("gauze", new Payload.SuppliesStated(material, 2), "00:08").TightFor(tightFor).Advised().Limb;
        Assert.Equal(verdict, limb.Verdict);
        if (verdict == Verdict.LeaveOn)
            Assert.StartsWith("Leave it tight: there is no time left", limb.Act.Text, StringComparison.Ordinal);
    }

    [Theory] // begun at 5 h 39 min
    [InlineData("00:20", Verdict.Attempt)]
    [InlineData("00:21", Verdict.LeaveOn)]
    public void One_under_way_that_has_not_slackened_stops_at_six_hours(string later, Verdict verdict) =>
        Assert.Equal(
            verdict,
            Case.Well.TightFor("05:39").Advised().And("00:00", new Payload.AttemptStarted("w1", "t1")).Later(later).Verdict
        );

    /// <summary>Possibly up to six hours (Drew 2015); the risk rises from three to four.</summary>
    [Theory]
    [InlineData("01:44", "Expose the wound", null)]
    [InlineData("01:45", "Begin now: the window closes at two hours", null)]
    [InlineData("02:00", "First read the cautions of a late release", "Two hours and more")]
    [InlineData("03:59", "First read the cautions of a late release", "Two hours and more")]
    [InlineData("04:00", "First read the grave caution of the late hours", "Four hours and more")]
    public void The_later_the_graver_the_caution(string tightFor, string act, string? caution)
    {
        var limb = Case.Well.TightFor(tightFor).Advised().Limb;
        Assert.StartsWith(act, limb.Act.Text, StringComparison.Ordinal);
        Assert.Equal("Keep to what the adviser said. duty doctor: go ahead", limb.Act.Cautions[^1]);
        var ofTheClock = limb.Act.Cautions[..^1];
        if (caution is null)
            Assert.Empty(ofTheClock);
        else
            Assert.StartsWith(caution, Assert.Single(ofTheClock), StringComparison.Ordinal);
    }

    /// <summary>After two hours loose, advice may count the time without flow instead (TCCC Change 25-2, design).</summary>
    [Theory]
    [InlineData("05:00", true)]
    [InlineData("02:10", true)]
    [InlineData("02:09", false)] // 1 h 59 min loose
    public void After_two_hours_loose_advice_may_count_the_time_without_flow(string loosened, bool counts)
    {
        var again = Case
            .Well.TightFor("06:30")
            .And(loosened, new Payload.TourniquetSlackened("t1"))
            .And("00:10", new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1", Why: TighteningReason.Precaution))
            .ClearLooks("00:35", "00:05");
        Assert.Equal(Verdict.LeaveOn, again.Verdict);
        Assert.Equal(Verdict.LeaveOn, again.Advised("00:11").Verdict);
        Assert.Equal(counts ? Verdict.Attempt : Verdict.LeaveOn, again.Advised("00:09").Verdict);
        Assert.Equal(Verdict.LeaveOn, again.Unreached().Verdict);
    }

    /// <summary>Tightened again 10 to 25 minutes ago: advice from between may be older than that, and was then not about it.</summary>
    [Theory]
    [InlineData("00:24", Verdict.LeaveOn)]
    [InlineData("00:11", Verdict.LeaveOn)]
    [InlineData("00:09", Verdict.Attempt)]
    public void It_has_to_have_been_given_surely_after_the_limb_was_tightened_again(string given, Verdict verdict) =>
        Assert.Equal(
            verdict,
            Case.Well.TightFor("06:30")
                .And("05:00", new Payload.TourniquetSlackened("t1"))
                .And(
                    new Happened(Case.Now - Duration.FromMinutes(25), Case.Now - Duration.FromMinutes(10)),
                    new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1", Why: TighteningReason.Precaution)
                )
                .ClearLooks("00:35", "00:05")
                .Advised(given)
                .Verdict
        );
}
