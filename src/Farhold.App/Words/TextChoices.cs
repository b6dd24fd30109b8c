using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;

namespace Farhold.App.Words;

/// <summary>Texts by value: which key stands for which word of the record.</summary>
public static class TextChoices
{
    extension(Texts t)
    {
        /// <summary>Each as the record has it, and as the screen says it.</summary>
        public ImmutableArray<(string Recorded, string Shown)> ReadyNotes =>
            [(t.Recorded.NoteCalled, t.NoteCalled), (t.Recorded.NoteWarm, t.NoteWarm), (t.Recorded.NotePain, t.NotePain)];

        /// <summary>Ways to reach advice, each as the record has it, and as the screen says it, alone and within a line.</summary>
        public ImmutableArray<(string Recorded, string Shown, string Within)> ContactWays =>
            [
                (t.Recorded.ContactPhone, t.ContactPhone, t.ByPhone),
                (t.Recorded.ContactRadio, t.ContactRadio, t.ByRadio),
                (t.Recorded.ContactMessage, t.ContactMessage, t.ByMessage),
            ];

        /// <summary>What wwwroot/first-taps.js says, by its names.</summary>
        public ImmutableArray<(string Name, string Text)> FirstTapWords =>
            [
                ("title", t.FirstTapTitle),
                ("hint", t.FirstTapHint),
                ("saving", t.FirstTapSaving),
                ("saved", t.FirstTapSaved),
                ("stale", t.FirstTapStale),
                ("notSaved", t.FirstTapNotSaved),
                ("kept", t.FirstTapKept),
                ("lost", t.FirstTapLost),
                ("undo", t.Undo),
                ("undone", t.FirstTapUndone),
                ("up", t.FirstTapUp),
                ("goOn", t.FirstTapGoOn),
            ];

        /// <summary>Each as the record has it, and as the screen says it.</summary>
        public ImmutableArray<(string Recorded, string Shown)> WithdrawReasons =>
            [
                (t.Recorded.ReasonTwice, t.ReasonTwice),
                (t.Recorded.ReasonNever, t.ReasonNever),
                (t.Recorded.ReasonOther, t.ReasonOther),
                (t.Recorded.ReasonSlip, t.ReasonSlip),
            ];

        public string BleedingWord(Bleeding bleeding) =>
            bleeding switch
            {
                Bleeding.None => t.BleedingNone,
                Bleeding.Oozing => t.BleedingOozing,
                Bleeding.Active => t.BleedingActive,
                _ => throw new UnreachableException(),
            };

        public string OutcomeWord(AttemptOutcome outcome) =>
            outcome switch
            {
                AttemptOutcome.Held => t.OutcomeHeld,
                AttemptOutcome.Bled => t.OutcomeBled,
                AttemptOutcome.Abandoned => t.OutcomeAbandoned,
                _ => throw new UnreachableException(),
            };

        /// <summary>As a lay carer calls it.</summary>
        public string RegionWord(BodyRegion region) =>
            region switch
            {
                BodyRegion.Axilla => t.RegionArmpit,
                BodyRegion.Abdomen => t.RegionBelly,
                _ => t.Word(region),
            };

        public string BeyondWord(DistalPulse pulse) => pulse == DistalPulse.Present ? t.BeyondPresent : t.BeyondAbsent;

        public string KindName(Kind kind) =>
            kind switch
            {
                Kind.CasualtyOpened => t.KindOpened,
                Kind.WoundFound => t.QuickWound,
                Kind.TourniquetTightened => t.QuickTightened,
                Kind.TourniquetSlackened => t.QuickSlackened,
                Kind.TourniquetRemoved => t.QuickRemoved,
                Kind.WoundPacked => t.QuickPacked,
                Kind.PressureHeld => t.QuickHeld,
                Kind.DressingApplied => t.QuickDressed,
                Kind.BleedingChecked => t.QuickBleeding,
                Kind.AttemptStarted => t.QuickAttempt,
                Kind.AttemptEnded => t.QuickEnded,
                Kind.SignsTaken => t.TakeSigns,
                Kind.WatchStated => t.QuickWatch,
                Kind.SuppliesStated => t.QuickSupplies,
                Kind.DrugGiven => t.KindDrug,
                Kind.FluidGiven => t.KindFluid,
                Kind.UrineMeasured => t.KindUrine,
                Kind.TaskDone => t.KindTask,
                Kind.HelpExpected => t.KindHelp,
                Kind.CasualtyLookedOver => t.KindLookedOver,
                Kind.RegionLooked => t.KindRegion,
                Kind.ContactTried => t.KindContact,
                Kind.QuestionAsked => t.KindQuestion,
                Kind.QuestionTaken => t.KindQuestionTaken,
                Kind.AdviceReceived => t.KindAdvice,
                Kind.CasualtyMoved => t.KindMoved,
                Kind.PositionNoted => t.KindPosition,
                Kind.OutcomeReported => t.KindOutcome,
                Kind.Note => t.QuickNote,
                Kind.CareEnded => t.KindEnded,
                Kind.InjuryStated => t.KindInjury,
                Kind.StepLooked => t.KindStep,
                Kind.WeatherStated => t.KindWeather,
                Kind.StageNoted => t.KindStage,
                _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No form makes this kind of entry."),
            };

