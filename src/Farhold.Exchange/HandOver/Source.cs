using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>A record up to an instant, over all ways of reading its conflicts.</summary>
internal sealed class Source
{
    private readonly Dictionary<EntryId, int> corrected = [];
    private readonly ILookup<(EntryId, Happened, string), Dated> told;

    public Source(CareRecord record, Instant now)
    {
        (Record, Now) = (record, now);
        told = record.Readings.SelectMany(r => r.All).Where(d => d.When.Earliest <= now).ToLookup(Key);
        var withdrawn = record.Entries.Select(e => e.Payload).OfType<Payload.EntryWithdrawn>().Select(w => w.Target).ToHashSet();
        var entries = record.Entries.ToLookup(e => e.Id);
        foreach (var entry in record.Entries.Where(e => !withdrawn.Contains(e.Id)))
            if (
                entry.Payload is Payload.EntryAmended amendment
                && entries[amendment.Target].Any(t => Amendments.Apply(t, amendment) is Read<Entry>.Usable)
            )
                corrected[amendment.Target] = 1;
    }

    public CareRecord Record { get; }

    public Instant Now { get; }

    public ImmutableArray<State> Readings => Record.Readings;

    /// <summary>What was told of a kind up to now in any reading, in order of time.</summary>
    public ImmutableArray<Stated> Of(Kind kind) =>
        [
            .. told.Where(g => Kinds.Of(g.First().What) == kind)
                .Select(g => Of(g.First()))
                .OrderBy(s => s.When.Latest)
                .ThenBy(s => s.When.Earliest)
                .ThenBy(s => s.Id),
        ];

    /// <summary>What may be the last word on a matter, in any reading: usually one entry.</summary>
    public ImmutableArray<Stated> Last(Kind kind, Func<Payload, bool> tells) =>
        [
            .. Readings
                .SelectMany(r => Current.Of<Found>(r.Of(kind), Now, d => tells(d.What) ? new Found(d) : null))
                .Select(f => f.Entry)
                .DistinctBy(Key)
                .Select(Of)
                .OrderBy(s => s.When.Latest)
                .ThenBy(s => s.When.Earliest)
                .ThenBy(s => s.Id),
        ];

    private Stated Of(Dated entry) =>
        new(entry, corrected.ContainsKey(entry.Id), Record.Conflicts.Contains(entry.Id) || told[Key(entry)].Count() < Readings.Length);

    private static (EntryId, Happened, string) Key(Dated d) => (d.Id, d.When, EntryText.Of(d.What));

    private readonly record struct Found(Dated Entry);
}
