using System.Collections.Immutable;

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
    QuestionTaken,
    AdviceReceived,
    CasualtyMoved,
    PositionNoted,
    OutcomeReported,
    RulesStated,
    Note,
    EntryAmended,
    EntryWithdrawn,
    CareEnded,
    InjuryStated,
    StepLooked,
    WeatherStated,
    StageNoted,

    /// <summary>A kind that this version does not know.</summary>
    OfNewerVersion,
}

public static class Kinds
{
    /// <summary>Wire names by <see cref="Kind"/>; the last, of a newer version, has none.</summary>
    private static readonly string[] Wires = [.. Enum.GetNames<Kind>().SkipLast(1).Select(WireName)];

    private static readonly Utf8Names Names = new(Wires);

    /// <summary>The walk over the fields of each kind, in the order of <see cref="Records.Kind"/>.</summary>
    private static readonly Described[] All =
    [
        Walk<Payload.CasualtyOpened>(Payload.CasualtyOpened.Through),
        Walk<Payload.WoundFound>(Payload.WoundFound.Through),
        Walk<Payload.TourniquetTightened>(Payload.TourniquetTightened.Through),
        Walk<Payload.TourniquetSlackened>(Payload.TourniquetSlackened.Through),
        Walk<Payload.TourniquetRemoved>(Payload.TourniquetRemoved.Through),
        Walk<Payload.WoundPacked>(Payload.WoundPacked.Through),
        Walk<Payload.PressureHeld>(Payload.PressureHeld.Through),
        Walk<Payload.DressingApplied>(Payload.DressingApplied.Through),
        Walk<Payload.BleedingChecked>(Payload.BleedingChecked.Through),
        Walk<Payload.AttemptStarted>(Payload.AttemptStarted.Through),
        Walk<Payload.AttemptEnded>(Payload.AttemptEnded.Through),
        Walk<Payload.SignsTaken>(Payload.SignsTaken.Through),
        Walk<Payload.WatchStated>(Payload.WatchStated.Through),
        Walk<Payload.SuppliesStated>(Payload.SuppliesStated.Through),
        Walk<Payload.DrugGiven>(Payload.DrugGiven.Through),
        Walk<Payload.FluidGiven>(Payload.FluidGiven.Through),
        Walk<Payload.UrineMeasured>(Payload.UrineMeasured.Through),
        Walk<Payload.TaskDone>(Payload.TaskDone.Through),
        Walk<Payload.HelpExpected>(Payload.HelpExpected.Through),
        Walk<Payload.CasualtyLookedOver>(Payload.CasualtyLookedOver.Through),
        Walk<Payload.RegionLooked>(Payload.RegionLooked.Through),
        Walk<Payload.ContactTried>(Payload.ContactTried.Through),
        Walk<Payload.QuestionAsked>(Payload.QuestionAsked.Through),
        Walk<Payload.QuestionTaken>(Payload.QuestionTaken.Through),
        Walk<Payload.AdviceReceived>(Payload.AdviceReceived.Through),
        Walk<Payload.CasualtyMoved>(Payload.CasualtyMoved.Through),
        Walk<Payload.PositionNoted>(Payload.PositionNoted.Through),
        Walk<Payload.OutcomeReported>(Payload.OutcomeReported.Through),
        Walk<Payload.RulesStated>(Payload.RulesStated.Through),
        Walk<Payload.NoteWritten>(Payload.NoteWritten.Through),
        Walk<Payload.EntryAmended>(Payload.EntryAmended.Through),
        Walk<Payload.EntryWithdrawn>(Payload.EntryWithdrawn.Through),
        Walk<Payload.CareEnded>(Payload.CareEnded.Through),
        Walk<Payload.InjuryStated>(Payload.InjuryStated.Through),
        Walk<Payload.StepLooked>(Payload.StepLooked.Through),
        Walk<Payload.WeatherStated>(Payload.WeatherStated.Through),
        Walk<Payload.StageNoted>(Payload.StageNoted.Through),
        Walk<Payload.OfNewerVersion>(Payload.OfNewerVersion.Through),
    ];

    /// <summary>Number of kinds, the unknown one included.</summary>
    public static int Count => Wires.Length + 1;

    public static string Wire(Kind kind) => kind == Kind.OfNewerVersion ? "of-newer-version" : Wires[(int)kind];

    public static Kind? Parse(ReadOnlySpan<byte> utf8)
    {
        var index = Names.IndexOf(utf8);
        return index < 0 ? null : (Kind)index;
    }

    public static Kind Of(Payload payload) => payload.OfKind;

    /// <summary>The fields of a kind, in the order in which they are written.</summary>
    public static ImmutableArray<EntryField> Fields(Kind kind) => All[(int)kind].Fields.Value;

    /// <summary>Reads what an entry of a kind says from the fields of its line.</summary>
    internal static Payload Read(Kind kind, EntryFields line) => All[(int)kind].Through(line, null);

    /// <summary>Writes the fields of an entry.</summary>
    internal static void Write(Payload payload, FieldWriter into) => All[(int)payload.OfKind].Through(into, payload);

    private static Described Walk<T>(Func<FieldCodec, T?, T> through)
        where T : Payload => new((f, p) => through(f, (T?)p), new(() => FieldLister.Of(through)));

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

    private sealed record Described(Func<FieldCodec, Payload?, Payload> Through, Lazy<ImmutableArray<EntryField>> Fields);
}
