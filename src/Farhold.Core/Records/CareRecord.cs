using System.Collections.Immutable;
using System.Runtime.InteropServices;
using NodaTime;

namespace Farhold.Records;

/// <summary>The record of one casualty: the set of all entries held, and what they come to.</summary>
/// <remarks>
/// Entries may be added in any order, twice, and from several devices; what the record says depends only on the set.
/// Two different entries with one id are a conflict: both are kept, each is a reading of its own, and whoever judges
/// takes the more cautious reading. Not thread-safe.
/// </remarks>
public sealed class CareRecord
{
    /// <summary>Readings that are tried where conflicts combine; with more, a doubt that nobody can settle stays.</summary>
    public const int MaxReadings = 64;

    private readonly Dictionary<EntryId, Entry> entries = [];
    private readonly SortedDictionary<EntryId, Variants> conflicts = [];
    private readonly LineChains chains;
    private readonly Dictionary<string, Device> devices = [];
    private readonly HashSet<EntryId> targets = [];
    private readonly List<DamagedLine> damaged = [];
    private readonly HashSet<JsonText> damagedText = [];
    private readonly ClocksAhead ahead = new();
    private KnownElsewhere elsewhere = KnownElsewhere.Nothing;
    private Folded? folded;

    public CareRecord(IEnumerable<Entry> entries, IEnumerable<DamagedLine> damaged)
    {
        chains = new(this.entries);
        if (entries.TryGetNonEnumeratedCount(out var count))
            this.entries.EnsureCapacity(count);
        foreach (var entry in entries)
            Add(entry);
        foreach (var line in damaged)
            Add(line);
    }

    /// <summary>The device that adds entries here; null where none does.</summary>
    public string? Writer { get; init; }

    /// <summary>
    /// What other sides are known to hold; what of it is not here is a doubt, as a gap is: it may forbid what is asked of the record.
    /// </summary>
    public KnownElsewhere Elsewhere
    {
        get => elsewhere;
        set
        {
            elsewhere = value;
            folded = null;
        }
    }

    /// <summary>All entries held, both of a conflict, sorted by device and number.</summary>
    public IEnumerable<Entry> Entries => entries.Values.Concat(conflicts.Values.SelectMany(c => c.Sorted.Skip(1))).OrderBy(e => e.Id);

    public int Count => entries.Count + conflicts.Values.Sum(c => c.Count - 1);

    public IReadOnlyList<DamagedLine> Damaged => damaged;

    /// <summary>Ids under which two different entries are held.</summary>
    public IReadOnlyCollection<EntryId> Conflicts => conflicts.Keys;

    /// <summary>What the record comes to: one state, or one for every way of reading its conflicts.</summary>
    public ImmutableArray<State> Readings => RecordFold.Readings;

    /// <summary>Why the record may not be whole, or not be understood; sorted by id.</summary>
    public ImmutableArray<Doubt> Doubts => RecordFold.Doubts;

    /// <summary>Entries that do not follow from the line before them, sorted.</summary>
    public ImmutableArray<ChainBreak> Breaks => RecordFold.Breaks;

    /// <summary>What is odd in it, sorted by entry.</summary>
    public ImmutableArray<Remark> Remarks => RecordFold.Remarks;

    /// <summary>The latest time any device wrote, by its own clock.</summary>
    public Instant? LastRecorded => devices.Count == 0 ? null : devices.Values.Max(d => d.Latest);

    /// <summary>The latest time the device wrote that adds entries here; a clock that shows less is wrong or looks back.</summary>
    public Instant? LastWritten => Writer is { } here && devices.TryGetValue(here, out var d) ? d.Latest : null;

    /// <summary>What one device withdraws or corrects of another's and nobody has accepted, sorted.</summary>
    public ImmutableArray<Retraction> Unaccepted => RecordFold.Unaccepted;

    /// <summary>Name of the next entry that the device writes.</summary>
    public EntryId NextId(string device) => new(device, devices.TryGetValue(device, out var d) ? d.Last + 1 : 1);

    /// <param name="received">When the file was taken in, by the clock here; null: it is read without regard to that.</param>
    public static CareRecord Of(RecordFile file, Instant? received = null)
    {
        var record = new CareRecord([], file.Damaged);
        record.entries.EnsureCapacity(file.Entries.Length);
        foreach (var entry in file.Entries)
            record.Add(entry, received);
        return record;
    }

