using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>What a debrief may find; the first of them that came is the one thing to practise.</summary>
public enum Fault
{
    /// <summary>Let out although the record, or the truth, spoke against it.</summary>
    ForbiddenLetOut,

    /// <summary>From blood that could be seen to a tight tourniquet.</summary>
    CaughtLate,

    /// <summary>Let out before it was known whether it may be.</summary>
    UndecidedLetOut,

    /// <summary>No packing, or not with the tourniquet tight.</summary>
    NotPackedTight,
    PressedShort,
    NotDressed,
    TakenOff,
    WatchedWithGaps,

    /// <summary>The record held what the truth did not, or not in time, and the verdict was another.</summary>
    IgnoranceMattered,
    DecidedLate,

    /// <summary>Logged, and never looked at.</summary>
    NeverLooked,
    LoggedWrongly,

    /// <summary>The record says that hands did what none did.</summary>
    LoggedNotDone,
    DoneNotLogged,
    LoggedAtWrongTime,
    WrittenLate,
    SignsTooOld,
    SignsMissing,
    LimbNotLookedAt,
    ExpectationMissed,
}

/// <param name="At">In seconds from the scenario's start.</param>
public sealed record Remark(Fault Fault, double At, string Text);

/// <summary>Which step there is to practise for a finding.</summary>
public static class Practice
{
    public static TeachingPoint For(Fault finding) =>
        finding switch
        {
            Fault.ForbiddenLetOut => TeachingPoint.LeaveOn,
            Fault.CaughtLate => TeachingPoint.CatchBleeding,
            Fault.UndecidedLetOut or Fault.DecidedLate or Fault.IgnoranceMattered => TeachingPoint.DecideAttempt,
            Fault.NotPackedTight => TeachingPoint.PackTight,
            Fault.PressedShort => TeachingPoint.PressLong,
            Fault.NotDressed => TeachingPoint.Dress,
            Fault.TakenOff => TeachingPoint.LeaveLoose,
            Fault.WatchedWithGaps or Fault.LimbNotLookedAt => TeachingPoint.WatchClosely,
            Fault.NeverLooked or Fault.SignsTooOld or Fault.SignsMissing => TeachingPoint.TakeSigns,
            Fault.LoggedWrongly or Fault.LoggedNotDone or Fault.DoneNotLogged or Fault.LoggedAtWrongTime or Fault.WrittenLate =>
                TeachingPoint.LogTimes,
            Fault.ExpectationMissed => TeachingPoint.DecideAttempt,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public static string Say(TeachingPoint point) =>
        point switch
        {
            TeachingPoint.DecideAttempt => DebriefTexts.DecideAttempt,
            TeachingPoint.LayOut => DebriefTexts.LayOut,
            TeachingPoint.TakeSigns => DebriefTexts.TakeSigns,
            TeachingPoint.PackTight => DebriefTexts.PackTight,
            TeachingPoint.PressLong => DebriefTexts.PressLong,
            TeachingPoint.Dress => DebriefTexts.Dress,
            TeachingPoint.SlackenSlowly => DebriefTexts.SlackenSlowly,
            TeachingPoint.LeaveLoose => DebriefTexts.LeaveLoose,
            TeachingPoint.WatchClosely => DebriefTexts.WatchClosely,
            TeachingPoint.CatchBleeding => DebriefTexts.CatchBleeding,
            TeachingPoint.LogTimes => DebriefTexts.LogTimes,
            TeachingPoint.TellPeople => DebriefTexts.TellPeople,
            TeachingPoint.LeaveOn => DebriefTexts.LeaveOn,
            TeachingPoint.KeepWarm => DebriefTexts.KeepWarm,
            TeachingPoint.AskAdvice => DebriefTexts.AskAdvice,
            TeachingPoint.SeeWarning => DebriefTexts.SeeWarning,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
