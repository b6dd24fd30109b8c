using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;

namespace Farhold.Records;

/// <summary>What an entry says, as one line for people. Every kind has its sentence.</summary>
public static class EntryText
{
    /// <summary>Of a local protocol that was taken without proof.</summary>
    public const string NobodyHasProven = "NOBODY HAS PROVEN THIS";

    /// <param name="zone">For the times it names; null: UTC.</param>
    public static string Of(Entry entry, DateTimeZone? zone = null) =>
        Of(entry.Payload, zone) + (entry.NotUnderstood.IsEmpty ? "" : Plain.Line($" [NOT UNDERSTOOD: {NotUnderstood(entry)}]"));

    public static string Of(Payload payload, DateTimeZone? zone = null) => Plain.Line(payload switch
    {
        Payload.CasualtyOpened p => Opened(p),
        Payload.WoundFound p => Wound(p),
        Payload.TourniquetTightened p => Tightened(p),
        Payload.TourniquetSlackened p => $"Tourniquet {p.Tourniquet} slackened, still around the limb, loose",
        Payload.TourniquetRemoved p => $"Tourniquet {p.Tourniquet} removed",
        Payload.WoundPacked p => $"Wound {p.Wound} packed with {Word(p.Material)}",
        Payload.PressureHeld p => $"Pressure held on wound {p.Wound} for {Say.Number(p.Minutes)} min",
        Payload.DressingApplied p => $"{(p.Dressing == DressingKind.Pressure ? "Pressure" : "Plain")} dressing on wound {p.Wound}",
        Payload.BleedingChecked p => $"Wound {p.Wound} looked at: {Bleeds(p.Bleeding)}",
        Payload.AttemptStarted p => $"Attempt to convert tourniquet {p.Tourniquet} started (wound {p.Wound})",
        Payload.AttemptEnded p => $"Attempt to convert tourniquet {p.Tourniquet} ended: {Ended(p.Outcome)}{Note(p.Note)}",
        Payload.SignsTaken p => Signs(p),
        Payload.WatchStated { Able: true, Who: Watcher.Casualty } =>
            "The casualty alone can watch the wound closely from now on",
        Payload.WatchStated p => p.Able
            ? "Someone can watch the wound closely from now on" : "Nobody can watch the wound closely from now on",
        Payload.SuppliesStated p => $"Supplies: {p.Count} {p.Item.Replace('-', ' ')}",
        Payload.DrugGiven p => $"Given {p.Drug} {Say.Number(p.Amount)} {p.Unit}, {p.Route}{Note(p.Note)}",
        Payload.FluidGiven p => $"Given {Say.Number(p.Millilitres)} mL {Word(p.Fluid)}, {p.Route}",
        Payload.UrineMeasured p => $"Urine: {Say.Number(p.Millilitres)} mL",
        Payload.TaskDone p => $"Done: {Task(p)}",
        Payload.HelpExpected p => Help(p, zone),
        Payload.CasualtyLookedOver p => LookedOver(p),
        Payload.RegionLooked p => $"Looked at the {Place(p.Limb, p.Region)}: {Found(p.Found)}{Note(p.Note)}",
        Payload.ContactTried p => $"Tried to reach advice{(p.Who is null ? "" : $" ({p.Who})")}"
            + $"{(p.How is null ? "" : $" by {p.How}")}: {(p.Reached ? "reached" : "nobody reached")}",
        Payload.QuestionAsked p => $"Asked {p.To}: {p.Text}",
        Payload.AdviceReceived p => Advice(p, zone),
        Payload.CasualtyMoved p => $"{(p.Phase == MovePhase.AboutTo ? "About to be moved" : "Moved")}: {Moved(p.How)}{Note(p.Note)}",
        Payload.PositionNoted p => Position(p),
        Payload.OutcomeReported p => Outcome(p),
        Payload.RulesStated p => Rules(p, zone),
        Payload.NoteWritten p => $"Note: {p.Text}",
        Payload.EntryAmended p => $"Corrects entry {p.Target}: {AmendmentWords.InWords(p.Replace, zone)}",
        Payload.EntryWithdrawn p => $"Withdraws entry {p.Target}: {p.Reason}",
        Payload.CareEnded p => $"Care ended: {Word(p.How)}{(p.To is null ? "" : $" to {p.To}")}{Note(p.Note)}",
        Payload.OfNewerVersion p => $"Entry of a newer version ({p.Kind}): kept, counted in nothing",
        _ => throw new UnreachableException(),
    });

    /// <summary>As it is written, so that a person may make something of it.</summary>
    private static string NotUnderstood(Entry entry) => entry.NotUnderstood is [{ IsKind: true }]
        ? Farhold.Records.NotUnderstood.Cut(AmendmentWords.Others(entry), 3 * Farhold.Records.NotUnderstood.MaxShown) : string.Join(", ", entry.NotUnderstood.Select(f => $"{f.Name} {f.Says}"));

