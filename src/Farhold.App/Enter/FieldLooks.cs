using System.Collections.Immutable;

namespace Farhold.App.Enter;

/// <summary>How a field of the record stands in a form.</summary>
/// <param name="Decimals">Of a number.</param>
/// <param name="Long">A text of several lines.</param>
/// <param name="Named">A word as it stands on its button; null: as in the record.</param>
public sealed record FieldLook(Func<Texts, string> Label, int Decimals = 0, bool Long = false, Func<Texts, string, string>? Named = null);

/// <summary>
/// The words above the fields of the forms. A field means the same in most kinds; where it does not, it is looked up by both.
/// </summary>
public static class FieldLooks
{
    /// <summary>Written by the app.</summary>
    public static readonly ImmutableArray<string> Hidden = ["casualty", "plan"];

    private static readonly Dictionary<string, FieldLook> Looks = new()
    {
        ["alias"] = new(t => t.AliasLabel),
        ["sex"] = new(t => t.FieldSex, Named: By<Sex>((t, w) => t.Word(w))),
        ["ageYears"] = new(t => t.FieldAge),
        ["massKg"] = new(t => t.FieldMass, 1),
        ["allergies"] = new(t => t.FieldAllergies),
        ["medicines"] = new(t => t.FieldMedicines),
        ["history"] = new(t => t.FieldHistory, Long: true),
        ["wound"] = new(t => t.FieldWound),
        ["limb"] = new(t => t.FieldLimb, Named: By<Limb>((t, w) => t.Word(w))),
        ["region"] = new(t => t.FieldRegion, Named: By<BodyRegion>((t, w) => t.Word(w))),
        ["nature"] = new(t => t.FieldNature, Named: By<WoundNature>((t, w) => t.Word(w))),
        ["note"] = new(t => t.FieldNote, Long: true),
        ["tourniquet"] = new(t => t.FieldTourniquet),
        ["place"] = new(t => t.FieldPlace),
        ["make"] = new(t => t.FieldMake, Named: By<TourniquetMake>((t, w) => t.Word(w))),
        ["why"] = new(t => t.FieldWhy, Named: By<TighteningReason>((t, w) => t.WhyWord(w))),
        ["material"] = new(t => t.FieldMaterial, Named: By<PackingMaterial>((t, w) => t.Word(w))),
        ["minutes"] = new(t => t.FieldMinutes),
        ["dressing"] = new(t => t.FieldDressing, Named: By<DressingKind>((t, w) => t.Word(w))),
        ["bleeding"] = new(t => t.FieldBleeding, Named: By<Bleeding>((t, w) => t.Word(w))),
        ["outcome"] = new(t => t.FieldOutcome),
        ["mental"] = new(t => t.SignMental, Named: By<Mental>((t, w) => t.Word(w))),
        ["gcs"] = new(t => t.SignComaScale),
        ["eye"] = new(t => t.SignEye),
        ["verbal"] = new(t => t.SignVerbal),
        ["motor"] = new(t => t.SignMotor),
        ["radialPulse"] = new(t => t.SignRadialPulse, Named: By<RadialPulse>((t, w) => t.Word(w))),
        ["dizzy"] = new(t => t.SignDizzy),
        ["pale"] = new(t => t.SignPale),
        ["cool"] = new(t => t.SignCool),
        ["clammy"] = new(t => t.SignClammy),
        ["onOxygen"] = new(t => t.SignOxygen),
        ["noPressureCuff"] = new(t => t.NoCuff),
        ["distalPulse"] = new(t => t.QuickBeyond),
        ["able"] = new(t => t.FieldAble),
        ["who"] = new(t => t.FieldWatcher, Named: By<Watcher>((t, w) => t.WatcherWord(w))),
        ["item"] = new(t => t.FieldItem),
        ["count"] = new(t => t.FieldCount),
        ["drug"] = new(t => t.FieldDrug),
        ["amount"] = new(t => t.FieldAmount, 2),
        ["unit"] = new(t => t.FieldUnit),
        ["route"] = new(t => t.FieldRoute),
        ["fluid"] = new(t => t.FieldFluid, Named: By<Fluid>((t, w) => t.Word(w))),
        ["millilitres"] = new(t => t.FieldMillilitres),
        ["task"] = new(t => t.FieldTask),
        ["care"] = new(t => t.FieldCare, Named: By<HelpCare>((t, w) => t.CareWord(w))),
        ["likely"] = new(t => t.FieldLikely),
        ["earliest"] = new(t => t.FieldEarliest),
        ["latest"] = new(t => t.FieldLatest),
        ["basis"] = new(t => t.FieldBasis, Long: true),
        ["bleedingElsewhere"] = new(t => t.FieldBleedingElsewhere),
        ["trunkWound"] = new(t => t.FieldTrunkWound),
        ["breathingHard"] = new(t => t.FieldBreathingHard),
        ["veryCold"] = new(t => t.FieldVeryCold),
        ["bloodThinner"] = new(t => t.FieldBloodThinner),
        ["found"] = new(t => t.FieldFound, Named: By<LookFound>((t, w) => t.FoundWord(w))),
        ["reached"] = new(t => t.FieldReached),
        ["from"] = new(t => t.FieldFrom),
        ["allows"] = new(t => t.FieldAllows),
        ["answers"] = new(t => t.FieldAnswers),
        ["until"] = new(t => t.FieldUntil),
        ["counted"] = new(t => t.FieldCounted),
        ["readBack"] = new(t => t.FieldReadBack),
        ["phase"] = new(t => t.FieldPhase, Named: By<MovePhase>((t, w) => t.PhaseWord(w))),
        ["lat"] = new(t => t.FieldLat, 5),
        ["lon"] = new(t => t.FieldLon, 5),
        ["accuracyM"] = new(t => t.FieldAccuracy),
        ["altitudeM"] = new(t => t.FieldAltitude),
        ["survived"] = new(t => t.FieldSurvived),
        ["limbOutcome"] = new(t => t.FieldLimbOutcome, Named: By<LimbFate>((t, w) => t.Word(w))),
        ["airC"] = new(t => t.FieldAir),
        ["windKmh"] = new(t => t.FieldWind),
        ["mechanism"] = new(t => t.FieldMechanism, Named: By<Mechanism>((t, w) => t.MechanismWord(w))),
        ["step"] = new(t => t.FieldStep, Named: By<LookStep>((t, w) => t.StepWord(w))),
        ["side"] = new(t => t.FieldSide, Named: By<BodySide>((t, w) => t.SideWord(w))),
        ["face"] = new(t => t.FieldFace, Named: By<BodyFace>((t, w) => t.FaceWord(w))),
        ["site"] = new(t => t.FieldSite, Named: By<TourniquetSite>((t, w) => t.SiteWord(w))),
        ["onSkin"] = new(t => t.FieldOnSkin),
        ["pregnant"] = new(t => t.FieldPregnant),
        ["authority"] = new(t => t.FieldAuthority),
        ["level"] = new(t => t.FieldLevel),
        ["fasciotomy"] = new(t => t.FieldFasciotomy),
        ["nerve"] = new(t => t.FieldNerve, Named: By<NerveFate>((t, w) => t.NerveWord(w))),
        ["kidney"] = new(t => t.FieldKidney, Named: By<KidneyFate>((t, w) => t.KidneyWord(w))),
        ["infection"] = new(t => t.FieldInfection),
        ["hospitalDays"] = new(t => t.FieldHospitalDays),
        ["how"] = new(t => t.FieldHow),
        ["to"] = new(t => t.FieldTo),
        ["stage"] = new(t => t.FieldStage),
        ["became"] = new(t => t.FieldBecame, Named: By<StageState>((t, w) => t.StageWord(w))),
    };

