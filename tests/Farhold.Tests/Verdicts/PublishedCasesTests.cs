namespace Farhold.Tests.Verdicts;

/// <summary>Cases worked out from published guidance, beside the rule each comes from.</summary>
/// <remarks>
/// The rules made of them stand in the shipped protocol. Rules: T1, T3 TCCC bleeding section 2014 to 2024, restated by Holcomb et al.
/// 2023 (read); T4 Shackelford et al. 2015 and
/// Drew et al. 2015 (read); T6 Drew et al. 2015 (read); T7, T8 TCCC 2024 (read-2), Drew 2015, Holcomb 2023 (read); T9 JTS
/// combat medic module against TCCC, conflict C1 (read); T11 TCCC Change 25-2, 2026 (read-2); T14, T30, T31, T35 to T37 JTS
/// combat medic module (read); T32 course teaching (memory); T39 no reset, design.
/// </remarks>
public class PublishedCasesTests
{
    private static readonly Case Shocked = Case.Well.Signs(s => s with { RadialPulse = RadialPulse.Weak, HeartRate = 130 });

    [Fact] // case 1: T1, T3
    public void Forty_minutes_no_shock_help_far_an_attempt() => Assert.Equal(Verdict.Attempt, Case.Well.HelpIn("12:00").Verdict);

    [Fact] // case 2: T1a. "Later": the tourniquet stays until shock is over
    public void In_shock_leave_it_on() => Assert.Equal(Verdict.LeaveOn, Shocked.Verdict);

    [Fact] // case 3: T1b
    public void With_nobody_to_watch_leave_it_on() =>
        Assert.Equal(Verdict.LeaveOn, Case.Well.With("watch", new Payload.WatchStated(false)).Verdict);

    [Theory] // case 4: T1c
    [InlineData(WoundNature.Amputation)]
    [InlineData(WoundNature.PartialAmputation)]
    public void Over_an_amputation_leave_it_on(WoundNature nature) =>
        Assert.Equal(Verdict.LeaveOn, Case.Well.With("wound", new Payload.WoundFound("w1", Limb.LeftLeg, null, nature)).Verdict);

    [Fact] // case 5: T14
    public void With_help_in_fifty_minutes_await_it() => Assert.Equal(Verdict.AwaitHelp, Case.Well.HelpIn("00:50").Verdict);

    [Fact] // case 6: T3
    public void A_minute_before_two_hours_an_attempt() => Assert.Equal(Verdict.Attempt, Case.Well.TightFor("01:59").Verdict);

    [Fact] // case 7: T4, T11
    public void At_two_hours_ask_someone_medically_trained_first()
    {
        var late = Case.Well.TightFor("02:00");
        Assert.Equal(Verdict.CheckFirst, late.Verdict);
        Assert.Equal([Input.Oversight], late.Limb.CheckFirst);
        Assert.Contains(late.Judgement.Due, d => d.Task == "before-release.left-leg");
    }

    [Theory] // cases 8 and 9: T6; the medical carer agrees, which the record has to say
    [InlineData("03:30")]
    [InlineData("05:40")] // later there is no time left to pack, hold and slacken (design)
    public void Between_two_and_six_hours_an_attempt_with_medical_agreement(string time) =>
        Assert.Equal(Verdict.Attempt, Case.Well.TightFor(time).Advised().Verdict);

    [Fact] // case 10: T9, the conservative side of C1
    public void At_six_hours_leave_it_on() => Assert.Equal(Verdict.LeaveOn, Case.Well.TightFor("06:00").Advised().Verdict);

    /// <summary>Case 11 (T7) allows it in a facility with a laboratory. Stricter here: Farhold is for where there is none.</summary>
    [Theory] // cases 11 and 12: T7, T8
    [InlineData("07:00")]
    [InlineData("24:00")]
    public void Beyond_six_hours_leave_it_on(string time) => Assert.Equal(Verdict.LeaveOn, Case.Well.TightFor(time).Advised().Verdict);

    /// <summary>
    /// T37 allows it outright; Holcomb 2023 does not (C4). Stricter than T37 here: only where advice since then allows it.
    /// </summary>
    [Fact] // case 13
    public void After_a_failed_attempt_another_only_with_advice_since()
    {
        var failed = Case.Well.TightFor("01:10").Tried("00:30", "00:20", AttemptOutcome.Bled);
        Assert.Equal(Verdict.LeaveOn, failed.Verdict);
        Assert.Equal(Verdict.LeaveOn, failed.Advised("00:21").Verdict);
        Assert.Equal(Verdict.Attempt, failed.Advised("00:19").Verdict);
    }

