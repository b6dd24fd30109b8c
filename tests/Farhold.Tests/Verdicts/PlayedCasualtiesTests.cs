using static Farhold.Tests.Verdicts.Played;

namespace Farhold.Tests.Verdicts;

/// <summary>Casualties played through a day, with the mistakes of a tired carer. All invented.</summary>
public class PlayedCasualtiesTests
{
    [Fact]
    public void Torvald_two_tourniquets_on_one_thigh_and_the_wrong_one_slackened()
    {
        var day = new Played(Who("Torvald", 41), "10:00")
            .First("10:01", "Has it stopped?")
            .At("10:03", Bleeds)
            .First("10:03", "tighten further, or add a second tourniquet", atOnce: true)
            .At("10:04", Tight("t2"))
            .At("10:05", Ready)
            .At("10:10", Good)
            .Says("10:11", Verdict.CheckFirst, "Second look")
            .At("10:22", Good, Dry)
            .Says("10:23", Verdict.Attempt, "Expose the wound")
            .At("10:24", new Payload.AttemptStarted("w1", "t2"))
            .At("10:26", new Payload.WoundPacked("w1", PackingMaterial.PlainGauze))
            .At("10:36", new Payload.PressureHeld("w1", 10))
            .At("10:38", new Payload.DressingApplied("w1", DressingKind.Pressure))
            .At("10:40", new Payload.TourniquetSlackened("t1"))
            .Says("10:41", Verdict.Attempt, "Go on with the attempt");
        Assert.Equal(StepId.Slacken, day.Now("10:41").Limbs.Single().Attempt!.Current!.Step.Id);
        Assert.Equal(["t2"], day.Now("10:41").Limbs.Single().Clock.Tourniquets);
        day.At("10:43", new Payload.TourniquetSlackened("t2")).Due("10:44", "watch the wound without a break until 2031-05-04 10:58 UTC");
        Assert.Empty(day.Now("10:44").Limbs);
    }

    [Fact]
    public void Ines_the_gauze_used_up_on_the_first_attempt() =>
        new Played(Who("Ines", 29), "09:00")
            .At("09:15", Ready)
            .At(
                "09:15",
                new Payload.SuppliesStated("plain-gauze", 1),
                new Payload.SuppliesStated("haemostatic-gauze", 0),
                new Payload.SuppliesStated("cloth", 0)
            )
            .At("09:20", Good)
            .At("09:32", Good, Dry)
            .Says("09:39", Verdict.Attempt, "then pack")
            .At("09:40", Begun)
            .At("09:42", new Payload.WoundPacked("w1", PackingMaterial.PlainGauze))
            .At("09:53", Slack)
            .At("09:55", Bleeds)
            .First("09:55", "bleeding again: tighten at once", atOnce: true)
            .At("09:56", Tight("t1"))
            .First("09:57", "Has it stopped?")
            .At("09:58", Dry)
            .Says("09:59", Verdict.LeaveOn, "ask for advice: may another attempt be made")
            .At("10:05", new Payload.SuppliesStated("cloth", 5), new Payload.TaskDone("improved.left-leg"))
            .At("10:08", Good, Some.NothingElse, CanWatch, Dry)
            .Says("10:09", Verdict.CheckFirst, "Second look")
            .At("10:20", Good)
            .Says("10:21", Verdict.Attempt, "Expose the wound");

