using Hl7.Fhir.Model;
using FhirCondition = Hl7.Fhir.Model.Condition;

namespace Farhold.Documents.Fhir;

/// <summary>What was found or stated, other than vital signs.</summary>
internal static class Findings
{
    public static FhirCondition Wound(Counted entry, Payload.WoundFound p, Draft draft)
    {
        var erroneous = entry.Standing == Standing.Withdrawn;
        return new()
        {
            Id = Draft.Id(entry, "condition"),
            Text = Legible.Narrative([EntryText.Of(p)]),
            Identifier = [Draft.Named(entry), new Identifier(Codes.WoundNames, Legible.Text(p.Wound))],
            ClinicalStatus = erroneous ? null : Codes.Of("http://terminology.hl7.org/CodeSystem/condition-clinical", "active", "active"),
            VerificationStatus = erroneous
                ? Codes.Of("http://terminology.hl7.org/CodeSystem/condition-ver-status", "entered-in-error", "entered in error")
                : null,
            Code = Codes.Word(p.Nature),
            BodySite = Draft.Site(p) is { } site ? [site] : [],
            Subject = draft.ToPatient,
            Encounter = draft.ToEncounter,
            RecordedDateElement = Times.Of(entry.Entry.Recorded),
            Recorder = draft.By(entry),
            Note = Mapping.Notes(p.Note, Found(entry.When), Mapping.Caution(entry)),
        };
    }

    public static Observation Bleeding(Counted entry, Payload.BleedingChecked p, Draft draft)
    {
        var look = Stated(entry, "bleeding", $"Bleeding of wound {p.Wound}", Codes.Word(p.Bleeding), draft);
        look.BodySite = draft.SiteOf(p.Wound);
        if (draft.ToWound(p.Wound) is { } wound)
            look.Focus = [wound];
        return look;
    }

    public static Observation Supplies(Counted entry, Payload.SuppliesStated p, Draft draft) =>
        Stated(entry, "supplies", $"Pieces at hand: {p.Item.Replace('-', ' ')}", new Integer(p.Count), draft);

    public static Observation Watch(Counted entry, Payload.WatchStated p, Draft draft)
    {
        var watch = Stated(entry, "watch", "Someone can watch the wound closely", new FhirBoolean(p.Able), draft);
        if (p.Who is { } who)
            watch.Component = [new() { Code = Codes.Word("watcher", "who it is"), Value = Codes.Word(who) }];
        return watch;
    }

    public static Observation Help(Counted entry, Payload.HelpExpected p, Draft draft)
    {
        var help = Stated(entry, "help-expected", "Help expected", Times.Of(p.Likely), draft);
        help.Component =
        [
            .. p.Care is { } care
                ? (Observation.ComponentComponent[])[new() { Code = Codes.Word("help-care", "kind of help"), Value = Codes.Word(care) }]
                : [],
            .. Bound("earliest", p.Earliest),
            .. Bound("latest", p.Latest),
        ];
        help.Note.AddRange(Mapping.Notes(p.Basis, p.Plan is { } plan ? $"By plan {plan}." : null));
        return help;
    }

    public static Observation Ended(Counted entry, Payload.CareEnded p, Draft draft)
    {
        var end = Stated(entry, "care-ended", "Care ended", Codes.Word(p.How), draft);
        end.Note.AddRange(Mapping.Notes(p.To is { } to ? $"To {to}." : null, p.Note));
        return end;
    }

    /// <summary>An entry of a kind that a newer version writes: that it is there, and that it can't be read here.</summary>
    public static Observation Newer(Counted entry, Payload.OfNewerVersion p, Draft draft)
    {
        var kept = Stated(entry, "of-newer-version", $"Entry of a newer version: {p.Kind}", null, draft);
        kept.DataAbsentReason = Codes.Reason("unsupported");
        return kept;
    }

    /// <summary>A thing with one value, by the record's own word for it.</summary>
    public static Observation Stated(Counted entry, string code, string text, DataType? value, Draft draft, string? field = null) =>
        new()
        {
            Id = Draft.Id(entry, field ?? code),
            Text = Legible.Narrative([EntryText.Of(entry.What)]),
            Identifier = [Draft.Named(entry)],
            Status = Status(entry),
            Code = Codes.Word(code, Legible.Text(text) ?? code),
            Subject = draft.ToPatient,
            Encounter = draft.ToEncounter,
            Effective = Times.Of(entry.When),
            IssuedElement = Times.Stamp(entry.Entry.Recorded),
            Performer = [draft.By(entry)],
            Value = value,
            Note = Mapping.Notes(Times.Vagueness(entry.When, "this was seen or stated"), Mapping.Caution(entry)),
        };

    public static ObservationStatus Status(Counted entry) =>
        entry.Standing switch
        {
            Standing.Withdrawn => ObservationStatus.EnteredInError,
            Standing.Corrected => ObservationStatus.Corrected,
            Standing.Disputed => ObservationStatus.Preliminary,
            _ => ObservationStatus.Final,
        };

    private static IEnumerable<Observation.ComponentComponent> Bound(string code, NodaTime.Instant? at) =>
        at is { } known ? [new() { Code = Codes.Word("help-" + code, code), Value = Times.Of(known) }] : [];

    private static string Found(Happened when) => $"Found {Say.Time(when)}; when it came about is not recorded.";
}