    private static string Rules(Payload.RulesStated p, DateTimeZone? zone) => $"Rules in force: {p.Rules} ({FileHash.Short(p.Hash)})" + p.Standing switch
    {
        null => ", no local protocol",
        Standing.Unsigned => $", numbers tightened by an unsigned local protocol ({FileHash.Short(p.LocalHash ?? "")})",
        Standing.Verified => $", local protocol {p.Local} ({FileHash.Short(p.LocalHash ?? "")}), signed by {p.Issuer}",
        Standing.Expired => $", local protocol {p.Local} ({FileHash.Short(p.LocalHash ?? "")}), EXPIRED: what it allowed is not in force",
        Standing.Emergency => $", local protocol {p.Local} ({FileHash.Short(p.LocalHash ?? "")}), {NobodyHasProven}"
            + $"{(p.Until is { } until ? $", until {Say.Time(until, zone)}" : "")}, used because: {p.Reason}",
        _ => throw new UnreachableException(),
    } + (p.Loosened.IsDefaultOrEmpty ? "" : $"; LOOSENED by the local protocol: {string.Join("; ", p.Loosened)}");

    /// <summary>What settles a doubt is named by its reason: its id is nothing but a print.</summary>
    private static string Task(Payload.TaskDone p) =>
        p.Note is { } note && Doubt.IsNamedByReason(p.Task) ? note : $"{TaskWords.Of(p.Task)}{Note(p.Note)}";

    private static string Opened(Payload.CasualtyOpened p) => "Casualty " + Listed(
        [
            p.Alias,
            p.Sex is { } sex ? Word(sex) : null,
            p.AgeYears is { } age ? $"{Say.Number(age)} years" : null,
            p.MassKg is { } mass ? $"{Say.Number(mass)} kg" : null,
            All("allergies", p.Allergies),
            All("medicines", p.Medicines),
            p.History is { } history ? $"history: {history}" : null,
        ],
        ", ");

    private static string? All(string what, ImmutableArray<string> items) =>
        items.IsDefault ? null : items.IsEmpty ? $"{what}: none" : $"{what}: {string.Join(" and ", items)}";

    private static string Wound(Payload.WoundFound p)
    {
        return $"Wound {p.Wound} found, {Place(p.Limb, p.Region)}: {Word(p.Nature)}{Note(p.Note)}";
    }

    private static string Place(Limb? limb, BodyRegion? region) =>
        limb is { } l ? Say.Limb(l) : region is { } r ? Word(r) : "place unknown";

    private static string Found(LookFound found) => found switch
    {
        LookFound.Nothing => "nothing found",
        LookFound.Wound => "a wound",
        LookFound.Other => "something else",
        _ => throw new UnreachableException(),
    };

    private static string LookedOver(Payload.CasualtyLookedOver p)
    {
        var all = Listed(
            [
                YesNo("bleeding elsewhere", p.BleedingElsewhere), YesNo("wound or hard blow of the trunk", p.TrunkWound),
                YesNo("breathing hard", p.BreathingHard, "not"), YesNo("very cold", p.VeryCold, "not"), YesNo("blood thinner", p.BloodThinner),
            ],
            ", ");
        return $"Casualty looked over: {(all.Length == 0 ? "nothing recorded" : all)}";

        // The answer first: cut short, a "no" behind its question reads as what it denies.
        static string? YesNo(string what, bool? flag, string no = "no") => flag is { } known ? known ? what : $"{no} {what}" : null;
    }

    private static string Moved(Movement how) => how switch
    {
        Movement.Vehicle => "by vehicle",
        Movement.Boat => "by boat",
        Movement.Aircraft => "by aircraft",
        _ => Word(how),
    };

    private static string Position(Payload.PositionNoted p)
    {
        var more = Listed(
            [
                p.AccuracyM is { } accuracy ? $"within {Say.Number(accuracy)} m" : null,
                p.AltitudeM is { } altitude ? $"altitude {Say.Number(altitude)} m" : null,
            ],
            ", ");
        return FormattableString.Invariant($"Position {p.Lat:0.#####}, {p.Lon:0.#####}") + (more.Length == 0 ? "" : $" ({more})");
    }

    private static string Outcome(Payload.OutcomeReported p)
    {
        var all = Listed(
            [
                p.Survived is { } survived ? (survived ? "survived" : "died") : null,
                p is { Limb: { } limb, LimbOutcome: { } outcome } ? $"{Say.Limb(limb)} {Word(outcome)}" : null,
            ],
            ", ");
        return $"Outcome, from {p.From}: {(all.Length == 0 ? "nothing recorded" : all)}{Note(p.Note)}";
    }

    private static string Tightened(Payload.TourniquetTightened p)
    {
        var why = p.Why switch
        {
            TighteningReason.Bleeding => "because it bled",
            TighteningReason.Precaution => "as a precaution",
            TighteningReason.ReSited => "re-sited",
            _ => null,
        };
        var more = Listed(
            [p.Place, p.Make is { } make ? Word(make) : null, p.Wound is { } w ? $"for wound {w}" : null, why], "; ");
        return $"Tourniquet {p.Tourniquet} tightened on the {Say.Limb(p.Limb)}{(more.Length == 0 ? "" : $" ({more})")}";
    }

