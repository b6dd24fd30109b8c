using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>The document's sections: what a person reads, and what it rests on.</summary>
/// <remarks>LOINC codes of sections as in the C-CDA and IPS section templates (from memory); the rest are words of the record.</remarks>
internal static class Sections
{
    private const string Empty = "http://terminology.hl7.org/CodeSystem/list-empty-reason";

    internal static readonly (string Title, string? Loinc, string Word, Func<Payload, bool> Holds)[] Parts =
    [
        ("Wounds", "11450-4", "wounds", p => p is Payload.InjuryStated or Payload.WoundFound or Payload.BleedingChecked),
        ("Looks over the casualty", "29545-1", "looks", p => p is Payload.CasualtyLookedOver or Payload.RegionLooked or Payload.StepLooked),
        (
            "Tourniquets and other treatment",
            "47519-4",
            "treatment",
            p =>
                p
                    is Payload.TourniquetTightened
                        or Payload.TourniquetSlackened
                        or Payload.TourniquetRemoved
                        or Payload.WoundPacked
                        or Payload.PressureHeld
                        or Payload.DressingApplied
                        or Payload.AttemptStarted
                        or Payload.AttemptEnded
        ),
        ("Signs", "8716-3", "signs", p => p is Payload.SignsTaken or Payload.UrineMeasured),
        ("Drugs and fluids given", "29549-3", "given", p => p is Payload.DrugGiven or Payload.FluidGiven),
        (
            "Advice, notes and care",
            null,
            "care",
            p =>
                p
                    is Payload.ContactTried
                        or Payload.QuestionAsked
                        or Payload.QuestionTaken
                        or Payload.AdviceReceived
                        or Payload.NoteWritten
                        or Payload.TaskDone
                        or Payload.WatchStated
                        or Payload.SuppliesStated
                        or Payload.HelpExpected
                        or Payload.CasualtyMoved
                        or Payload.PositionNoted
                        or Payload.WeatherStated
                        or Payload.StageNoted
                        or Payload.RulesStated
                        or Payload.CareEnded
                        or Payload.OfNewerVersion
        ),
        ("What came of it", null, "outcome", p => p is Payload.OutcomeReported),
    ];

    public static IEnumerable<Composition.SectionComponent> Of(
        CareRecord record,
        Draft draft,
        IReadOnlyDictionary<string, DomainResource[]> made,
        DetectedIssue[] issues
    )
    {
        if (issues.Length > 0)
            yield return Section("What may be missing or wrong", null, "doubts", [.. issues.Select(i => i.Detail ?? "")], issues);
        yield return Known(
            "Allergies",
            "48765-2",
            "allergies",
            p => p.Allergies,
            made.Values.SelectMany(m => m).OfType<AllergyIntolerance>(),
            draft
        );
        yield return Known(
            "Medicines taken before",
            "10160-0",
            "medicines",
            p => p.Medicines,
            made.Values.SelectMany(m => m).OfType<MedicationStatement>(),
            draft
        );
        var log = LogText.Lines(record).ToLookup(l => Names.OfContent(l.Entry.Json));
        var byTime = draft.Entries.OrderBy(e => e.When.Latest).ThenBy(e => e.When.Earliest).ThenBy(e => e.Entry.Id).ToArray();
        var opened = byTime.Where(e => e.What is Payload.CasualtyOpened).ToArray();
        if (opened.Length > 0)
            yield return Section(
                "Casualty",
                null,
                "casualty",
                Lines(opened),
                opened.SelectMany(e => made[e.Name]).Where(r => r is not (AllergyIntolerance or MedicationStatement))
            );
        foreach (var part in Parts)
        {
            var held = byTime.Where(e => part.Holds(e.What)).ToArray();
            if (held.Length > 0)
                yield return Section(part.Title, part.Loinc, part.Word, Lines(held), held.SelectMany(e => made[e.Name]));
        }

        string[] Lines(Counted[] entries) =>
            [
                .. entries.SelectMany(e =>
                    log[e.Name]
                        .SelectMany(l =>
                            l.Changes.Prepend($"{Say.Time(l.When)}: {l.Text} ({l.Entry.By}){(l.Withdrawn ? " [WITHDRAWN]" : "")}")
                        )
                ),
            ];
    }

    /// <summary>A list the casualty was asked for: its items, that there are none, or that nobody recorded the answer.</summary>
    private static Composition.SectionComponent Known(
        string title,
        string loinc,
        string word,
        Func<Payload.CasualtyOpened, System.Collections.Immutable.ImmutableArray<string>> list,
        IEnumerable<DomainResource> resources,
        Draft draft
    )
    {
        var held = draft.Opened?.What is Payload.CasualtyOpened p ? list(p) : default;
        var entries = resources.ToArray();
        string[] lines =
            held.IsDefault ? ["Not recorded."]
            : held.IsEmpty ? ["None, as far as stated."]
            : [.. held];
        var section = Section(title, loinc, word, lines, entries);
        if (entries.Length == 0)
            section.EmptyReason = held.IsDefault
                ? Codes.Of(Empty, "unavailable", "not recorded")
                : Codes.Of(Empty, "nilknown", "none known");
        return section;
    }

    private static Composition.SectionComponent Section(
        string title,
        string? loinc,
        string word,
        string[] lines,
        IEnumerable<DomainResource> resources
    ) =>
        new()
        {
            Title = title,
            Code = loinc is null ? Codes.Word(word, title) : Codes.Of(Codes.Loinc, loinc, title),
            Text = Legible.Narrative(lines.Length == 0 ? ["Nothing recorded."] : lines),
            Entry = [.. resources.Select(r => Draft.To(r.Id!))],
        };
}
