namespace Farhold.App.Words;

/// <summary>Of the places of care: Now, Signs, Log, and the entry forms.</summary>
public sealed partial class Texts
{
    public string PlaceSigns => Get();

    public string Logged(string what) => Fill(what);

    public string LoggedThen(string what, string time) => Fill(what, time);

    public string Yes => Get();

    public string NoWord => Get();

    public string AtOnceTitle => Get();

    public string TightenedNow(string limb, string tourniquet) => Fill(limb, tourniquet);

    public string BledAndTightened(string what) => Fill(what);

    public string BleedingAgain(string what) => Fill(what);

    public string LoosenedAt(string what) => Fill(what);

    public string ElsewhereTitle => Get();

    public string ElsewhereWhy => Get();

    public string NoTourniquetYet => Get();

    public string CheckTitle(int count) => Fill(count);

    public string ShowMore(int count) => Fill(count);

    public string AllReasons(string what) => Fill(what);

    public string SinceFirst => Get();

    public string AtTime(string what) => Fill(what);

    public string InWord => Get();

    public string AgoWord => Get();

    public string AttemptUnderWay => Get();

    public string QuickTitle => Get();

    public string QuickMore => Get();

    public string QuickTightened => Get();

    public string QuickWound => Get();

    public string QuickBleeding => Get();

    public string QuickSlackened => Get();

    public string QuickRemoved => Get();

    public string QuickAttempt => Get();

    public string QuickHelp => Get();

    public string QuickWatch => Get();

    public string QuickSupplies => Get();

    public string QuickNote => Get();

    public string QuickSigns => Get();

    public string QuickPacked => Get();

    public string QuickHeld => Get();

    public string QuickDressed => Get();

    public string QuickEnded => Get();

    public string QuickBeyond => Get();

    public string BleedingNone => Get();

    public string BleedingOozing => Get();

    public string BleedingActive => Get();

    public string OutcomeHeld => Get();

    public string OutcomeBled => Get();

    public string OutcomeAbandoned => Get();

    public string BeyondPresent => Get();

    public string BeyondAbsent => Get();

    public string WatchAble => Get();

    public string WatchCasualty => Get();

    public string WatchUnable => Get();

    public string TightenNew(string what) => Fill(what);

    public string TightenAgain(string what) => Fill(what);

    public string TightenAnother(string what) => Fill(what);

    public string AttemptOf(string what) => Fill(what);

    public string AttemptAgainst(string what) => Fill(what);

    public string NoWoundYet => Get();

    public string NoTourniquetTight => Get();

    public string NoAttempt => Get();

    public string HelpLikelyIn => Get();

    public string HelpRange => Get();

    public string HelpEarliestIn => Get();

    public string DueMore(int count) => Fill(count);

    public string Hours(int hours) => Fill(hours);

    public string Minutes(int minutes) => Fill(minutes);

    public string InHours(int hours) => Fill(hours);

    public string DayLater => Get();

    public string CountNone => Get();

    public string WoundBleeding => Get();

    public string WoundAmputation => Get();

    public string WoundPartial => Get();

    public string WoundElsewhere => Get();

    public string NoteCalled => Get();

    public string NoteWarm => Get();

    public string NotePain => Get();

    public string EarlierThanNow => Get();

    public string NowAfterAll => Get();

    public string HappenedAt(string what) => Fill(what);

    public string FullForm => Get();

    public string CloseChoice => Get();

    public string WhenFirst => Get();

    public string WhenGoOn(string what) => Fill(what);

    public string WhenOther => Get();

    public string LogAtTime(string what, string time) => Fill(what, time);

    public string LogNotYet => Get();

    public string DueTitle => Get();

    public string OverdueBy => Get();

    public string TickOff => Get();

    public string TickOffLong(string what) => Fill(what);

    public string SeenAndSettled => Get();

    /// <summary>Into the record: why a chain that does not hold was settled.</summary>
    public string ChainLookedAt => Get();

    public string Rewritten => Get();

    /// <summary>Into the record, likewise.</summary>
    public string RewrittenReason => Get();

    public string TakeSigns => Get();

