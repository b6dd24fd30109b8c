using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

/// <summary>What an entry says. Field names, units and ranges are those of the record format (see <c>FieldRange</c>).</summary>
/// <remarks>A closed family. A <c>switch</c> over it ends in <see cref="System.Diagnostics.UnreachableException"/>.</remarks>
public abstract record Payload
{
    private Payload()
    {
    }

    /// <param name="Casualty">128 random bits in base32: who this is, on whatever device; null in records that have none.</param>
    public sealed record CasualtyOpened(
        string Alias,
        Sex? Sex = null,
        double? AgeYears = null,
        double? MassKg = null,
        ImmutableArray<string> Allergies = default,
        ImmutableArray<string> Medicines = default,
        string? History = null,
        string? Casualty = null) : Payload;

    /// <summary>A wound on a limb or in a region: exactly one of the two is set.</summary>
    public sealed record WoundFound(
        string Wound, Limb? Limb, BodyRegion? Region, WoundNature Nature, string? Note = null) : Payload;

    public sealed record TourniquetTightened(
        string Tourniquet,
        Limb Limb,
        string? Place = null,
        TourniquetMake? Make = null,
        string? Wound = null,
        TighteningReason? Why = null) : Payload;

    /// <summary>Slackened and left loosely in place.</summary>
    public sealed record TourniquetSlackened(string Tourniquet) : Payload;

    public sealed record TourniquetRemoved(string Tourniquet) : Payload;

    public sealed record WoundPacked(string Wound, PackingMaterial Material) : Payload;

    public sealed record PressureHeld(string Wound, double Minutes) : Payload;

    public sealed record DressingApplied(string Wound, DressingKind Dressing) : Payload;

    public sealed record BleedingChecked(string Wound, Bleeding Bleeding) : Payload;

    public sealed record AttemptStarted(string Wound, string Tourniquet) : Payload;

    public sealed record AttemptEnded(
        string Wound, string Tourniquet, AttemptOutcome Outcome, string? Note = null) : Payload;

    /// <summary>Signs seen at one look; what was not looked at is null.</summary>
    public sealed record SignsTaken : Payload
    {
        /// <summary>Beats per minute.</summary>
        public double? HeartRate { get; init; }

        /// <summary>Breaths per minute.</summary>
        public double? BreathRate { get; init; }

        /// <summary>mmHg.</summary>
        public double? Systolic { get; init; }

        /// <summary>mmHg.</summary>
        public double? Diastolic { get; init; }

        /// <summary>Oxygen saturation by pulse oximeter, percent.</summary>
        public double? Spo2 { get; init; }

        public double? TemperatureC { get; init; }

        public Mental? Mental { get; init; }

        public GlasgowParts? Gcs { get; init; }

        public bool? Dizzy { get; init; }

        public bool? Pale { get; init; }

        public bool? Cool { get; init; }

        public bool? Clammy { get; init; }

        public RadialPulse? RadialPulse { get; init; }

        /// <summary>Seconds.</summary>
        public double? CapillaryRefillS { get; init; }

        /// <summary>0 (none) to 10 (worst imaginable).</summary>
        public double? Pain { get; init; }

        /// <summary>The pulse beyond the wound, by limb; limbs not felt are missing.</summary>
        public ImmutableSortedDictionary<Limb, DistalPulse>? DistalPulse { get; init; }

        public bool? OnOxygen { get; init; }

        /// <summary>
        /// True: there is no way to measure blood pressure here. A known answer, unlike silence; it stands until a
        /// pressure is recorded.
        /// </summary>
        public bool? NoPressureCuff { get; init; }
    }

    /// <summary>Someone can (or can't) watch the wound closely from now on.</summary>
    /// <param name="Who">Null: somebody other than the casualty.</param>
    public sealed record WatchStated(bool Able, Watcher? Who = null) : Payload;

    public sealed record SuppliesStated(string Item, int Count) : Payload;

    public sealed record DrugGiven(
        string Drug, double Amount, string Unit, string Route, string? Note = null) : Payload;

    public sealed record FluidGiven(Fluid Fluid, double Millilitres, string Route) : Payload;

    public sealed record UrineMeasured(double Millilitres) : Payload;

    public sealed record TaskDone(string Task, string? Note = null) : Payload;

    /// <summary>When higher care is expected. Times are of the expected event, not of the entry.</summary>
    public sealed record HelpExpected(
        Instant Likely,
        Instant? Earliest = null,
        Instant? Latest = null,
        string? Basis = null,
        string? Plan = null,
        HelpCare? Care = null) : Payload;

