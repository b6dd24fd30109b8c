using System.Collections.Immutable;
using System.Diagnostics;
using Farhold.App.Care;
using Farhold.App.Parts;
using Farhold.App.Phone;
using NodaTime;

namespace Farhold.App.Words;

/// <summary>Texts by value: which key stands for which word of the record.</summary>
public static class TextChoices
{
    extension(Texts t)
    {
        public ImmutableArray<string> ReadyNotes => [t.NoteCalled, t.NoteWarm, t.NotePain];

        /// <summary>What wwwroot/first-taps.js says, by its names.</summary>
        public ImmutableArray<(string Name, string Text)> FirstTapWords =>
        [
            ("title", t.FirstTapTitle), ("hint", t.FirstTapHint), ("saving", t.FirstTapSaving), ("saved", t.FirstTapSaved),
            ("stale", t.FirstTapStale), ("notSaved", t.FirstTapNotSaved), ("kept", t.FirstTapKept), ("lost", t.FirstTapLost),
            ("undo", t.Undo), ("undone", t.FirstTapUndone), ("up", t.FirstTapUp), ("goOn", t.FirstTapGoOn),
        ];

        /// <summary>On the button that logs: the time, unless it is the moment of pressing, and what is missing while it is not complete.</summary>
        public string LogAt(string log, HappenedChoice happened, Instant now, PhoneClock clock) =>
            happened is HappenedChoice.AtOnce ? log
            : happened.Resolve(now, clock) is { } at ? t.LogAtTime(log, clock.Show(at, now))
            : t.LogNotYet;

        public ImmutableArray<string> WithdrawReasons => [t.ReasonTwice, t.ReasonNever, t.ReasonOther, t.ReasonSlip];

        public string BleedingWord(Bleeding bleeding) => bleeding switch
        {
            Bleeding.None => t.BleedingNone,
            Bleeding.Oozing => t.BleedingOozing,
            Bleeding.Active => t.BleedingActive,
            _ => throw new UnreachableException(),
        };

        public string OutcomeWord(AttemptOutcome outcome) => outcome switch
        {
            AttemptOutcome.Held => t.OutcomeHeld,
            AttemptOutcome.Bled => t.OutcomeBled,
            AttemptOutcome.Abandoned => t.OutcomeAbandoned,
            _ => throw new UnreachableException(),
        };

        public string BeyondWord(DistalPulse pulse) => pulse == DistalPulse.Present ? t.BeyondPresent : t.BeyondAbsent;

        public string QuickName(Quick quick) => quick switch
        {
            Quick.Tightened => t.QuickTightened,
            Quick.Wound => t.QuickWound,
            Quick.Bleeding => t.QuickBleeding,
            Quick.Signs => t.QuickSigns,
            Quick.Slackened => t.QuickSlackened,
            Quick.Attempt => t.QuickAttempt,
            Quick.Help => t.QuickHelp,
            Quick.Watch => t.QuickWatch,
            Quick.Supplies => t.QuickSupplies,
            Quick.Note => t.QuickNote,
            Quick.Packed => t.QuickPacked,
            Quick.Held => t.QuickHeld,
            Quick.Dressed => t.QuickDressed,
            Quick.Ended => t.QuickEnded,
            Quick.Beyond => t.QuickBeyond,
            Quick.Removed => t.QuickRemoved,
            Quick.LookedOver => t.QuickLookedOver,
            Quick.Contact => t.QuickContact,
            Quick.Moved => t.QuickMoved,
            Quick.Improved => t.QuickImproved,
            _ => throw new UnreachableException(),
        };

        public string KindName(Kind kind) => kind switch
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
            Kind.HelpExpected => t.QuickHelp,
            Kind.CasualtyLookedOver => t.KindLookedOver,
            Kind.RegionLooked => t.KindRegion,
            Kind.ContactTried => t.KindContact,
            Kind.QuestionAsked => t.KindQuestion,
            Kind.AdviceReceived => t.KindAdvice,
            Kind.CasualtyMoved => t.KindMoved,
            Kind.PositionNoted => t.KindPosition,
            Kind.OutcomeReported => t.KindOutcome,
            Kind.Note => t.QuickNote,
            Kind.CareEnded => t.KindEnded,
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No form makes this kind of entry."),
        };

        public string MentalWord(Mental mental) => mental switch
        {
            Mental.Voice => t.MentalVoice,
            Mental.Pain => t.MentalPain,
            _ => Labels.Word(mental),
        };

        public string CareWord(HelpCare care) => care switch
        {
            HelpCare.Hands => t.CareHands,
            HelpCare.Clinic => t.CareClinic,
            HelpCare.Surgery => t.CareSurgery,
            _ => throw new UnreachableException(),
        };

        public string WhyWord(TighteningReason why) => why switch
        {
            TighteningReason.Bleeding => t.WhyBleeding,
            TighteningReason.Precaution => t.WhyPrecaution,
            TighteningReason.ReSited => t.WhyReSited,
            _ => throw new UnreachableException(),
        };

        public string WatcherWord(Watcher who) => who switch
        {
            Watcher.Other => t.WatcherOther,
            Watcher.Casualty => t.WatcherCasualty,
            _ => throw new UnreachableException(),
        };

        public string FoundWord(LookFound found) => found switch
        {
            LookFound.Nothing => t.FoundNothing,
            LookFound.Wound => t.FoundWound,
            LookFound.Other => t.FoundOther,
            _ => throw new UnreachableException(),
        };

        public string PhaseWord(MovePhase phase) => phase switch
        {
            MovePhase.AboutTo => t.PhaseAboutTo,
            MovePhase.Moved => t.PhaseMoved,
            _ => throw new UnreachableException(),
        };

        public string MovementWord(Movement how) => how switch
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

        public string CourseWord(SignCourse course) => course switch
        {
            SignCourse.TooFew => t.CourseTooFew,
            SignCourse.NoneShown => t.CourseNone,
            SignCourse.Rising => t.CourseRising,
            SignCourse.Falling => t.CourseFalling,
            _ => throw new UnreachableException(),
        };
    }
}
