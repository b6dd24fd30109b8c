using System.Collections.Immutable;

namespace Farhold.Documents.Fhir;

/// <summary>What became of an entry by later ones.</summary>
internal enum Standing
{
    AsWritten,
    Corrected,
    Withdrawn,

    /// <summary>Another entry claims the same id.</summary>
    Disputed,
}

/// <summary>An entry and how it counts: amended, and not later than it was written.</summary>
/// <param name="Name">Of the entry's content, so that two records, or two entries under one id, never share a resource.</param>
internal sealed record Counted(Entry Entry, string Name, Payload What, Happened When, Standing Standing)
{
    /// <summary>Every entry of the record, in the order of its ids.</summary>
    public static ImmutableArray<Counted> Of(CareRecord record)
    {
        var all = record.Entries.ToArray();
        var first = record.Readings[0].All.ToDictionary(d => d.Id);
        var amended = all.Select(e => e.Payload).OfType<Payload.EntryAmended>().Select(a => a.Target).ToHashSet();
        var disputed = record.Conflicts.ToHashSet();
        return
        [
            .. all.Select(entry =>
                disputed.Contains(entry.Id)
                    ? Read(entry, Reading(all, entry), amended, Standing.Disputed)
                    : Read(entry, first, amended, Standing.AsWritten)
            ),
        ];
    }

    /// <summary>The reading of the record in which, of the entries that claim this id, this one is right.</summary>
    private static Dictionary<EntryId, Dated> Reading(Entry[] all, Entry entry) =>
        new CareRecord(all.Where(e => e.Id != entry.Id).Append(entry), []).Readings[0].All.ToDictionary(d => d.Id);

    private static Counted Read(Entry entry, Dictionary<EntryId, Dated> reading, HashSet<EntryId> amended, Standing standing)
    {
        var name = Names.OfContent(entry.Json);
        if (entry.Payload is Payload.EntryAmended or Payload.EntryWithdrawn)
            return new(entry, name, entry.Payload, entry.Happened.NotAfter(entry.Recorded), standing);
        if (!reading.TryGetValue(entry.Id, out var dated))
            return new(entry, name, entry.Payload, entry.Happened.NotAfter(entry.Recorded), Standing.Withdrawn);
        var changed = amended.Contains(entry.Id) && !ReferenceEquals(dated.What, entry.Payload);
        return new(entry, name, dated.What, dated.When, standing == Standing.AsWritten && changed ? Standing.Corrected : standing);
    }
}