    private static string Signs(Payload.SignsTaken p)
    {
        var pressure = (p.Systolic, p.Diastolic) switch
        {
            (null, null) => null,
            (var s, null) => $"systolic {Number(s)} mmHg",
            (null, var d) => $"diastolic {Number(d)} mmHg",
            var (s, d) => $"blood pressure {Number(s)}/{Number(d)} mmHg",
        };
        var beyond = p.DistalPulse?.Select(d => $"pulse beyond, {Say.Limb(d.Key)}: {Word(d.Value)}") ?? [];
        var all = Listed(
            [
                Measured("heart rate", p.HeartRate, "/min"), Measured("breathing", p.BreathRate, "/min"),
                pressure, p.NoPressureCuff == true ? "no pressure cuff here" : null,
                Measured("oxygen saturation", p.Spo2, "%"), p.OnOxygen is { } o ? (o ? "on oxygen" : "without oxygen") : null,
                Measured("temperature", p.TemperatureC, "°C"),
                p.Mental is { } mental ? MentalWords(mental) : null, Glasgow(p.Gcs),
                YesNo("dizzy", p.Dizzy), YesNo("pale", p.Pale), YesNo("cool", p.Cool), YesNo("clammy", p.Clammy),
                p.RadialPulse is { } radial ? $"pulse at the wrist {Word(radial)}" : null,
                Measured("capillary refill", p.CapillaryRefillS, "s"),
                p.Pain is { } pain ? $"pain {Say.Number(pain)} of 10" : null,
                .. beyond,
            ],
            ", ");
        return all.Length == 0 ? "Signs taken, none that this version knows" : $"Signs: {all}";
    }

    private static string? Glasgow(GlasgowParts? gcs)
    {
        string Part(int? part) => part is { } known ? Say.Number(known) : "not testable";
        return gcs is null ? null : $"coma scale eye {Part(gcs.Eye)}, verbal {Part(gcs.Verbal)}, motor {Part(gcs.Motor)}";
    }

    private static string Help(Payload.HelpExpected p, DateTimeZone? zone)
    {
        var range = (p.Earliest, p.Latest) switch
        {
            (null, null) => "",
            (var e, null) => $", earliest {Say.Time(e!.Value, zone)}",
            (null, var l) => $", latest {Say.Time(l!.Value, zone)}",
            var (e, l) => $", between {Say.Time(e!.Value, zone)} and {Say.Time(l!.Value, zone)}",
        };
        var from = Listed([p.Basis, p.Plan is { } plan ? $"plan {plan}" : null], "; ");
        var what = p.Care switch
        {
            HelpCare.Hands => "More hands",
            HelpCare.Clinic => "A clinic",
            HelpCare.Surgery => "Surgery",
            _ => "Help",
        };
        return $"{what} expected {Say.Time(p.Likely, zone)}{range}{(from.Length == 0 ? "" : $" ({from})")}";
    }

    private static string Advice(Payload.AdviceReceived p, DateTimeZone? zone)
    {
        var allows = p.Allows.IsDefault ? null : p.Allows.IsEmpty ? "allows no attempt" : $"allows {string.Join(", ", p.Allows)}";
        var more = Listed(
            [
                allows, p.Until is { } until ? $"until {Say.Time(until, zone)}" : null,
                p.Answers is { } question ? $"answers {question}" : null,
                p.ReadBack is { } back ? (back ? "read back" : "not read back") : null,
            ],
            "; ");
        return $"Advice from {p.From}: {p.Text}{(more.Length == 0 ? "" : $" [{more}]")}";
    }

    private static string Bleeds(Bleeding bleeding) => bleeding switch
    {
        Bleeding.None => "no bleeding",
        Bleeding.Oozing => "oozing",
        Bleeding.Active => "bleeding",
        _ => throw new UnreachableException(),
    };

    private static string Ended(AttemptOutcome outcome) => outcome switch
    {
        AttemptOutcome.Held => "it held",
        AttemptOutcome.Bled => "it bled",
        AttemptOutcome.Abandoned => "abandoned",
        _ => throw new UnreachableException(),
    };

    private static string MentalWords(Mental mental) => mental switch
    {
        Mental.Voice => "answers only to voice",
        Mental.Pain => "answers only to pain",
        _ => Word(mental),
    };

    private static string? Measured(string what, double? value, string unit) =>
        value is { } known ? $"{what} {Say.Number(known)} {unit}" : null;

    private static string? YesNo(string what, bool? flag) => flag is { } known ? (known ? what : $"not {what}") : null;

    private static string Number(double? value) => Say.Number(value!.Value);

    private static string Note(string? note) => note is null ? "" : $" ({note})";

    private static string Word<T>(T value)
        where T : struct, Enum => Wire.Word(value).Replace('-', ' ');

    private static string Listed(IEnumerable<string?> parts, string between) =>
        string.Join(between, parts.Where(p => !string.IsNullOrEmpty(p)));
}
