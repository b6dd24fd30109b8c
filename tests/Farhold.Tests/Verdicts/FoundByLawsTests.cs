using Farhold.Tests.Protocols;
using static Farhold.Tests.Verdicts.Played;

namespace Farhold.Tests.Verdicts;

/// <summary>What searching the laws brought up, each as the one case that shows it.</summary>
public class FoundByLawsTests
{
    private static Payload.SignsTaken Pale => Good with { Pale = true, HeartRate = 104 }; // fast for a child, not for an adult

    private static Protocol WithClock(string clock) => LocalFile.Accepted($"{LocalFile.Head},\"clock\":{clock}}}");

    [Fact]
    public void An_attempt_that_held_but_was_never_begun_does_not_unsay_one_that_bled() =>
        new Played(Who("Runa", 34), "10:00")
            .At("10:10", Ready)
            .At("10:20", Begun)
            .At("10:40", new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Bled))
            .At("10:50", new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Held))
            .At("10:52", Good)
            .At("11:04", Good, Dry)
            .Says("11:05", Verdict.LeaveOn, "may another attempt be made");

    [Fact]
    public void That_there_is_no_cuff_said_after_a_look_does_not_make_it_a_later_one() =>
        new Played(Who("Runa", 34), "10:00")
            .At("10:10", Ready)
            .At("10:20", Good)
            .At("10:27", Good, Dry)
            .At("10:32", new Payload.SignsTaken { NoPressureCuff = true })
            .Says("10:33", Verdict.CheckFirst, "Second look")
            .At("10:32", new Payload.SignsTaken { NoPressureCuff = true })
            .Says("10:33", Verdict.CheckFirst, "Second look");

    [Fact]
    public void A_limit_made_shorter_by_a_local_protocol_ends_no_wait_for_surgery()
    {
        var local = WithClock("""{"limit":"PT3H"}""");
        var waits = Case.Well.TightFor("01:30").HelpIn("01:50");
        Assert.Equal(Verdict.AwaitHelp, waits.Verdict);
        Assert.Equal(Verdict.AwaitHelp, Judge.At(waits.Record, ShippedRules.Book.By(local), Case.Now).Limbs.Single().Verdict);
    }

    [Fact]
    public void A_window_made_shorter_by_a_local_protocol_does_not_do_away_with_the_second_look()
    {
        var local = WithClock("""{"window":"PT1H"}""");
        Assert.Equal(
            Verdict.CheckFirst,
            Judge.At(Case.Well.TightFor("00:50").ClearLooks("00:05").Record, ShippedRules.Book.By(local), Case.Now).Limbs.Single().Verdict
        );
        Assert.Equal(Verdict.Attempt, Case.Well.TightFor("01:50").ClearLooks("00:05").Verdict);
    }

    [Fact]
    public void Without_an_age_a_soft_sign_that_stays_asks_for_it_first_and_an_age_said_later_holds_for_the_looks_before() =>
        new Played(new("Runa"), "10:00")
            .At("10:10", Ready)
            .At("10:15", NotReached)
            .At("10:20", Pale)
            .At("10:32", Pale)
            .Says("10:33", Verdict.LeaveOn, "Ask or estimate the age. Ask for advice.")
            .At("10:34", new Payload.CasualtyOpened("Runa", AgeYears: 34))
            .At("10:44", Pale)
            .At("10:52", Pale, Dry, Some.NothingElse)
            .Says("10:53", Verdict.Attempt, "pack");

    [Fact]
    public void Where_advice_was_tried_for_what_can_be_looked_at_comes_first() =>
        new Played(Who("Runa", 34), "10:00")
            .At("10:02", Ready)
            .At("10:04", Some.NothingElse with { TrunkWound = true }, Good)
            .Says("10:05", Verdict.CheckFirst, "Ask for advice: hidden bleeding may follow")
            .At("10:06", NotReached, new Payload.WatchStated(false))
            .At("10:16", Good)
            .Says("10:17", Verdict.LeaveOn, "Leave it on until someone can watch")
            .At("10:18", CanWatch)
            .Says("10:19", Verdict.CheckFirst, "Ask for advice: hidden bleeding may follow")
            .Says("10:33", Verdict.CheckFirst, "Look at the wound: does it bleed now?"); // stale by now, and to be had at once

    [Fact]
    public void A_pressure_measured_low_is_not_replaced_by_a_refill_while_it_is_fresh_and_a_good_one_is() =>
        new Played(Who("Runa", 34), "10:00")
            .At("10:05", Ready)
            .At("10:08", Good)
            .At("10:18", NoCuff with { CapillaryRefillS = 2 }, Dry)
            .Says("10:19", Verdict.Attempt, "pack")
            .At("10:20", Good with { Systolic = 84 })
            .At("10:28", NoCuff with { CapillaryRefillS = 2 })
            .Says("10:29", Verdict.LeaveOn, "Treat for shock");

    [Fact]
    public void The_step_of_slackening_ends_with_the_last_tourniquet_that_is_let_out()
    {
        var played = new Played(Who("Runa", 34), "10:00")
            .At("10:02", Tight("t2"))
            .At("10:10", Ready)
            .At("10:12", Good)
            .At("10:24", Good, Dry, Begun)
            .At("10:25", new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze))
            .At("10:30", new Payload.PressureHeld("w1", 5))
            .At("10:31", new Payload.DressingApplied("w1", DressingKind.Pressure))
            .At("10:33", Dry, Slack);
        Assert.Equal(StepId.Slacken, played.Now("10:34").Limbs.Single().Attempt!.Current!.Step.Id);
        var watched = played.At("10:36", new Payload.TourniquetSlackened("t2")).Now("10:37").Observed.Single();
        Assert.Equal((StepId.Watch, Some.At("10:36")), (watched.Attempt!.Current!.Step.Id, watched.Attempt.Current.Began!.Value.Latest));
    }
}