    public string LogAdvice => Get();

    public string EnterAge => Get();

    public string LogAge => Get();

    public string CautionsHead => Get();

    public string DoubtsTitle => Get();

    public string RemarksTitle => Get();

    public string WhyTitle(string what) => Fill(what);

    public string FindingsAgainst => Get();

    public string FindingsUnknown => Get();

    public string FindingsFine => Get();

    public string SourceIs(string what) => Fill(what);

    public string NoVerdictHere => Get();

    public string EnterTitle => Get();

    public string LogEntry => Get();

    public string KindTask => Get();

    public string KindOpened => Get();

    public string KindEnded => Get();

    public string KindDrug => Get();

    public string KindFluid => Get();

    public string KindUrine => Get();

    public string KindAdvice => Get();

    public string KindLookedOver => Get();

    public string KindRegion => Get();

    public string KindContact => Get();

    public string KindQuestion => Get();

    public string KindMoved => Get();

    public string KindPosition => Get();

    public string KindOutcome => Get();

    public string NotSaid => Get();

    public string NotSaidOf(string what) => Fill(what);

    public string OnePerLine(string what) => Fill(what);

    public string NewName(string what) => Fill(what);

    public string FieldNote => Get();

    public string FieldSex => Get();

    public string FieldAge => Get();

    public string FieldMass => Get();

    public string FieldAllergies => Get();

    public string FieldMedicines => Get();

    public string FieldHistory => Get();

    public string FieldWound => Get();

    public string FieldLimb => Get();

    public string FieldRegion => Get();

    public string FieldNature => Get();

    public string FieldTourniquet => Get();

    public string FieldMake => Get();

    public string FieldPlace => Get();

    public string FieldMaterial => Get();

    public string FieldMinutes => Get();

    public string FieldDressing => Get();

    public string FieldBleeding => Get();

    public string FieldOutcome => Get();

    public string FieldAble => Get();

    public string FieldItem => Get();

    public string FieldCount => Get();

    public string FieldDrug => Get();

    public string FieldAmount => Get();

    public string FieldUnit => Get();

    public string FieldRoute => Get();

    public string FieldFluid => Get();

    public string FieldMillilitres => Get();

    public string FieldTask => Get();

    public string FieldLikely => Get();

    public string FieldEarliest => Get();

    public string FieldLatest => Get();

    public string FieldBasis => Get();

    public string FieldFrom => Get();

    public string FieldAdvice => Get();

    public string FieldAllows => Get();

    public string AllowsAttempt => Get();

    public string AllowsNone => Get();

    public string FieldHow => Get();

    public string FieldTo => Get();

    public string FieldWhy => Get();

    public string FieldWatcher => Get();

    public string FieldCare => Get();

    public string FieldBleedingElsewhere => Get();

    public string FieldTrunkWound => Get();

    public string FieldBreathingHard => Get();

    public string FieldVeryCold => Get();

    public string FieldBloodThinner => Get();

    public string FieldPart => Get();

    public string FieldOrLimb => Get();

    public string FieldFound => Get();

    public string FieldReached => Get();

    public string FieldWhom => Get();

    public string FieldContactHow => Get();

    public string FieldQuestion => Get();

    public string FieldAnswers => Get();

    public string FieldUntil => Get();

    public string FieldReadBack => Get();

    public string FieldPhase => Get();

    public string FieldMovedHow => Get();

    public string FieldLat => Get();

    public string FieldLon => Get();

    public string FieldAccuracy => Get();

    public string FieldAltitude => Get();

    public string FieldSurvived => Get();

    public string FieldLimbOutcome => Get();

    public string CareHands => Get();

    public string CareClinic => Get();

    public string CareSurgery => Get();

    public string WhyBleeding => Get();

    public string WhyPrecaution => Get();

    public string WhyReSited => Get();

    public string WatcherOther => Get();

    public string WatcherCasualty => Get();

    public string FoundNothing => Get();

    public string FoundWound => Get();

    public string FoundOther => Get();

    public string PhaseAboutTo => Get();

    public string PhaseMoved => Get();