    /// <summary>The record as it comes in by a clock, and the time to judge it at.</summary>
    /// <remarks>
    /// That is the time of the clock; but where every device wrote later than that, it is the clock that is wrong, and the earliest of
    /// their
    /// last times is taken.
    /// </remarks>
    public static (CareRecord Record, Instant Now) In(RecordFile file, Instant clock)
    {
        var record = Of(file);
        if (record.LastRecorded is not { } last || last - clock <= Farhold.Records.RecordFold.ClockTolerance)
            return (record, clock);
        var all = record.devices.Values.Min(d => d.Latest);
        var now = all - clock > Farhold.Records.RecordFold.ClockTolerance ? all : clock;
        return (Of(file, now), now);
    }

    /// <param name="received">
    /// When an entry of another device came in, by the clock here; no entry is written later than that. Null: nobody knows.
    /// </param>
    /// <returns>False if the very entry, or one of the same meaning, is held already.</returns>
    public bool Add(Entry entry, Instant? received = null)
    {
        if (received is { } at && entry.Id.Device != Writer && ahead.Add(entry, at))
            folded = null;
        if (entries.TryGetValue(entry.Id, out var held))
            return AddConflict(held, entry);
        entries.Add(entry.Id, entry);
        var linked = chains.Add(entry, null);
        var plain =
            Register(entry) && linked && entry.NotUnderstood.IsEmpty && ahead.IsEmpty && elsewhere.IsNothing && IsPlain(entry.Payload);
        folded =
            plain && folded is { Readings: [var only] } && conflicts.Count == 0 && damaged.Count == 0
                ? folded with
                {
                    Readings = [only.Plus(Farhold.Records.RecordFold.Date(folded.Apart.Read(entry), entry.Recorded, Duration.Zero))],
                }
                : null;
        return true;
    }

    /// <summary>Keeps a line that can't be read; the same line twice is kept once.</summary>
    public void Add(DamagedLine line)
    {
        if (!damagedText.Add(line.Raw))
            return;
        damaged.Add(line);
        folded = null;
    }

    private Folded RecordFold => folded ??= Fold();

    /// <summary>Whether it can't change how another device's entries count.</summary>
    private bool IsPlain(Payload payload) =>
        payload switch
        {
            Payload.CasualtyOpened => entries.Count == 1,
            Payload.TaskDone done => !Retraction.IsAcceptedBy(done.Task),
            _ => folded is not { Apart.IsAtRisk: true } || !NamesApart.IsNaming(payload),
        };

    private bool AddConflict(Entry held, Entry entry)
    {
        if (held.Json == entry.Json)
            return false;
        if (!chains.Add(entry, held))
            folded = null;
        var meaning = CanonicalJson.Of(entry.Json);
        if (!conflicts.TryGetValue(entry.Id, out var variants))
        {
            variants = new(CanonicalJson.Of(held.Json), held);
            if (!variants.Add(meaning, entry))
                return false;
            conflicts.Add(entry.Id, variants);
        }
        else if (!variants.Add(meaning, entry))
            return false;
        entries[entry.Id] = variants.First;
        Register(entry);
        folded = null;
        return true;
    }

    /// <summary>Notes device and target; true if the entry changes nothing but the list of its own kind.</summary>
    private bool Register(Entry entry)
    {
        ref var device = ref CollectionsMarshal.GetValueRefOrAddDefault(devices, entry.Id.Device, out var known);
        var inOrder =
            entry.Id.Number == device.Last + 1 && (!known || entry.Recorded >= device.Latest) && entry.Happened.Earliest <= entry.Recorded;
        device = new(Math.Max(device.Last, entry.Id.Number), known ? Instant.Max(device.Latest, entry.Recorded) : entry.Recorded);
        if (Retraction.TargetOf(entry.Payload) is not { } target)
            return inOrder && !targets.Contains(entry.Id);
        targets.Add(target);
        return false;
    }