    /// <summary>The rest of the casualty, looked over; what was not looked at is null.</summary>
    public sealed record CasualtyLookedOver(
        bool? BleedingElsewhere = null,
        bool? TrunkWound = null,
        bool? BreathingHard = null,
        bool? VeryCold = null,
        bool? BloodThinner = null) : Payload;

    /// <summary>A step of the first look: one region or one limb, and what was found there.</summary>
    public sealed record RegionLooked(Limb? Limb, BodyRegion? Region, LookFound Found, string? Note = null) : Payload;

    /// <summary>Somebody tried to reach medical advice.</summary>
    /// <param name="How">By phone, radio, satellite message.</param>
    public sealed record ContactTried(bool Reached, string? Who = null, string? How = null) : Payload;

    public sealed record QuestionAsked(string To, string Text) : Payload;

    /// <summary>
    /// Advice received; <paramref name="Allows"/> names what it expressly allows (known word: <see cref="AllowsAttempt"/>),
    /// and is empty where it expressly allows nothing.
    /// </summary>
    /// <param name="Answers">The question it answers.</param>
    /// <param name="Until">When what it allows, or its no, ends.</param>
    /// <param name="ReadBack">The carer repeated it and the adviser agreed.</param>
    public sealed record AdviceReceived(
        string From,
        string Text,
        ImmutableArray<string> Allows = default,
        EntryId? Answers = null,
        Instant? Until = null,
        bool? ReadBack = null) : Payload
    {
        public const string AllowsAttempt = "attempt";
    }

    public sealed record CasualtyMoved(Movement How, MovePhase Phase, string? Note = null) : Payload;

    /// <summary>Where the casualty is, in degrees (WGS 84); accuracy and altitude in metres.</summary>
    public sealed record PositionNoted(double Lat, double Lon, double? AccuracyM = null, double? AltitudeM = null) : Payload;

    /// <summary>What came of it, as <paramref name="From"/> reports later; may come after care has ended.</summary>
    /// <param name="Limb">Set together with <paramref name="LimbOutcome"/>.</param>
    public sealed record OutcomeReported(
        string From, bool? Survived = null, Limb? Limb = null, LimbFate? LimbOutcome = null, string? Note = null) : Payload;

    /// <summary>By which rules this device judged from then on. Counted in no verdict.</summary>
    /// <param name="Rules">Id and version of the protocol.</param>
    /// <param name="Hash">SHA-256 of its file.</param>
    /// <param name="Local">Id and version of the local protocol over it; null where there is none, or an unsigned one.</param>
    /// <param name="LocalHash">SHA-256 of its file; null where there is none.</param>
    /// <param name="Issuer">Who signed it, by name and digits.</param>
    /// <param name="Reason">Why one that nobody has proven was used.</param>
    /// <param name="Until">When that ends.</param>
    /// <param name="Loosened">One sentence for everything that the local protocol loosened; default where nothing is.</param>
    public sealed record RulesStated(
        string Rules, string Hash, string? Local = null, string? LocalHash = null, Standing? Standing = null, string? Issuer = null,
        string? Reason = null, Instant? Until = null, ImmutableArray<string> Loosened = default) : Payload
    {
        /// <summary>The same rules, whatever reason was given for them.</summary>
        public bool SameRules(RulesStated other) =>
            (Rules, Hash, Local, LocalHash, Standing) == (other.Rules, other.Hash, other.Local, other.LocalHash, other.Standing);
    }

    public sealed record NoteWritten(string Text) : Payload;

    /// <summary>Replaces fields of another entry; the replacing values are kept as the JSON they came in.</summary>
    public sealed record EntryAmended(EntryId Target, JsonText Replace) : Payload;

    public sealed record EntryWithdrawn(EntryId Target, string Reason) : Payload;

    public sealed record CareEnded(CareEnd How, string? To = null, string? Note = null) : Payload;

    /// <summary>An entry of a kind this version does not know: kept, shown, and counted in nothing.</summary>
    public sealed record OfNewerVersion(string Kind) : Payload;
}

/// <summary>Glasgow coma scale parts: eye 1–4, verbal 1–5, motor 1–6; a part that can't be tested is null, never 1.</summary>
/// <remarks>Source: Teasdale and Jennett 1974, Lancet 304:81; 2014 wording (from memory).</remarks>
public sealed record GlasgowParts(int? Eye, int? Verbal, int? Motor);
