using System.Collections.Immutable;
using System.Diagnostics;
using Farhold.App.Words;

namespace Farhold.App.Care.Forms;

/// <summary>The fields of every kind of entry that a person can make or correct.</summary>
public static class EntryForms
{
    /// <summary>In the order in which they are offered.</summary>
    public static ImmutableArray<Kind> Made { get; } =
    [
        Kind.TourniquetTightened, Kind.WoundFound, Kind.BleedingChecked, Kind.SignsTaken, Kind.TourniquetSlackened, Kind.TourniquetRemoved,
        Kind.AttemptStarted, Kind.WoundPacked, Kind.PressureHeld, Kind.DressingApplied, Kind.AttemptEnded,
        Kind.HelpExpected, Kind.AdviceReceived, Kind.WatchStated, Kind.SuppliesStated, Kind.DrugGiven, Kind.FluidGiven,
        Kind.UrineMeasured, Kind.TaskDone, Kind.Note, Kind.CasualtyOpened, Kind.CareEnded,
    ];

    private static FormField Note { get; } = new FormField.Text("note", t => t.FieldNote, Long: true);

    public static ImmutableArray<FormField> Of(Kind kind) => kind switch
    {
        Kind.CasualtyOpened =>
        [
            new FormField.Text("alias", t => t.AliasLabel), Word<Sex>("sex", t => t.FieldSex),
            Number(FieldRange.AgeYears, t => t.FieldAge), Number(FieldRange.MassKg, t => t.FieldMass, 1),
            new FormField.Lines("allergies", t => t.FieldAllergies), new FormField.Lines("medicines", t => t.FieldMedicines),
            new FormField.Text("history", t => t.FieldHistory, Long: true),
        ],
        Kind.WoundFound =>
        [
            NewWound, Word<Limb>("limb", t => t.FieldLimb), Word<BodyRegion>("region", t => t.FieldRegion),
            Word<WoundNature>("nature", t => t.FieldNature), Note,
        ],
        Kind.TourniquetTightened =>
        [
            new FormField.Name("tourniquet", t => t.FieldTourniquet, Wound: false, MayBeNew: true), Word<Limb>("limb", t => t.FieldLimb),
            Wound, Word<TourniquetMake>("make", t => t.FieldMake), new FormField.Text("place", t => t.FieldPlace),
        ],
        Kind.TourniquetSlackened or Kind.TourniquetRemoved => [Tourniquet],
        Kind.WoundPacked => [Wound, Word<PackingMaterial>("material", t => t.FieldMaterial)],
        Kind.PressureHeld => [Wound, Number(FieldRange.Minutes, t => t.FieldMinutes)],
        Kind.DressingApplied => [Wound, Word<DressingKind>("dressing", t => t.FieldDressing)],
        Kind.BleedingChecked => [Wound, Word<Bleeding>("bleeding", t => t.FieldBleeding)],
        Kind.AttemptStarted => [Tourniquet, Wound],
        Kind.AttemptEnded => [Tourniquet, Wound, Word<AttemptOutcome>("outcome", t => t.FieldOutcome), Note],
        Kind.SignsTaken => SignFields.All,
        Kind.WatchStated => [new FormField.Flag("able", t => t.FieldAble)],
        Kind.SuppliesStated => [new FormField.Text("item", t => t.FieldItem), Number(FieldRange.Count, t => t.FieldCount)],
        Kind.DrugGiven =>
        [
            new FormField.Text("drug", t => t.FieldDrug), Number(FieldRange.Amount, t => t.FieldAmount, 2),
            new FormField.Text("unit", t => t.FieldUnit), new FormField.Text("route", t => t.FieldRoute), Note,
        ],
        Kind.FluidGiven =>
        [
            Word<Fluid>("fluid", t => t.FieldFluid), Number(FieldRange.Millilitres, t => t.FieldMillilitres),
            new FormField.Text("route", t => t.FieldRoute),
        ],
        Kind.UrineMeasured => [Number(FieldRange.Millilitres, t => t.FieldMillilitres)],
        Kind.TaskDone => [new FormField.Text("task", t => t.FieldTask), Note],
        Kind.HelpExpected =>
        [
            new FormField.Time("likely", t => t.FieldLikely), new FormField.Time("earliest", t => t.FieldEarliest),
            new FormField.Time("latest", t => t.FieldLatest), new FormField.Text("basis", t => t.FieldBasis, Long: true),
        ],
        Kind.AdviceReceived =>
        [
            new FormField.Text("from", t => t.FieldFrom), new FormField.Text("text", t => t.FieldAdvice, Long: true),
            new FormField.Allows("allows", t => t.FieldAllows, "attempt"),
        ],
        Kind.Note => [new FormField.Text("text", t => t.NoteLabel, Long: true)],
        Kind.CareEnded => [Word<CareEnd>("how", t => t.FieldHow), new FormField.Text("to", t => t.FieldTo), Note],
        Kind.EntryAmended or Kind.EntryWithdrawn or Kind.OfNewerVersion => [],
        _ => throw new UnreachableException(),
    };

    private static FormField Wound { get; } = new FormField.Name("wound", t => t.FieldWound, Wound: true, MayBeNew: false);

    private static FormField NewWound { get; } = new FormField.Name("wound", t => t.FieldWound, Wound: true, MayBeNew: true);

    private static FormField Tourniquet { get; } = new FormField.Name("tourniquet", t => t.FieldTourniquet, Wound: false, MayBeNew: false);

    internal static FormField Word<T>(string wire, Func<Texts, string> label)
        where T : struct, Enum => new FormField.Word(wire, label, [.. Wire.Words<T>()]);

    internal static FormField Number(FieldRange range, Func<Texts, string> label, int decimals = 0) =>
        new FormField.Number(range.Field, label, range, decimals);
}