    /// <summary>Where a field means something else than in other kinds.</summary>
    private static readonly Dictionary<(Kind Kind, string Field), FieldLook> Own = new()
    {
        [(Kind.RegionLooked, "region")] = new(t => t.FieldPart, Named: By<BodyRegion>((t, w) => t.Word(w))),
        [(Kind.RegionLooked, "limb")] = new(t => t.FieldOrLimb, Named: By<Limb>((t, w) => t.Word(w))),
        [(Kind.ContactTried, "who")] = new(t => t.FieldWhom),
        [(Kind.ContactTried, "how")] = new(t => t.FieldContactHow),
        [(Kind.QuestionAsked, "text")] = new(t => t.FieldQuestion, Long: true),
        [(Kind.AdviceReceived, "text")] = new(t => t.FieldAdvice, Long: true),
        [(Kind.Note, "text")] = new(t => t.NoteLabel, Long: true),
        [(Kind.StepLooked, "found")] = new(t => t.FieldStepFound, Named: By<StepFound>((t, w) => t.StepFoundWord(w))),
        [(Kind.AttemptEnded, "outcome")] = new(t => t.FieldOutcome, Named: By<AttemptOutcome>((t, w) => t.Word(w))),
        [(Kind.CareEnded, "how")] = new(t => t.FieldHow, Named: By<CareEnd>((t, w) => t.Word(w))),
        [(Kind.CasualtyMoved, "how")] = new(t => t.FieldMovedHow, Named: By<Movement>((t, w) => t.MovementWord(w))),
    };

    /// <summary>What is asked first, where that is not the order of the record.</summary>
    private static readonly Dictionary<Kind, ImmutableArray<string>> Order = new()
    {
        [Kind.TourniquetTightened] = ["tourniquet", "limb", "wound", "make", "site", "onSkin", "place", "why"],
        [Kind.AttemptStarted] = ["tourniquet"],
        [Kind.AttemptEnded] = ["tourniquet"],
        [Kind.RegionLooked] = ["region"],
        [Kind.CasualtyMoved] = ["phase"],
        [Kind.SignsTaken] =
        [
            .. Sign.All.Select(s => s.Wire),
            "mental",
            "radialPulse",
            "dizzy",
            "pale",
            "cool",
            "clammy",
            "onOxygen",
            "noPressureCuff",
            "distalPulse",
            "gcs",
        ],
    };

    public static FieldLook Of(Kind kind, string field) =>
        Own.GetValueOrDefault((kind, field))
        ?? (
            kind == Kind.SignsTaken && Sign.All.FirstOrDefault(s => s.Wire == field) is { } sign
                ? new FieldLook(sign.Name, sign.Decimals)
                : null
        )
        ?? Looks.GetValueOrDefault(field)
        ?? (Wire.Parse<Limb>(field) is { } limb ? new FieldLook(t => t.Word(limb), Named: By<DistalPulse>((t, w) => t.Word(w))) : null)
        ?? throw new KeyNotFoundException($"The field {field} has no words: give it a look here.");

    public static ImmutableArray<string> First(Kind kind) => Order.GetValueOrDefault(kind, []);

    private static Func<Texts, string, string> By<T>(Func<Texts, T, string> named)
        where T : struct, Enum => (t, word) => named(t, Wire.Parse<T>(word)!.Value);
}