    [Fact]
    public void Mattis_bled_again_when_he_was_turned() =>
        new Played(Who("Mattis", 52), "08:00")
            .At("08:30", Ready)
            .At("08:32", Good)
            .At("08:45", Good, Dry)
            .Says("08:49", Verdict.Attempt, "Expose the wound")
            .At("08:50", Begun)
            .At("09:10", Slack)
            .At("09:25", Dry, new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Held))
            .At("11:00", Dry, new Payload.CasualtyMoved(Movement.Turned, MovePhase.Moved))
            .Due("11:01", "watch the wound without a break until 2031-05-04 11:05 UTC")
            .At("11:02", Bleeds)
            .First("11:02", "bleeding again: tighten at once", atOnce: true)
            .At("11:03", Tight("t1", TighteningReason.Bleeding))
            .First("11:03", "Has it stopped?")
            .At("11:04", Dry)
            .Says("11:05", Verdict.LeaveOn, "ask for advice: may another attempt be made")
            .First("11:09", "Has it stopped?"); // five minutes after it was tightened

    [Fact]
    public void Sanna_the_help_that_came_late() =>
        new Played(Who("Sanna", 23), "10:00")
            .At("10:10", Ready)
            .At("10:15", Surgery("11:10", "11:40"), Good)
            .At("10:30", Good, Dry)
            .Says("10:35", Verdict.AwaitHelp, "surgery or a clinic is near")
            .Says("11:00", Verdict.CheckFirst, "") // nobody has looked for half an hour
            .At("11:30", Good, Some.NothingElse, CanWatch, Dry)
            .At("11:42", Good)
            .Says("11:43", Verdict.CheckFirst, "Ask what comes, hands, clinic or surgery")
            .At("11:45", Surgery("15:00", "16:30"))
            .Says("11:46", Verdict.Attempt, "Begin now: the window closes at two hours")
            .Says("12:00", Verdict.CheckFirst, "");

    [Fact]
    public void Ulla_whose_blood_pressure_cuff_is_lost_in_the_snow() =>
        new Played(Who("Ulla", 37), "10:00")
            .At("10:08", Ready)
            .At("10:10", Good)
            .At("10:22", NoCuff)
            .At("10:34", NoCuff, Dry)
            .Says("10:35", Verdict.CheckFirst, "time the refill of a warm finger")
            .At("10:36", NoCuff with { CapillaryRefillS = 2 })
            .Says("10:37", Verdict.CheckFirst, "Second look")
            .At("10:37", Some.NothingElse)
            .At("10:47", NoCuff with { CapillaryRefillS = 2 })
            .Says("10:48", Verdict.Attempt, "Expose the wound");

    [Fact]
    public void Pekka_told_no_and_then_yes() =>
        new Played(Who("Pekka", 45), "08:00")
            .At("10:00", Ready)
            .At("10:00", Good)
            .Says("10:04", Verdict.CheckFirst, "Second look")
            .At("10:05", new Payload.ContactTried(true))
            .At("10:10", new Payload.AdviceReceived("duty doctor", "leave it, the helicopter may come", []))
            .At("10:11", Good, Dry)
            .Says("10:12", Verdict.LeaveOn, "the no stands")
            .At("10:40", NotReached)
            .Says("10:41", Verdict.LeaveOn, "the no stands")
            .At("11:00", Good, Some.NothingElse, Dry, CanWatch)
            .At("11:10", Allowed)
            .At("11:12", Good)
            .Says("11:13", Verdict.Attempt, "cautions of a late release")
            .Cautions("11:13", "Two hours and more")
            .At("12:15", Good, Some.NothingElse, Dry, CanWatch)
            .At("13:05", Good, Some.NothingElse, Dry, CanWatch)
            .At("13:16", Good)
            .Says("13:17", Verdict.CheckFirst, "Ask for advice"); // the yes was for two hours

    [Fact]
    public void Brita_both_legs_one_after_the_other()
    {
        Payload dry = new Payload.BleedingChecked("w2", Bleeding.None);
        new Played(Who("Brita", 30), "10:00")
            .At(
                "10:10",
                new Payload.WoundFound("w2", Limb.RightLeg, null, WoundNature.Bleeding),
                new Payload.TourniquetTightened("t2", Limb.RightLeg, Wound: "w2")
            )
            .At("10:12", dry, Dry)
            .At("10:28", Ready)
            .At("10:30", Good, dry)
            .At("10:42", Good)
            .Says("10:43", Verdict.Attempt, "Expose the wound")
            .Says("10:43", Verdict.CheckFirst, "Wait with this limb", Limb.RightLeg)
            .At("10:44", Begun)
            .At("10:46", new Payload.WoundPacked("w1", PackingMaterial.PlainGauze))
            .At("11:00", Slack)
            .Says("11:05", Verdict.CheckFirst, "Wait with this limb", Limb.RightLeg)
            .At("11:05", Good)
            .At("11:10", Some.NothingElse, CanWatch, Dry, dry, new Payload.SuppliesStated("plain-gauze", 1))
            .At("11:15", new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Held))
            .At("11:16", Good)
            .Says("11:17", Verdict.Attempt, "Expose the wound", Limb.RightLeg);
    }

    [Fact]
    public void Elin_six_years_old_and_crying()
    {
        var crying = Good with { HeartRate = 126, RespiratoryRate = 24, Systolic = 104 };
        new Played(Who("Elin", 6), "12:00")
            .At("12:10", Ready)
            .At("12:20", crying, Dry)
            .Says("12:21", Verdict.CheckFirst, "look again in ten minutes")
            .At("12:31", crying with { HeartRate = 122 })
            .Says("12:32", Verdict.LeaveOn, "next look in ten minutes")
            .At("12:42", Some.NothingElse, Dry, crying with { HeartRate = 110 })
            .Says("12:43", Verdict.CheckFirst, "Second look")
            .At("12:53", crying with { HeartRate = 104 })
            .Says("12:54", Verdict.Attempt, "Expose the wound");
    }

    [Fact]
    public void Maja_thirty_weeks_pregnant() =>
        new Played(new("Maja", Sex.Female, 29, History: "pregnant 30 weeks"), "10:00")
            .At("10:10", Ready)
            .At("10:15", Good with { HeartRate = 112, Systolic = 102 })
            .Says("10:16", Verdict.LeaveOn, "Tilt to the left side")
            .At("10:30", Good with { HeartRate = 96, Systolic = 110 }, Dry)
            .Says("10:31", Verdict.CheckFirst, "Second look")
            .At("10:38", Some.NothingElse)
            .At("10:41", Good with { HeartRate = 94, Systolic = 112 })
            .Says("10:42", Verdict.Attempt, "Expose the wound");

    [Fact]
    public void Olav_old_on_bisoprolol_and_no_cuff_at_hand() =>
        new Played(new("Olav", Sex.Male, 72, Medicines: ["bisoprolol 5 mg"]), "10:00")
            .At("10:08", Ready)
            .At("10:10", NoCuff with { HeartRate = 62 })
            .At("10:21", NoCuff with { HeartRate = 64 }, Dry)
            .Says("10:22", Verdict.CheckFirst, "Time the refill on a warm finger")
            .At("10:24", NoCuff with { HeartRate = 64, CapillaryRefillS = 4 }) // not slow for his age
            .Says("10:25", Verdict.Attempt, "the pulse rate hides blood loss here")
            .Cautions("10:25", "go by pressure and refill")
            .At("10:30", NoCuff with { HeartRate = 64, CapillaryRefillS = 5 })
            .Says("10:31", Verdict.CheckFirst, "look again in ten minutes");

    [Fact]
    public void Jonas_pulled_out_of_the_river() =>
        new Played(Who("Jonas", 27), "10:00")
            .At("10:10", Ready)
            .At(
                "10:15",
                new Payload.CasualtyLookedOver(false, false, false, VeryCold: true, false),
                Good with
                {
                    Cool = true,
                    TemperatureC = 33.2,
                }
            )
            .Says("10:16", Verdict.CheckFirst, "Warm first")
            .At("10:55", Good with { TemperatureC = 34.4 }, Dry)
            .At("10:56", Some.NothingElse, CanWatch)
            .Says("10:57", Verdict.CheckFirst, "Second look")
            .At("11:06", Good with { TemperatureC = 34.7 })
            .Says("11:07", Verdict.Attempt, "Keep warm first and during it");

    [Fact]
    public void Pasang_breathing_thin_air() =>
        new Played(Who("Pasang", 33), "10:00")
            .At("10:10", Ready)
            .At("10:12", Good with { Spo2 = 86 })
            .At("10:24", Good with { Spo2 = 85 }, Dry)
            .Says("10:25", Verdict.CheckFirst, "Bare the chest")
            .At("10:26", new Payload.PositionNoted(27.9, 86.8, AltitudeM: 4_300))
            .Says("10:27", Verdict.Attempt, "Expose the wound")
            .At("10:28", new Payload.CasualtyLookedOver(BreathingHard: true))
            .Says("10:29", Verdict.CheckFirst, "Bare the chest");

    [Fact]
    public void Arvid_found_with_a_strap_round_the_thigh()
    {
        new Played(Who("Arvid", 58), null)
            .At("09:00", new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding))
            .At(
                new Happened(Some.At("06:00"), Some.At("08:30")),
                new Payload.TourniquetTightened("t1", Limb.LeftLeg, Make: TourniquetMake.Improvised, Wound: "w1")
            )
            .First("09:05", "Has it stopped?")
            .At("09:10", Ready)
            .At("09:15", Good)
            .At("09:27", Good, Dry)
            .Says("09:28", Verdict.CheckFirst, "Ask for advice")
            .At("09:29", NotReached)
            .Says("09:30", Verdict.Attempt, "cautions of a late release") // three and a half hours, at the worst
            .At("11:20", NotReached, Some.NothingElse, CanWatch, Dry, Good)
            .At("11:32", Good)
            .Says("11:40", Verdict.Attempt, "grave caution of the late hours")
            .Says("11:41", Verdict.LeaveOn, "no time left")
            .Says("12:00", Verdict.LeaveOn, "Leave it tight");
    }

    [Fact]
    public void Kristin_stabbed_in_the_belly_as_well() =>
        new Played(Who("Kristin", 39), "10:00")
            .At("10:02", new Payload.WoundFound("w2", null, BodyRegion.Abdomen, WoundNature.Bleeding))
            .At("10:04", Dry)
            .First("10:05", "Does it bleed now, the abdomen?")
            .At("10:06", new Payload.BleedingChecked("w2", Bleeding.Oozing))
            .At("10:08", Ready)
            .At("10:10", new Payload.CasualtyLookedOver(false, TrunkWound: true, false, false, false))
            .At("10:12", Good)
            .At("10:24", Good, Dry)
            .Says("10:25", Verdict.CheckFirst, "Ask for advice: hidden bleeding may follow")
            .At("10:27", new Payload.ContactTried(true))
            .At("10:30", Allowed)
            .Says("10:31", Verdict.Attempt, "Nothing by mouth")
            .Cautions("10:31", "may bleed inside");

    [Fact]
    public void Nils_half_an_hour_before_six_hours() =>
        new Played(Who("Nils", 47), "06:00")
            .At("11:10", Ready)
            .At("11:10", new Payload.SuppliesStated("haemostatic-gauze", 2))
            .At("11:15", Good)
            .At("11:20", Allowed)
            .At("11:27", Good, Dry)
            .Says("11:30", Verdict.Attempt, "grave caution of the late hours")
            .Cautions("11:30", "Four hours and more")
            .At("11:31", Begun)
            .At("11:40", new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze))
            .Says("11:59", Verdict.Attempt, "Go on with the attempt")
            .Says("12:00", Verdict.LeaveOn, "Leave it tight");

    [Fact]
    public void Tove_lifted_while_the_wound_is_watched()
    {
        var day = new Played(Who("Tove", 26), "10:00")
            .At("10:08", Ready)
            .At("10:10", Good)
            .At("10:22", Good, Dry)
            .At("10:24", Begun)
            .At("10:40", Slack)
            .At("10:59", Dry)
            .At("11:00", new Payload.CasualtyMoved(Movement.Lifted, MovePhase.Moved))
            .Due("11:01", "watch the wound without a break until 2031-05-04 11:05 UTC");
        var unseen = day.Now("11:06").Due.Single(d => d.Task == "watch.left-leg");
        Assert.Equal((Some.At("11:00"), true), (unseen.At, unseen.Leads)); // nobody has looked since the move
        day.At("11:06", Dry);
        Assert.Equal(Some.At("11:08"), day.Now("11:06").Due.Single(d => d.Task == "watch.left-leg").At);
    }

    [Fact]
    public void Eirik_looked_at_by_halves() =>
        new Played(Who("Eirik", 36), "10:00")
            .At("10:08", Ready)
            .At(
                "10:20",
                new Payload.SignsTaken
                {
                    HeartRate = 88,
                    RespiratoryRate = 16,
                    RadialPulse = RadialPulse.Strong,
                    Mental = Mental.Alert,
                }
            )
            .At(
                "10:31",
                new Payload.SignsTaken
                {
                    Pale = false,
                    Cool = false,
                    Clammy = false,
                    Dizzy = false,
                    Systolic = 122,
                }
            )
            .Says("10:32", Verdict.CheckFirst, "")
            .At("10:38", Good, Dry)
            .Says("10:39", Verdict.CheckFirst, "")
            .At("10:39", Some.NothingElse)
            .At("10:49", Good)
            .Says("10:50", Verdict.Attempt, "Expose the wound");

    [Fact]
    public void Sigrid_all_alone() =>
        new Played(Who("Sigrid", 31), "10:00")
            .At("10:08", Ready)
            .At("10:09", new Payload.WatchStated(true, Watcher.Casualty))
            .At("10:10", Good)
            .At("10:22", Good, Dry)
            .Says("10:23", Verdict.CheckFirst, "watch the wound")
            .At("10:25", NotReached)
            .Says("10:26", Verdict.Attempt, "Expose the wound")
            .Cautions("10:26", "a hand on the tightener");

    [Fact]
    public void Anders_pale_and_steady_and_nobody_to_ask() =>
        new Played(Who("Anders", 35), "10:00")
            .At("10:08", Ready)
            .At("10:10", Good with { Pale = true })
            .Says("10:11", Verdict.CheckFirst, "look again in ten minutes")
            .At("10:21", Good with { Pale = true }, Dry)
            .Says("10:22", Verdict.LeaveOn, "Ask for advice")
            .At("10:23", NotReached)
            .Says("10:24", Verdict.LeaveOn, "next look in ten minutes")
            .At("10:36", Some.NothingElse)
            .At("10:42", Good with { Pale = true, HeartRate = 88 })
            .Says("10:43", Verdict.Attempt, "Expose the wound")
            .Cautions("10:43", "Nobody can be reached");

    [Fact]
    public void Liv_both_forearms_in_the_saw() =>
        new Played(Who("Liv", 44), null)
            .At(
                "10:00",
                new Payload.WoundFound("w1", Limb.LeftArm, null, WoundNature.Bleeding),
                new Payload.WoundFound("w2", Limb.RightArm, null, WoundNature.Bleeding)
            )
            .At("10:01", new Payload.TourniquetTightened("t1", Limb.LeftArm, Wound: "w1"))
            .At("10:02", new Payload.TourniquetTightened("t2", Limb.RightArm, Wound: "w2"))
            .At("10:08", Ready)
            .At("10:09", new Payload.BleedingChecked("w2", Bleeding.None))
            .At("10:10", NoCuff with { RadialPulse = null })
            .At("10:22", NoCuff with { RadialPulse = null }, Dry)
            .Says("10:23", Verdict.CheckFirst, "Time the refill on a warm finger or toe", Limb.LeftArm)
            .At("10:24", NoCuff with { RadialPulse = null, CapillaryRefillS = 2 })
            .Says("10:25", Verdict.Attempt, "pulse rate hides blood loss", Limb.LeftArm)
            .Says("10:25", Verdict.CheckFirst, "Wait with this limb", Limb.RightArm);

    [Fact]
    public void Gerd_on_apixaban_far_from_everybody() =>
        new Played(new("Gerd", Sex.Female, 68, Medicines: ["apixaban"]), "10:00")
            .At("10:08", Ready)
            .At("10:10", Good with { Systolic = 138 })
            .At("10:22", Good with { Systolic = 136 }, Dry)
            .Says("10:23", Verdict.CheckFirst, "Ask for advice: the blood clots badly")
            .At("10:24", NotReached)
            .At("10:37", Some.NothingElse)
            .At("10:40", Good with { Systolic = 138 })
            .Says("10:41", Verdict.Attempt, "Expose the wound")
            .Cautions("10:41", "hold pressure twice as long");
}