    [Fact] // case 14: T37, T39
    public void A_failed_attempt_does_not_set_the_clock_back()
    {
        Case Tight(string time) =>
            Case
                .Well.TightFor(time)
                .And("00:35", new Payload.TourniquetSlackened("t1"))
                .And("00:30", new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"))
                .Tried("00:40", "00:30", AttemptOutcome.Bled)
                .Advised();
        Assert.Equal(Verdict.Attempt, Tight("05:40").Verdict);
        Assert.Equal(Verdict.LeaveOn, Tight("06:00").Verdict);
    }

    [Fact] // T38: no source gives a number; here advice decides each time (design)
    public void After_two_failed_attempts_only_advice_allows_a_third()
    {
        var twice = Case.Well.Tried("00:38", "00:35", AttemptOutcome.Bled).Tried("00:30", "00:20", AttemptOutcome.Bled);
        Assert.Equal(Verdict.LeaveOn, twice.And("00:10", new Payload.TaskDone("improved.left-leg")).Verdict);
        Assert.Equal(Verdict.Attempt, twice.Advised().Verdict);
    }

    /// <summary>
    /// Case 15 (T17) removes a tourniquet that was never needed. Here that is the watched end of an attempt: once off, it is watched.
    /// </summary>
    [Fact]
    public void A_tourniquet_taken_off_leaves_a_limb_to_watch()
    {
        var judgement = Case.Well.And("00:02", new Payload.TourniquetRemoved("t1")).Judgement;
        Assert.Empty(judgement.Limbs);
        Assert.Equal(Limb.LeftLeg, Assert.Single(judgement.Observed).Limb);
    }

    [Fact] // case 16: design; never as zero
    public void A_tourniquet_found_on_counts_from_the_earliest_time_possible()
    {
        Case Found(string earliest) =>
            Case
                .Well.With("tourniquet", null)
                .And(new Happened(Case.Ago(earliest), Case.Ago("00:10")), new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"));
        Assert.Equal(Verdict.Attempt, Found("01:59").Verdict);
        Assert.Equal(Verdict.CheckFirst, Found("02:00").Verdict);
        Assert.Equal(Verdict.LeaveOn, Found("06:00").Advised().Verdict);
    }

    [Fact] // case 17: T36, T39
    public void Bleeding_again_after_slackening_is_tightened_at_once_and_the_clock_goes_on()
    {
        var off = Case.Well.TightFor("01:30").And("00:25", new Payload.TourniquetSlackened("t1"));
        var bleeding = off.And("00:05", new Payload.BleedingChecked("w1", Bleeding.Active)).With("bleeding", null);
        var first = bleeding.Judgement.Due[0];
        Assert.Equal(("tighten.left-leg", true), (first.Task, first.AtOnce));
        var again = bleeding.And("00:03", new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1")).Limb.Clock;
        Assert.Equal(Elapsed.Exactly(Duration.FromMinutes(90)), again.SinceFirstTightened);
        Assert.Equal(Elapsed.Exactly(Duration.FromMinutes(65 + 3)), again.Occluded);
        Assert.Equal(Elapsed.Exactly(Duration.FromMinutes(3)), again.CurrentStretch);
    }

    [Fact] // case 18: T1a
    public void With_no_signs_taken_check_first()
    {
        var blind = Case.Well.With("signs", null);
        Assert.Equal(Verdict.CheckFirst, blind.Verdict);
        Assert.Equal(Truth.Unknown, blind.Judgement.Shock.State);
        Assert.Contains(Input.RadialPulse, blind.Limb.CheckFirst);
    }

    [Theory] // T31, T32 (C2), T35; the watch without a break T43 (design)
    [InlineData(StepId.Hold, "haemostatic-gauze", 3)]
    [InlineData(StepId.Hold, "plain-gauze", 10)]
    [InlineData(StepId.Hold, "cloth", 10)]
    [InlineData(StepId.Hold, "", 10)]
    [InlineData(StepId.Slacken, "plain-gauze", 1)]
    [InlineData(StepId.Watch, "", 15)]
    [InlineData(StepId.Pack, "", 0)]
    public void A_step_takes_at_least(StepId step, string with, int minutes) =>
        Assert.Equal(
            Duration.FromMinutes(minutes),
            AttemptProgress.Minimum(ShippedProtocol.Protocol.Steps.Single(s => s.Id == step), with)
        );

    [Fact] // T30
    public void The_wound_is_packed_held_and_dressed_before_the_tourniquet_is_slackened() =>
        Assert.Equal(
            [StepId.Pack, StepId.Hold, StepId.Dress, StepId.Slacken, StepId.Watch],
            ShippedProtocol.Protocol.Steps.Select(s => s.Id)
        );

    [Fact] // T3, T4, T9, T14
    public void The_clock_of_the_shipped_protocol_is_two_six_and_two_hours() =>
        Assert.Equal(new ClockLimits(Duration.FromHours(2), Duration.FromHours(6), Duration.FromHours(2)), ShippedProtocol.Protocol.Clock);

    [Fact] // T16
    public void A_pulse_beyond_a_tight_tourniquet_is_tightened_away() =>
        Assert.Contains(
            Case.Well.Signs(s =>
                s with
                {
                    DistalPulse = System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(
                        Limb.LeftLeg,
                        DistalPulse.Present
                    ),
                }
            ).Judgement.Due,
            d => d is { Task: "tighten.left-leg", AtOnce: true }
        );
}