    private Folded Fold()
    {
        // Both without what nobody has accepted and with it: the worse of the two counts.
        var unaccepted = Retraction.Open(entries, Writer);
        var readings = Read(Without(unaccepted), out var ways, out var chosen).ToList();
        if (!unaccepted.IsEmpty)
            readings.AddRange(Read(entries, out _, out _));
        var first = readings[0];
        var breaks = chains.IsEmpty ? [] : chains.Breaks(Entries).DistinctBy(b => b.At).OrderBy(b => b.At).ToImmutableArray();
        var doubts = readings
            .SelectMany(r => r.Doubts)
            .DistinctBy(d => d.Id)
            .Concat(damaged.Select(Doubt.OfLine))
            .Concat(unaccepted.Select(u => u.Doubt))
            .Concat(chosen.Take(MaxReadings).Select(c => Doubt.OfConflict(c.Key)))
            .Concat(ways > MaxReadings ? [Doubt.OfManyConflicts(MaxReadings, chosen.Length)] : [])
            .Concat(
                breaks
                    .GroupBy(b => b.At.Device)
                    .Select(d => Doubt.OfChain([.. d], DeviceWords.Of(d.Key, Entries), chains.Print(d.Key, d.Select(b => b.At))))
            )
            .Concat(Gaps());
        return new(
            [.. readings.Select(r => r.State)],
            [.. doubts.OrderBy(d => d.Id, StringComparer.Ordinal)],
            [.. first.Remarks.OrderBy(r => r.About).ThenBy(r => r.Text, StringComparer.Ordinal)],
            breaks,
            unaccepted,
            first.Apart
        );
    }

    private Dictionary<EntryId, Entry> Without(ImmutableArray<Retraction> unsaid)
    {
        if (unsaid.IsEmpty)
            return entries;
        var rest = new Dictionary<EntryId, Entry>(entries);
        foreach (var one in unsaid)
            rest.Remove(one.By.Id);
        return rest;
    }

    /// <summary>A reading for every way of choosing between entries in conflict, up to <see cref="MaxReadings"/>.</summary>
    private List<RecordFold> Read(Dictionary<EntryId, Entry> of, out long ways, out KeyValuePair<EntryId, Variants>[] chosen)
    {
        var readings = new List<RecordFold> { Farhold.Records.RecordFold.Of(of, ahead) };
        chosen = OpenConflicts(of);
        ways = chosen.Aggregate(1L, (n, c) => Math.Min(n * c.Value.Count, MaxReadings + 1));
        var total = Math.Min(ways, MaxReadings);
        for (var reading = 1; reading < total; reading++)
        {
            var variant = new Dictionary<EntryId, Entry>(of);
            var rest = reading;
            foreach (var (id, variants) in chosen)
            {
                variant[id] = variants.Sorted[rest % variants.Count];
                rest /= variants.Count;
            }

            readings.Add(Farhold.Records.RecordFold.Of(variant, ahead));
        }

        return readings;
    }

    /// <summary>Those in which no entry was withdrawn: withdrawn, both count for nothing in every reading.</summary>
    private KeyValuePair<EntryId, Variants>[] OpenConflicts(Dictionary<EntryId, Entry> of)
    {
        if (conflicts.Count == 0)
            return [];
        var withdrawn = of
            .Values.Where(e => !conflicts.ContainsKey(e.Id))
            .Select(e => (e.Payload as Payload.EntryWithdrawn)?.Target)
            .OfType<EntryId>()
            .ToHashSet();
        return [.. conflicts.Where(c => of.ContainsKey(c.Key) && !withdrawn.Contains(c.Key))];
    }

    /// <summary>
    /// Numbers that a device skipped, or whose entries never came, though others have them; those of damaged lines are told by the damage.
    /// </summary>
    private IEnumerable<Doubt> Gaps()
    {
        if (elsewhere.IsNothing && damaged.Count == 0 && devices.Values.Sum(d => (long)d.Last) == entries.Count)
            yield break; // as many entries as numbers: none is missing
        var legible = damaged.Select(d => LegibleId.In(d.Raw)).OfType<EntryId>();
        var numbers = entries.Keys.Concat(legible).Distinct().ToLookup(id => id.Device, id => id.Number);
        foreach (var device in numbers.Select(d => d.Key).Union(elsewhere.Last.Keys))
        {
            var expected = 1L;
            foreach (var number in numbers[device].Order())
            {
                if (number > expected)
                    yield return Doubt.OfGap(device, DeviceWords.Of(device, Entries), (int)expected, number - 1);
                expected = number + 1L;
            }

            if (elsewhere.Last.TryGetValue(device, out var last) && last >= expected)
                yield return Doubt.OfElsewhere(device, DeviceWords.Of(device, Entries), (int)expected, last);
        }

        if (!elsewhere.Unnumbered.IsEmpty)
            yield return Doubt.OfUnnumbered(elsewhere.Unnumbered);
    }

    private readonly record struct Device(int Last, Instant Latest);

    private sealed record Folded(
        ImmutableArray<State> Readings,
        ImmutableArray<Doubt> Doubts,
        ImmutableArray<Remark> Remarks,
        ImmutableArray<ChainBreak> Breaks,
        ImmutableArray<Retraction> Unaccepted,
        NamesApart Apart
    );
}
