using System.Diagnostics;

namespace Farhold.Records;

/// <summary>The kinds of entries, in the order of the record format.</summary>
public enum Kind
{
    CasualtyOpened,
    WoundFound,
    TourniquetTightened,
    TourniquetSlackened,
    TourniquetRemoved,
    WoundPacked,
    PressureHeld,
    DressingApplied,
    BleedingChecked,
    AttemptStarted,
    AttemptEnded,
    SignsTaken,
    WatchStated,
    SuppliesStated,
    DrugGiven,
    FluidGiven,
    UrineMeasured,
    TaskDone,
    HelpExpected,
    CasualtyLookedOver,
    RegionLooked,
    ContactTried,
    QuestionAsked,
    AdviceReceived,
    CasualtyMoved,
    PositionNoted,
    OutcomeReported,
    RulesStated,
    Note,
    EntryAmended,
    EntryWithdrawn,
    CareEnded,

    /// <summary>A kind that this version does not know.</summary>
    OfNewerVersion,
}

public static class Kinds
{
    /// <summary>Wire names by <see cref="Kind"/>; the last, of a newer version, has none.</summary>
    private static readonly string[] Wires = [.. Enum.GetNames<Kind>().SkipLast(1).Select(WireName)];

    private static readonly Utf8Names Names = new(Wires);

    /// <summary>Number of kinds, the unknown one included.</summary>
    public static int Count => Wires.Length + 1;

    public static string Wire(Kind kind) => kind == Kind.OfNewerVersion ? "of-newer-version" : Wires[(int)kind];

    public static Kind? Parse(ReadOnlySpan<byte> utf8)
    {
        var index = Names.IndexOf(utf8);
        return index < 0 ? null : (Kind)index;
    }

    public static Kind Of(Payload payload) => payload switch
    {
        Payload.CasualtyOpened => Kind.CasualtyOpened,
        Payload.WoundFound => Kind.WoundFound,
        Payload.TourniquetTightened => Kind.TourniquetTightened,
        Payload.TourniquetSlackened => Kind.TourniquetSlackened,
        Payload.TourniquetRemoved => Kind.TourniquetRemoved,
        Payload.WoundPacked => Kind.WoundPacked,
        Payload.PressureHeld => Kind.PressureHeld,
        Payload.DressingApplied => Kind.DressingApplied,
        Payload.BleedingChecked => Kind.BleedingChecked,
        Payload.AttemptStarted => Kind.AttemptStarted,
        Payload.AttemptEnded => Kind.AttemptEnded,
        Payload.SignsTaken => Kind.SignsTaken,
        Payload.WatchStated => Kind.WatchStated,
        Payload.SuppliesStated => Kind.SuppliesStated,
        Payload.DrugGiven => Kind.DrugGiven,
        Payload.FluidGiven => Kind.FluidGiven,
        Payload.UrineMeasured => Kind.UrineMeasured,
        Payload.TaskDone => Kind.TaskDone,
        Payload.HelpExpected => Kind.HelpExpected,
        Payload.CasualtyLookedOver => Kind.CasualtyLookedOver,
        Payload.RegionLooked => Kind.RegionLooked,
        Payload.ContactTried => Kind.ContactTried,
        Payload.QuestionAsked => Kind.QuestionAsked,
        Payload.AdviceReceived => Kind.AdviceReceived,
        Payload.CasualtyMoved => Kind.CasualtyMoved,
        Payload.PositionNoted => Kind.PositionNoted,
        Payload.OutcomeReported => Kind.OutcomeReported,
        Payload.RulesStated => Kind.RulesStated,
        Payload.NoteWritten => Kind.Note,
        Payload.EntryAmended => Kind.EntryAmended,
        Payload.EntryWithdrawn => Kind.EntryWithdrawn,
        Payload.CareEnded => Kind.CareEnded,
        Payload.OfNewerVersion => Kind.OfNewerVersion,
        _ => throw new UnreachableException(),
    };

    /// <summary>
    /// <c>TourniquetTightened</c> is <c>tourniquet.tightened</c> on the wire, <c>CasualtyLookedOver</c> is
    /// <c>casualty.looked-over</c>, and <c>Note</c> is <c>note</c>.
    /// </summary>
    private static string WireName(string name)
    {
        var dashed = Farhold.Text.Wire.Dashed(name);
        var dash = dashed.IndexOf('-', StringComparison.Ordinal);
        return dash < 0 ? dashed : $"{dashed[..dash]}.{dashed[(dash + 1)..]}";
    }
}
