using System.Collections.Immutable;

namespace Farhold.Tests.Records;

public class EntryTextTests
{
    public static TheoryData<string, Payload> Kinds { get; } =
        new()
        {
            {
                "Casualty Runa, female, 34 years, 68 kg, allergies: penicillin, medicines: none, history: asthma",
                new Payload.CasualtyOpened("Runa", Sex.Female, 34, 68, ["penicillin"], [], "asthma")
            },
            { "Wound w1 found, groin: burn (small)", new Payload.WoundFound("w1", null, BodyRegion.Groin, WoundNature.Burn, "small") },
            { "Tourniquet t1 tightened on the left arm", new Payload.TourniquetTightened("t1", Limb.LeftArm) },
            {
                "Tourniquet t1 tightened on the left arm (for wound w1; because it bled)",
                new Payload.TourniquetTightened("t1", Limb.LeftArm, Wound: "w1", Why: TighteningReason.Bleeding)
            },
            { "Tourniquet t1 slackened, still around the limb, loose", new Payload.TourniquetSlackened("t1") },
            { "Tourniquet t1 removed", new Payload.TourniquetRemoved("t1") },
            { "Wound w1 packed with haemostatic gauze", new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze) },
            { "Pressure held on wound w1 for 2.5 min", new Payload.PressureHeld("w1", 2.5) },
            { "Pressure held on wound w1 for at least 3 min, counted by the phone", new Payload.PressureHeld("w1", 3, true) },
            { "Pressure dressing on wound w1", new Payload.DressingApplied("w1", DressingKind.Pressure) },
            { "Wound w1 looked at: oozing", new Payload.BleedingChecked("w1", Bleeding.Oozing) },
            { "Attempt to convert tourniquet t1 started (wound w1)", new Payload.AttemptStarted("w1", "t1") },
            {
                "Attempt to convert tourniquet t1 ended: it bled (soaked)",
                new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Bled, "soaked")
            },
            {
                "Signs: heart rate 90 /min, blood pressure 110/70 mmHg, answers only to voice, coma scale eye 3, verbal not testable, "
                    + "motor 5, not pale, pulse below the tourniquet, left leg: absent",
                new Payload.SignsTaken
                {
                    HeartRate = 90,
                    Systolic = 110,
                    Diastolic = 70,
                    Mental = Mental.Voice,
                    Gcs = new(3, null, 5),
                    Pale = false,
                    DistalPulse = ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(Limb.LeftLeg, DistalPulse.Absent),
                }
            },
            { "Signs taken, none that this version knows", new Payload.SignsTaken() },
            { "Nobody can watch the wound closely from now on", new Payload.WatchStated(false) },
            { "The casualty alone can watch the wound closely from now on", new Payload.WatchStated(true, Watcher.Casualty) },
            { "Supplies: 2 plain gauze", new Payload.SuppliesStated("plain-gauze", 2) },
            { "Given paracetamol 1 g, mouth", new Payload.DrugGiven("paracetamol", 1, "g", "mouth") },
            { "Given 250 mL oral water, mouth", new Payload.FluidGiven(Fluid.OralWater, 250, "mouth") },
            { "Urine: 250 mL", new Payload.UrineMeasured(250) },
            {
                "Rules in force: farhold-base 2.0.0 (0123abcd), no local protocol",
                new Payload.RulesStated("farhold-base 2.0.0", "0123abcd4567")
            },
            {
                "Rules in force: farhold-base 2.0.0 (0123abcd), numbers tightened by an unsigned local protocol (89abcdef)",
                new Payload.RulesStated("farhold-base 2.0.0", "0123abcd4567", LocalHash: "89abcdef01", Standing: Standing.Unsigned)
            },
            {
                "Rules in force: farhold-base 2.0.0 (0123abcd), local protocol hut 1 (89abcdef), signed by Hut rescue, 12345",
                new Payload.RulesStated("farhold-base 2.0.0", "0123abcd4567", "hut 1", "89abcdef01", Standing.Verified, "Hut rescue, 12345")
            },
            {
                "Rules in force: farhold-base 2.0.0 (0123abcd), local protocol hut 1 (89abcdef), EXPIRED: what it allowed is not in force",
                new Payload.RulesStated("farhold-base 2.0.0", "0123abcd4567", "hut 1", "89abcdef01", Standing.Expired)
            },
            {
                "Rules in force: farhold-base 2.0.0 (0123abcd), local protocol hut 1 (89abcdef), NOBODY HAS PROVEN THIS, until "
                    + "2031-05-04 14:10 UTC, used because: doctor on the phone",
                new Payload.RulesStated(
                    "farhold-base 2.0.0",
                    "0123abcd4567",
                    "hut 1",
                    "89abcdef01",
                    Standing.Emergency,
                    Reason: "doctor on the phone",
                    Until: Instant.FromUtc(2031, 5, 4, 14, 10)
                )
            },
            {
                "Rules in force: farhold-base 2.0.0 (0123abcd), local protocol hut 1 (89abcdef), signed by Hut rescue, 12345; LOOSENED "
                    + "by the local protocol: pale skin alone is no sign of shock; two looks 5 min apart",
                new Payload.RulesStated(
                    "farhold-base 2.0.0",
                    "0123abcd4567",
                    "hut 1",
                    "89abcdef01",
                    Standing.Verified,
                    "Hut rescue, 12345",
                    Loosened: ["pale skin alone is no sign of shock", "two looks 5 min apart"]
                )
            },
            { "Done: signs (late)", new Payload.TaskDone("signs", "late") },
            { "Done: pulse below the tourniquet, left leg", new Payload.TaskDone("pulse-beyond.left-leg") },
            { "Done: one person; compared", new Payload.TaskDone("openings-1c91327bf6fd", "one person; compared") },
            {
                "Help expected 2031-05-04 09:00 UTC, latest 2031-05-04 11:00 UTC (radio; plan p1)",
                new Payload.HelpExpected(Some.At("09:00"), null, Some.At("11:00"), "radio", "p1")
            },
            { "Surgery expected 2031-05-04 09:00 UTC", new Payload.HelpExpected(Some.At("09:00"), Care: HelpCare.Surgery) },
            {
                "Casualty looked over: no bleeding elsewhere, very cold",
                new Payload.CasualtyLookedOver(BleedingElsewhere: false, VeryCold: true)
            },
            { "Casualty looked over: nothing recorded", new Payload.CasualtyLookedOver() },
            { "Looked at the chest: a wound (graze)", new Payload.RegionLooked(null, BodyRegion.Chest, LookFound.Wound, "graze") },
            { "Looked at the right arm: nothing found", new Payload.RegionLooked(Limb.RightArm, null, LookFound.Nothing) },
            { "Tried to reach advice (duty doctor) by radio: nobody reached", new Payload.ContactTried(false, "duty doctor", "radio") },
            { "Done: repeated advice n95q2x-4 aloud", new Payload.TaskDone(TaskNames.ReadBackOf(new EntryId("n95q2x", 4))) },
            { "Asked Dr Vann: may we try?", new Payload.QuestionAsked("Dr Vann", "may we try?") },
            {
                "On the question k1-7, an answer is to come (rounds first)",
                new Payload.QuestionTaken(new EntryId("k1", 7), "rounds first")
            },
            { "Advice from Dr Vann: wait [allows no attempt]", new Payload.AdviceReceived("Dr Vann", "wait", []) },
            {
                "Advice from Dr Vann: try [allows attempt; until 2031-05-04 05:00 UTC; answers k1-7; read back]",
                new Payload.AdviceReceived("Dr Vann", "try", ["attempt"], new EntryId("k1", 7), Some.At("05:00"), true)
            },
            { "About to be moved: by boat", new Payload.CasualtyMoved(Movement.Boat, MovePhase.AboutTo) },
            { "Moved: carried (on a door)", new Payload.CasualtyMoved(Movement.Carried, MovePhase.Moved, "on a door") },
            { "Position -45.12346, 168.5 (within 20 m, altitude 1040 m)", new Payload.PositionNoted(-45.123456, 168.5, 20, 1040) },
            {
                "Outcome, from the ward: survived, left leg kept (walks)",
                new Payload.OutcomeReported("the ward", true, Limb.LeftLeg, LimbFate.Kept, "walks")
            },
            {
                "Outcome, from the ward: died, left leg lost, below the knee, fasciotomy done, nerve damage, recovered, dialysis, "
                    + "wound infected, 12 days in hospital",
                new Payload.OutcomeReported(
                    "the ward",
                    false,
                    Limb.LeftLeg,
                    LimbFate.Lost,
                    Level: "below the knee",
                    Fasciotomy: true,
                    Nerve: NerveFate.Recovered,
                    Kidney: KidneyFate.Dialysis,
                    Infection: true,
                    HospitalDays: 12
                )
            },
            { "Injured: crush (under a boulder)", new Payload.InjuryStated(Mechanism.Crush, "under a boulder") },
            { "Weather: air -5 °C, wind 30 km/h (on the ridge)", new Payload.WeatherStated(-5, 30, "on the ridge") },
            {
                "Way out, stage 2.1.1 (helicopter): given up, or it does not come (plan ridge)",
                new Payload.StageNoted("2.1.1", StageState.Failed, "ridge", "helicopter")
            },
            { "Way out, stage 3: done", new Payload.StageNoted("3", StageState.Done) },
            { "Weather: air 12.5 °C", new Payload.WeatherStated(12.5) },
            { "First look, airway: looked, nothing found", new Payload.StepLooked(LookStep.Airway, StepFound.Nothing) },
            { "First look, belly: could not be looked at (dark)", new Payload.StepLooked(LookStep.Belly, StepFound.NotLooked, "dark") },
            {
                "Wound w1 found, chest, left, at the back: bleeding",
                new Payload.WoundFound("w1", null, BodyRegion.Chest, WoundNature.Bleeding, Side: BodySide.Left, Face: BodyFace.Back)
            },
            {
                "Tourniquet t2 tightened on the left leg (5 to 7 cm above the wound; on skin; re-sited)",
                new Payload.TourniquetTightened(
                    "t2",
                    Limb.LeftLeg,
                    Why: TighteningReason.ReSited,
                    Site: TourniquetSite.AboveWound,
                    OnSkin: true
                )
            },
            { "Advice from Dr Vann (duty doctor): wait", new Payload.AdviceReceived("Dr Vann", "wait", Authority: "duty doctor") },
            { "Note: two lines", new Payload.NoteWritten("two\nlines") },
            {
                "Corrects entry k1-2: heart rate is 88, time is between 2031-05-04 02:00 UTC and 2031-05-04 02:10 UTC",
                new Payload.EntryAmended(
                    new("k1", 2),
                    JsonText.Of("""{"heartRate":88,"happened":{"earliest":"2031-05-04T02:00:00Z","latest":"2031-05-04T02:10:00Z"}}""")
                )
            },
            { "Withdraws entry k1-2: entered twice", new Payload.EntryWithdrawn(new("k1", 2), "entered twice") },
            { "Care ended: handed over to Dr Vann", new Payload.CareEnded(CareEnd.HandedOver, "Dr Vann") },
            { "Entry of a newer version (pulse.drawn): kept, counted in nothing", new Payload.OfNewerVersion("pulse.drawn") },
        };

    [Theory, MemberData(nameof(Kinds))]
    public void Every_kind_has_its_sentence(string sentence, Payload payload) => Assert.Equal(sentence, EntryText.Of(payload));

    [Fact]
    public void No_kind_is_left_out() =>
        Assert.Empty(Enum.GetValues<Kind>().Except(Kinds.Select(k => Farhold.Records.Kinds.Of(k.Data.Item2))));

    [Fact]
    public void Times_are_said_in_the_zone_asked_for_and_marked_with_it()
    {
        var wellington = NodaTime.DateTimeZoneProviders.Tzdb["Pacific/Auckland"];
        var kathmandu = NodaTime.DateTimeZoneProviders.Tzdb["Asia/Kathmandu"];
        var help = new Payload.HelpExpected(Some.At("13:00"), Some.At("11:30"), null, null, null);
        Assert.Equal("Help expected 2031-05-05 01:00 UTC+12, earliest 2031-05-04 23:30 UTC+12", EntryText.Of(help, wellington));
        Assert.Equal("2031-05-04 07:45 UTC+05:45", Say.Time(Some.At("02:00"), kathmandu));
        var due = new DueTask(Some.At("02:00"), "watch.left-leg", Limb.LeftLeg, "watch", [], false) { Until = Some.At("02:15") };
        Assert.Equal("watch until 2031-05-04 14:15 UTC+12", due.Said(wellington));
        Assert.Equal("watch until 2031-05-04 02:15 UTC", due.Said());
    }

    [Fact]
    public void Every_field_is_called_by_words() =>
        Assert.All(
            Enum.GetValues<Field>(),
            f => Assert.DoesNotContain(FieldWords.Of(Fields.Wire(f)).Replace("(mL)", "").Replace("(°C)", ""), char.IsUpper)
        );

    [Fact]
    public void Every_input_has_words()
    {
        Assert.All(Input.All, i => Assert.NotEqual(i.Name is "dizzy" or "pale" or "bleeding" ? "" : i.Name, InputWords.Name(i.Name)));
        Assert.All(Input.All, i => Assert.NotEmpty(InputWords.Name(i.Name)));
    }

    [Fact]
    public void Marks_that_turn_writing_and_control_characters_are_left_out() =>
        Assert.Equal("a b c", Plain.Line("a\u001b\u202e\nb\tc\u0007"));
}