        public string MentalWord(Mental mental) =>
            mental switch
            {
                Mental.Voice => t.MentalVoice,
                Mental.Pain => t.MentalPain,
                _ => t.Word(mental),
            };

        public string StageWord(StageState state) =>
            state switch
            {
                StageState.Begun => t.StageBegun,
                StageState.Done => t.StageDone,
                StageState.Failed => t.StageFailed,
                _ => throw new UnreachableException(),
            };

        public string CareWord(HelpCare care) =>
            care switch
            {
                HelpCare.Hands => t.CareHands,
                HelpCare.Clinic => t.CareClinic,
                HelpCare.Surgery => t.CareSurgery,
                _ => throw new UnreachableException(),
            };

        public string WhyWord(TighteningReason why) =>
            why switch
            {
                TighteningReason.Bleeding => t.WhyBleeding,
                TighteningReason.Precaution => t.WhyPrecaution,
                TighteningReason.ReSited => t.WhyReSited,
                _ => throw new UnreachableException(),
            };

        public string WatcherWord(Watcher who) =>
            who switch
            {
                Watcher.Other => t.WatcherOther,
                Watcher.Casualty => t.WatcherCasualty,
                _ => throw new UnreachableException(),
            };

        public string FoundWord(LookFound found) =>
            found switch
            {
                LookFound.Nothing => t.FoundNothing,
                LookFound.Wound => t.FoundWound,
                LookFound.Other => t.FoundOther,
                _ => throw new UnreachableException(),
            };

        public string PhaseWord(MovePhase phase) =>
            phase switch
            {
                MovePhase.AboutTo => t.PhaseAboutTo,
                MovePhase.Moved => t.PhaseMoved,
                _ => throw new UnreachableException(),
            };

        public string MechanismWord(Mechanism mechanism) =>
            mechanism switch
            {
                Mechanism.Fall => t.MechanismFall,
                Mechanism.Cut => t.MechanismCut,
                Mechanism.Crush => t.MechanismCrush,
                Mechanism.Vehicle => t.MechanismVehicle,
                Mechanism.Animal => t.MechanismAnimal,
                Mechanism.Gunshot => t.MechanismGunshot,
                Mechanism.Blast => t.MechanismBlast,
                Mechanism.Heat => t.MechanismHeat,
                Mechanism.Other => t.MechanismOther,
                _ => throw new UnreachableException(),
            };

        public string StepWord(LookStep step) =>
            step switch
            {
                LookStep.Bleeding => t.StepBleeding,
                LookStep.Airway => t.StepAirway,
                LookStep.Breathing => t.StepBreathing,
                LookStep.Circulation => t.StepCirculation,
                LookStep.Cold => t.StepCold,
                LookStep.Head => t.StepHead,
                LookStep.Belly => t.StepBelly,
                LookStep.Background => t.StepBackground,
                _ => throw new UnreachableException(),
            };

        public string StepFoundWord(StepFound found) =>
            found switch
            {
                StepFound.Nothing => t.StepFoundNothing,
                StepFound.Something => t.StepFoundSomething,
                StepFound.NotLooked => t.StepNotLooked,
                _ => throw new UnreachableException(),
            };

        public string SideWord(BodySide side) =>
            side switch
            {
                BodySide.Left => t.SideLeft,
                BodySide.Right => t.SideRight,
                BodySide.Middle => t.SideMiddle,
                _ => throw new UnreachableException(),
            };

        public string FaceWord(BodyFace face) => face == BodyFace.Front ? t.FaceFront : t.FaceBack;

        public string SiteWord(TourniquetSite site) =>
            site switch
            {
                TourniquetSite.AboveWound => t.SiteAboveWound,
                TourniquetSite.High => t.SiteHigh,
                TourniquetSite.OverJoint => t.SiteOverJoint,
                _ => throw new UnreachableException(),
            };

        public string NerveWord(NerveFate nerve) =>
            nerve switch
            {
                NerveFate.Unharmed => t.NerveUnharmed,
                NerveFate.Recovered => t.NerveRecovered,
                NerveFate.Lasting => t.NerveLasting,
                _ => throw new UnreachableException(),
            };

        public string KidneyWord(KidneyFate kidney) =>
            kidney switch
            {
                KidneyFate.Unharmed => t.KidneyUnharmed,
                KidneyFate.Injured => t.KidneyInjured,
                KidneyFate.Dialysis => t.KidneyDialysis,
                _ => throw new UnreachableException(),
            };

        public string MovementWord(Movement how) =>
            how switch
            {
                Movement.Turned => t.MovedTurned,
                Movement.Lifted => t.MovedLifted,
                Movement.Walked => t.MovedWalked,
                Movement.Carried => t.MovedCarried,
                Movement.Vehicle => t.MovedVehicle,
                Movement.Boat => t.MovedBoat,
                Movement.Aircraft => t.MovedAircraft,
                _ => throw new UnreachableException(),
            };

        public string CourseWord(SignCourse course) =>
            course switch
            {
                SignCourse.TooFew => t.CourseTooFew,
                SignCourse.NoneShown => t.CourseNone,
                SignCourse.Rising => t.CourseRising,
                SignCourse.Falling => t.CourseFalling,
                _ => throw new UnreachableException(),
            };
    }
}
