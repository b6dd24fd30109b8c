using Farhold.Exchange.Document;
using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>Who wrote an entry, on which device and when, what it changed, and the line itself.</summary>
internal static class Origins
{
    private const string Operation = "http://terminology.hl7.org/CodeSystem/v3-DataOperation";
    private const string Part = "http://terminology.hl7.org/CodeSystem/provenance-participant-type";

    /// <param name="targets">Ids of the resources that the entry made or changed, at least one.</param>
    public static Provenance Of(Counted entry, IEnumerable<string> targets, Draft draft)
    {
        var (activity, changed) = entry.What switch
        {
            Payload.EntryAmended a => ("UPDATE", a.Target),
            Payload.EntryWithdrawn w => ("NULLIFY", w.Target),
            _ => ("CREATE", (EntryId?)null),
        };
        var origin = new Provenance
        {
            Id = Id(entry),
            Text = Legible.Narrative([
                $"{entry.Entry.Id}, {entry.Entry.By}, written {Say.Time(entry.Entry.Recorded)}: {EntryText.Of(entry.Entry)}",
            ]),
            Target = [.. targets.Select(Draft.To)],
            Occurred = Times.Of(entry.When),
            RecordedElement = Times.Stamp(entry.Entry.Recorded),
            Activity = Codes.Of(Operation, activity, activity.ToLowerInvariant()),
            Agent =
            [
                new() { Type = Codes.Of(Part, "author", "Author"), Who = draft.By(entry) },
                new() { Type = Codes.Of(Part, "assembler", "Assembler"), Who = Draft.To(DeviceId(entry)) },
            ],
        };
        if (changed is { } target)
            origin.Entity =
            [
                .. draft
                    .Entries.Where(e => e.Entry.Id == target && Changes(entry.What, e.What))
                    .Select(e => new Provenance.EntityComponent
                    {
                        Role = Provenance.ProvenanceEntityRole.Revision,
                        What = Draft.To(Id(e)),
                    }),
            ];
        if (entry.What is Payload.EntryWithdrawn { Reason: var reason } && Legible.Text(reason) is { } why)
            origin.Reason = [new() { Text = why }];
        Carry(origin, entry.Entry.Json);
        return origin;
    }

    /// <summary>The phone or machine on which entries were written, by the id the record has.</summary>
    public static Device Device(Counted entry, Draft draft) =>
        new()
        {
            Id = DeviceId(entry),
            Text = Legible.Narrative([$"Device {entry.Entry.Id.Device}, running Farhold"]),
            Identifier = [new(Codes.DeviceIds, entry.Entry.Id.Device)],
            Patient = draft.ToPatient,
        };

    public static void Carry(DomainResource resource, JsonText line) =>
        resource.AddExtension(CarriedLine.Extension, new Base64Binary(line.Utf8.ToArray()));

    private static string DeviceId(Counted entry) => Names.Uuid("device " + entry.Entry.Id.Device);

    /// <summary>What can be changed at all, which also keeps references from running in a circle.</summary>
    private static bool Changes(Payload by, Payload what) =>
        by is Payload.EntryAmended ? what is not (Payload.EntryAmended or Payload.EntryWithdrawn) : what is not Payload.EntryWithdrawn;

    private static string Id(Counted entry) => Draft.Id(entry, "provenance");
}