    public string MovedTurned => Get();

    public string MovedLifted => Get();

    public string MovedWalked => Get();

    public string MovedCarried => Get();

    public string MovedVehicle => Get();

    public string MovedBoat => Get();

    public string MovedAircraft => Get();

    public string NoQuestionYet => Get();

    public string PadSign => Get();

    public string AmendTitle => Get();

    public string AmendTime => Get();

    public string AmendLog => Get();

    public string AmendNothing => Get();

    public string AmendUnable => Get();

    public string HappenedWas(string what) => Fill(what);

    public string Amend => Get();

    public string Change => Get();

    public string ChangeLong(string what) => Fill(what);

    public string EnteredAs(string what) => Fill(what);

    public string OlderEntries(int count) => Fill(count);

    public string WithdrawWhy => Get();

    public string WithdrawOther => Get();

    public string WithdrawMissing => Get();

    public string ReasonTwice => Get();

    public string ReasonNever => Get();

    public string ReasonOther => Get();

    public string ReasonSlip => Get();

    public string SignHeartRate => Get();

    public string SignBreathRate => Get();

    public string SignSystolic => Get();

    public string SignDiastolic => Get();

    public string SignSpo2 => Get();

    public string SignTemperature => Get();

    public string SignPain => Get();

    public string SignRefill => Get();

    public string SignMental => Get();

    public string SignRadialPulse => Get();

    public string SignSkin => Get();

    public string SignDizzy => Get();

    public string SignPale => Get();

    public string SignCool => Get();

    public string SignClammy => Get();

    public string SignOxygen => Get();

    public string SignComaScale => Get();

    public string SignEye => Get();

    public string SignVerbal => Get();

    public string SignMotor => Get();

    public string NoCuff => Get();

    public string NoCuffQuestion => Get();

    public string BeyondOn(string what) => Fill(what);

    public string SkinDone(int count) => Fill(count);

    public string SignsMissing => Get();

    public string LogSigns => Get();

    public string NextPart(string what) => Fill(what);

    public string LastSeenTitle => Get();

    public string NeverSeen => Get();

    public string OldIs(string what) => Fill(what);

    public string TooOld => Get();

    public string ShockIs(string what) => Fill(what);

    public string CourseTooFew => Get();

    public string CourseNone => Get();

    public string CourseRising => Get();

    public string CourseFalling => Get();

    public string ChartSays(int count, string least, string most) => Fill(count, least, most);

    public string ChartTable => Get();

    public string ChartTableLast(int shown, int all) => Fill(shown, all);

    public string SumsTitle => Get();

    public string ShockIndexName => Get();

    public string ShockIndexClass(string what) => Fill(what);

    public string MeanPressure => Get();

    public string SumsOf(string what) => Fill(what);

    public string SumsCaution => Get();

    public string News2Title => Get();

    public string News2Low => Get();

    public string News2LowMedium => Get();

    public string News2Medium => Get();

    public string News2High => Get();

    public string News2AtWorst(string what) => Fill(what);

    public string News2Open(string what) => Fill(what);

    public string News2Parts => Get();

    public string News2Source => Get();

    public string News2Under16 => Get();

    public string News2AgeUnknown => Get();

    public string News2Pregnancy => Get();

    public string News2Altitude => Get();

    public string PartBreath => Get();

    public string PartSpo2 => Get();

    public string PartOxygen => Get();

    public string PartSystolic => Get();

    public string PartHeart => Get();

    public string PartMind => Get();

    public string PartTemperature => Get();

    public string KnownNever => Get();

    public string KnownStale => Get();

    public string KnownFresh => Get();

    public string CountByTapping => Get();

    public string TypeInstead => Get();

    public string TapTitle(string what) => Fill(what);

    public string PerMinute => Get();

    public string TapBetween(string low, string high) => Fill(low, high);

    public string TapHere(string what) => Fill(what);

    public string TapAgain => Get();

    public string TapUse(string what) => Fill(what);

    public string TapEnough => Get();

    public string TapIrregular => Get();

    public string TapGoOn(string what) => Fill(what);

    public string Reassess => Get();
}
