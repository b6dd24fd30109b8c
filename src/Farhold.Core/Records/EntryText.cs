using NodaTime;

namespace Farhold.Records;

/// <summary>What an entry says, as one line for people. Every kind has its sentence.</summary>
public static class EntryText
{
    /// <summary>Of a local protocol that was taken without proof.</summary>
    public static string NobodyHasProven => RecordTexts.NobodyHasProven;

    /// <param name="zone">For the times it names; null: UTC.</param>
    public static string Of(Entry entry, DateTimeZone? zone = null) =>
        Of(entry.Payload, zone) + (entry.NotUnderstood.IsEmpty ? "" : Plain.Line(RecordTexts.NotUnderstood(NotUnderstood(entry))));

    public static string Of(Payload payload, DateTimeZone? zone = null) => Plain.Line(payload.Said(zone));

    /// <summary>As it is written, so that a person may make something of it.</summary>
    private static string NotUnderstood(Entry entry) =>
        entry.NotUnderstood is [{ IsKind: true }]
            ? Farhold.Records.NotUnderstood.Cut(AmendmentWords.Others(entry), 3 * Farhold.Records.NotUnderstood.MaxShown)
            : string.Join(", ", entry.NotUnderstood.Select(f => $"{f.Name} {f.Says}"));
}
