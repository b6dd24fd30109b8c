using System.Collections.Immutable;
using Farhold.Exchange.HandOver;
using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;

namespace Farhold.Documents.Fhir;

/// <summary>A record as a FHIR R4 document: a bundle that begins with a Composition.</summary>
/// <remarks>
/// The same record and instant give the same bytes. Every entry becomes the resources it means and one Provenance, which
/// carries the line of the record itself, so that <see cref="FhirReader"/> gives back the same entries.
/// </remarks>
public static class FhirDocument
{
    /// <summary>LOINC: summary of episode note.</summary>
    private const string EpisodeSummary = "34133-9";

    private static readonly FhirJsonSerializer Serializer = new();

    /// <param name="rules">The one in force: what is needed and recommended goes by it.</param>
    /// <param name="at">When the document is made; its date.</param>
    /// <param name="leaving">Asked at every entry: whoever wanted the document may have left.</param>
    /// <returns>UTF-8 JSON.</returns>
    /// <exception cref="ArgumentException">The record holds no entry.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="leaving"/> was cancelled.</exception>
    public static byte[] Write(CareRecord record, Rulebook rules, NodaTime.Instant at, CancellationToken leaving = default)
    {
        var bundle = Of(record, rules, at, leaving);
        leaving.ThrowIfCancellationRequested();
        return Serializer.SerializeToBytes(bundle, pretty: true);
    }

    /// <summary>In English whatever is spoken: it says so of itself, and is compared with what another machine makes.</summary>
    internal static Bundle Of(CareRecord record, Rulebook rules, NodaTime.Instant at, CancellationToken leaving = default) =>
        record.Count == 0
            ? throw new ArgumentException("A record without entries makes no document.", nameof(record))
            : Farhold.Text.Translation.InEnglish(() => Made(record, rules, at, leaving));

    private static Bundle Made(CareRecord record, Rulebook rules, NodaTime.Instant at, CancellationToken leaving)
    {
        var draft = new Draft(record);
        var made = draft.Entries.ToDictionary(
            e => e.Name,
            e =>
            {
                leaving.ThrowIfCancellationRequested();
                return Mapping.Of(e, draft).ToArray();
            }
        );
        var issues = Doubts.Of(record, draft).ToArray();
        var devices = draft.Entries.DistinctBy(e => e.Entry.Id.Device).Select(e => Origins.Device(e, draft));
        var origins = draft.Entries.Select(e =>
        {
            leaving.ThrowIfCancellationRequested();
            return Origins.Of(e, Targets(e, draft, made), draft);
        });
        var composition = Composition(record, rules, draft, made, issues, at);
        var id = Names.Uuid($"bundle {at} {string.Join(' ', draft.Entries.Select(e => e.Name))}");
        var bundle = new Bundle
        {
            Id = id,
            Type = Bundle.BundleType.Document,
            Identifier = new("urn:ietf:rfc:3986", "urn:uuid:" + id),
            TimestampElement = Times.Stamp(at),
            Entry =
            [
                .. new DomainResource[] { composition, Person.Patient(draft), Person.Encounter(draft) }
                    .Concat(draft.People)
                    .Concat(devices)
                    .Concat(draft.Entries.SelectMany(e => made[e.Name]))
                    .Concat(issues)
                    .Concat(origins)
                    .Select(r => new Bundle.EntryComponent { FullUrl = "urn:uuid:" + r.Id, Resource = r }),
            ],
        };
        if (draft.Entries.Any(e => CareFacts.IsPractice(e.Entry)))
            MarkAsPractice(bundle, composition);
        return bundle;
    }

    /// <summary>Test health data, in every resource, so that none of it passes for a patient's even when taken apart.</summary>
    private static void MarkAsPractice(Bundle bundle, Composition composition)
    {
        composition.Title = $"PRACTICE, not a real casualty. {composition.Title}";
        foreach (var resource in bundle.Entry.Select(e => e.Resource!).Prepend(bundle))
            (resource.Meta ??= new()).Security.Add(new("http://terminology.hl7.org/CodeSystem/v3-ActReason", "HTEST", "test health data"));
    }

    private static Composition Composition(
        CareRecord record,
        Rulebook rules,
        Draft draft,
        Dictionary<string, DomainResource[]> made,
        DetectedIssue[] issues,
        NodaTime.Instant at
    ) =>
        new()
        {
            Id = Names.Uuid($"composition {draft.Root} {at}"),
            Text = Legible.Narrative([$"Record of care in the field, made with {Product.Named}. {VerdictWords.Caution}"]),
            Status = Person.End(draft) is null ? CompositionStatus.Preliminary : CompositionStatus.Final,
            Type = Codes.Of(Codes.Loinc, EpisodeSummary, "Summary of episode note"),
            Subject = draft.ToPatient,
            Encounter = draft.ToEncounter,
            DateElement = Times.Of(at),
            Author =
            [
                .. draft
                    .Entries.Select(e => e.Entry.By)
                    .Distinct(StringComparer.Ordinal)
                    .Order(StringComparer.Ordinal)
                    .Select(draft.Person),
            ],
            Title = "Record of care in the field",
            Section = [HandOverSection.Of(record, rules, at), .. Sections.Of(record, draft, made, issues)],
        };

    /// <summary>What an entry made or changed; where that is nothing of its own, the encounter it belongs to.</summary>
    private static string[] Targets(Counted entry, Draft draft, Dictionary<string, DomainResource[]> made)
    {
        var about = entry.What switch
        {
            Payload.EntryAmended a => draft.Entries.Where(e => e.Entry.Id == a.Target),
            Payload.EntryWithdrawn w => draft.Entries.Where(e => e.Entry.Id == w.Target),
            _ => [entry],
        };
        var ids = about
            .SelectMany(e =>
            {
                var whose = e.What is Payload.AttemptEnded && draft.Attempts.StartOf(e) is { } begun ? begun : e;
                var own = made[whose.Name].Select(r => r.Id!);
                return e.What is Payload.CasualtyOpened ? own.Prepend(draft.Patient) : own;
            })
            .Distinct()
            .ToArray();
        return ids.Length == 0 ? [draft.Encounter] : ids;
    }
}
