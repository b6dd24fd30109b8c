using System.Collections.Immutable;
using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>What the mapping of one entry needs to know of the rest of the record.</summary>
internal sealed class Draft
{
    private readonly Dictionary<string, Counted> wounds = new(StringComparer.Ordinal);
    private readonly Counted[] tightenings;

    public Draft(CareRecord record)
    {
        Entries = Counted.Of(record);
        Standing = [.. Entries.Where(e => e.Standing != Fhir.Standing.Withdrawn).OrderBy(e => e.When.Latest).ThenBy(e => e.Entry.Id)];
        foreach (var found in Standing)
            if (found.What is Payload.WoundFound wound)
                wounds.TryAdd(wound.Wound, found);
        tightenings = [.. Standing.Where(e => e.What is Payload.TourniquetTightened)];
        Attempts = AttemptPairs.Of(Standing);
        Opened = Standing.LastOrDefault(e => e.What is Payload.CasualtyOpened);
        Root = Names.Uuid("record " + (Standing.FirstOrDefault(e => e.What is Payload.CasualtyOpened) ?? Entries[0]).Name);
        Patient = Names.Uuid("patient " + Root);
        Encounter = Names.Uuid("encounter " + Root);
    }

    /// <summary>All entries, by id.</summary>
    public ImmutableArray<Counted> Entries { get; }

    /// <summary>Those not withdrawn, by time.</summary>
    public ImmutableArray<Counted> Standing { get; }

    /// <summary>Ends of attempts by the name of the entry that started them, and back.</summary>
    public AttemptPairs Attempts { get; }

    /// <summary>The entry that says who the casualty is.</summary>
    public Counted? Opened { get; }

    public string Root { get; }

    public string Patient { get; }

    public string Encounter { get; }

    public static string Id(Counted entry, string role) => Names.Uuid($"{role} {entry.Name}");

    public static ResourceReference To(string id) => new("urn:uuid:" + id);

    public ResourceReference ToPatient => To(Patient);

    public ResourceReference ToEncounter => To(Encounter);

    public ResourceReference By(Counted entry) => Person(entry.Entry.By);

    public ResourceReference Person(string name) => To(PersonId(name));

    /// <summary>
    /// Everyone who wrote an entry, was asked, gave advice or reported an outcome: by the name the record has, for nothing more is known
    /// of them.
    /// </summary>
    public IEnumerable<Practitioner> People =>
        Entries
            .Select(e => e.Entry.By)
            .Concat(
                Entries
                    .Select(e =>
                        e.What switch
                        {
                            Payload.AdviceReceived a => a.From,
                            Payload.QuestionAsked q => q.To,
                            Payload.OutcomeReported o => o.From,
                            _ => null,
                        }
                    )
                    .OfType<string>()
            )
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .Select(name => new Practitioner
            {
                Id = PersonId(name),
                Text = Legible.Narrative([name]),
                Name = [Named(name)],
            });

    /// <summary>A name as it was written; where nothing legible is left of it, that it is unknown.</summary>
    public static HumanName Named(string? text)
    {
        var name = new HumanName { Text = Legible.Text(text) };
        if (name.Text is null)
            name.AddExtension(Codes.AbsentExtension, new Code("unknown"));
        return name;
    }

    private string PersonId(string name) => Names.Uuid($"person {Root} {name}");

    public ResourceReference? ToWound(string? name) =>
        name is not null && wounds.TryGetValue(name, out var found) ? To(Id(found, "condition")) : null;

    public ResourceReference? ToQuestion(EntryId? id) =>
        Entries.FirstOrDefault(e => e.Entry.Id == id && e.What is Payload.QuestionAsked) is { } asked ? To(Id(asked, "question")) : null;

    public CodeableConcept? SiteOf(string? wound) =>
        wound is not null && wounds.TryGetValue(wound, out var found) ? Site((Payload.WoundFound)found.What) : null;

    public static CodeableConcept? Site(Payload.WoundFound wound) =>
        wound.Limb is { } limb ? Codes.Word(limb)
        : wound.Region is { } region ? Codes.Word(region)
        : null;

    /// <summary>The last tightening of this tourniquet before that time, or null.</summary>
    public Counted? TightenedBefore(string tourniquet, Counted when) =>
        tightenings.LastOrDefault(t =>
            t.What is Payload.TourniquetTightened p
            && p.Tourniquet == tourniquet
            && t.Name != when.Name
            && t.When.Latest <= when.When.Latest
        );

    public static Identifier Named(Counted entry) => new(Codes.EntryIds, entry.Entry.Id.ToString());
}
