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
        Kind.TourniquetTightened, Kind.WoundFound, Kind.BleedingChecked, Kind.SignsTaken, Kind.CasualtyLookedOver, Kind.RegionLooked,
        Kind.TourniquetSlackened, Kind.TourniquetRemoved,
        Kind.AttemptStarted, Kind.WoundPacked, Kind.PressureHeld, Kind.DressingApplied, Kind.AttemptEnded,
        Kind.HelpExpected, Kind.ContactTried, Kind.QuestionAsked, Kind.AdviceReceived, Kind.WatchStated, Kind.SuppliesStated,
        Kind.CasualtyMoved, Kind.PositionNoted, Kind.DrugGiven, Kind.FluidGiven,
        Kind.UrineMeasured, Kind.TaskDone, Kind.Note, Kind.CasualtyOpened, Kind.CareEnded, Kind.OutcomeReported,
    ];

    private static FormField Note { get; } = new FormField.Text("note", t => t.FieldNote, Long: true);

    /// <summary>Why a form can't be logged; what is missing by the name that stands above it.</summary>
    public static string Objection(Kind kind, string reason, Texts texts) =>
        Of(kind).FirstOrDefault(f => reason == $"the field {f.Wire} is missing") is { } field ? texts.FieldMissing(field.Label(texts)) : reason;

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
            Word<TighteningReason>("why", t => t.FieldWhy, (t, w) => t.WhyWord(w)),
        ],
        Kind.TourniquetSlackened or Kind.TourniquetRemoved => [Tourniquet],
        Kind.WoundPacked => [Wound, Word<PackingMaterial>("material", t => t.FieldMaterial)],
        Kind.PressureHeld => [Wound, Number(FieldRange.Minutes, t => t.FieldMinutes)],
        Kind.DressingApplied => [Wound, Word<DressingKind>("dressing", t => t.FieldDressing)],
        Kind.BleedingChecked => [Wound, Word<Bleeding>("bleeding", t => t.FieldBleeding)],
        Kind.AttemptStarted => [Tourniquet, Wound],
        Kind.AttemptEnded => [Tourniquet, Wound, Word<AttemptOutcome>("outcome", t => t.FieldOutcome), Note],
        Kind.SignsTaken => SignFields.All,
        Kind.WatchStated => [new FormField.Flag("able", t => t.FieldAble), Word<Watcher>("who", t => t.FieldWatcher, (t, w) => t.WatcherWord(w))],
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
            Word<HelpCare>("care", t => t.FieldCare, (t, w) => t.CareWord(w)),
            new FormField.Time("likely", t => t.FieldLikely), new FormField.Time("earliest", t => t.FieldEarliest),
            new FormField.Time("latest", t => t.FieldLatest), new FormField.Text("basis", t => t.FieldBasis, Long: true),
        ],
        Kind.CasualtyLookedOver =>
        [
            new FormField.Flag("bleedingElsewhere", t => t.FieldBleedingElsewhere), new FormField.Flag("trunkWound", t => t.FieldTrunkWound),
            new FormField.Flag("breathingHard", t => t.FieldBreathingHard), new FormField.Flag("veryCold", t => t.FieldVeryCold),
            new FormField.Flag("bloodThinner", t => t.FieldBloodThinner),
        ],
        Kind.RegionLooked =>
        [
            Word<BodyRegion>("region", t => t.FieldPart), Word<Limb>("limb", t => t.FieldOrLimb),
            Word<LookFound>("found", t => t.FieldFound, (t, w) => t.FoundWord(w)), Note,
        ],
        Kind.ContactTried =>
        [
            new FormField.Flag("reached", t => t.FieldReached), new FormField.Text("who", t => t.FieldWhom),
            new FormField.Text("how", t => t.FieldContactHow),
        ],
        Kind.QuestionAsked => [new FormField.Text("to", t => t.FieldTo), new FormField.Text("text", t => t.FieldQuestion, Long: true)],
        Kind.AdviceReceived =>
        [
            new FormField.Text("from", t => t.FieldFrom), new FormField.Text("text", t => t.FieldAdvice, Long: true),
            new FormField.Allows("allows", t => t.FieldAllows, Payload.AdviceReceived.AllowsAttempt),
            new FormField.Question("answers", t => t.FieldAnswers), new FormField.Time("until", t => t.FieldUntil),
            new FormField.Flag("readBack", t => t.FieldReadBack),
        ],
        Kind.CasualtyMoved =>
        [
            Word<MovePhase>("phase", t => t.FieldPhase, (t, w) => t.PhaseWord(w)),
            Word<Movement>("how", t => t.FieldMovedHow, (t, w) => t.MovementWord(w)), Note,
        ],
        Kind.PositionNoted =>
        [
            Number(FieldRange.Lat, t => t.FieldLat, 5), Number(FieldRange.Lon, t => t.FieldLon, 5),
            Number(FieldRange.AccuracyM, t => t.FieldAccuracy), Number(FieldRange.AltitudeM, t => t.FieldAltitude),
        ],
        Kind.OutcomeReported =>
        [
            new FormField.Text("from", t => t.FieldFrom), new FormField.Flag("survived", t => t.FieldSurvived),
            Word<Limb>("limb", t => t.FieldLimb), Word<LimbFate>("limbOutcome", t => t.FieldLimbOutcome), Note,
        ],
        Kind.Note => [new FormField.Text("text", t => t.NoteLabel, Long: true)],
        Kind.CareEnded => [Word<CareEnd>("how", t => t.FieldHow), new FormField.Text("to", t => t.FieldTo), Note],
        Kind.RulesStated or Kind.EntryAmended or Kind.EntryWithdrawn or Kind.OfNewerVersion => [],
        _ => throw new UnreachableException(),
    };

    private static FormField Wound { get; } = new FormField.Name("wound", t => t.FieldWound, Wound: true, MayBeNew: false);

    private static FormField NewWound { get; } = new FormField.Name("wound", t => t.FieldWound, Wound: true, MayBeNew: true);

    private static FormField Tourniquet { get; } = new FormField.Name("tourniquet", t => t.FieldTourniquet, Wound: false, MayBeNew: false);

    internal static FormField Word<T>(string wire, Func<Texts, string> label, Func<Texts, T, string>? named = null)
        where T : struct, Enum => new FormField.Word(
            wire, label, [.. Wire.Words<T>()], named is null ? null : (t, word) => named(t, Wire.Parse<T>(word)!.Value));

    internal static FormField Number(FieldRange range, Func<Texts, string> label, int decimals = 0) =>
        new FormField.Number(range.Field, label, range, decimals);
}
