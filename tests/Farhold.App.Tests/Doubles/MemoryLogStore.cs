using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Farhold.App.Tests.Doubles;

/// <summary>The log kept in memory, with a switch that makes the phone full.</summary>
internal sealed class MemoryLogStore : ILogStore
{
    private readonly Dictionary<string, CasualtyHead> heads = [];
    private readonly SortedDictionary<(string Casualty, string Device, int Number), string> lines = [];
    private readonly List<(string Casualty, StoredLine Line)> asides = [];
    private readonly List<Appended.NotStored> rescued = [];
    private readonly Dictionary<(string Casualty, string Device, int Number), Instant> early = [];
    private readonly Dictionary<string, (string Casualty, bool Opens, List<(string, string, int)> Keys, TakenBatch Told)> batches = [];

    public event Action<string>? ChangedElsewhere;

    public string Device => "7k3f";

    public bool AlsoOpenElsewhere { get; private set; }

    public bool Full { get; set; }

    /// <summary>Not null: reading fails with it.</summary>
    public Exception? Unreadable { get; set; }

    public string? Observed { get; private set; }

    public List<string> Exported { get; } = [];

    public ImmutableArray<ShorterRecord> Shorter { get; set; } = [];

    /// <summary>The time by which what comes in is early.</summary>
    public Func<Instant> Now { get; set; } = () => Instant.MaxValue;

    public string NewIdentity() => "aaaaaaaaaaaaaaaaaaaaaaaaa" + (char)('a' + heads.Count);

    public string NewCasualtyId() => "c" + (heads.Count + 1).ToString(CultureInfo.InvariantCulture);

    public Task<ImmutableArray<CasualtyHead>> ListAsync() =>
        Task.FromResult(heads.Values.Select(h => h with { Entries = lines.Keys.Count(k => k.Casualty == h.Id) }).ToImmutableArray());

    public Task<ImmutableArray<StoredLine>> ReadAsync(string casualty) =>
        Unreadable is { } fault
            ? Task.FromException<ImmutableArray<StoredLine>>(fault)
            : Task.FromResult<ImmutableArray<StoredLine>>([
                .. lines
                    .Where(l => l.Key.Casualty == casualty)
                    .Select(l => new StoredLine(l.Value, LineState.Kept, early.TryGetValue(l.Key, out var at) ? at : null)),
                .. asides.Where(a => a.Casualty == casualty).Select(a => a.Line),
            ]);

    public Task<Appended> AppendAsync(string casualty, string body, CasualtyHead? opens = null)
    {
        if (Full)
        {
            var failed = new Appended.NotStored($"r{rescued.Count}", casualty, body, "The phone's storage is full.", true, opens);
            rescued.Add(failed);
            return Task.FromResult<Appended>(failed);
        }
        if (opens is not null)
            heads[casualty] = opens;
        var number = lines.Keys.Where(k => k.Casualty == casualty && k.Device == Device).Select(k => k.Number).DefaultIfEmpty().Max() + 1;
        var line = string.Create(CultureInfo.InvariantCulture, $"{{\"id\":\"{Device}-{number}\",{body[1..]}");
        lines[(casualty, Device, number)] = line;
        return Task.FromResult<Appended>(new Appended.Stored(line, number));
    }

    public async Task<ImmutableArray<Appended.NotStored>> ReplayAsync()
    {
        var again = rescued.ToList();
        rescued.Clear();
        foreach (var entry in again)
            await AppendAsync(entry.Casualty, entry.Body, entry.Opens);
        return [.. rescued];
    }

    /// <summary>What taking in waits for: a slow phone.</summary>
    public Task Merging { get; set; } = Task.CompletedTask;

    public async Task<MergeCount> MergeAsync(CasualtyHead into, ImmutableArray<IncomingLine> incoming, string source)
    {
        await Merging;
        return Merge(into, incoming, source);
    }

    private MergeCount Merge(CasualtyHead into, ImmutableArray<IncomingLine> incoming, string source)
    {
        var batch = string.Create(CultureInfo.InvariantCulture, $"b{batches.Count + 1}");
        var keys = new List<(string, string, int)>();
        var opens = heads.TryAdd(into.Id, into);
        int added = 0,
            same = 0,
            conflicting = 0,
            unreadable = 0;
        var wrote = lines.Keys.Where(k => k.Casualty == into.Id && k.Device == Device).Select(k => k.Number).DefaultIfEmpty().Max();
        foreach (var line in incoming)
        {
            var text = Encoding.UTF8.GetString(line.Bytes.Span);
            if (line.Id is { } its && its.Device == Device && wrote > 0 && its.Number > wrote)
            {
                asides.Add((into.Id, new StoredLine(text, LineState.Claimed)));
                unreadable++;
                continue;
            }

            if (line.Id is not { } id)
            {
                asides.Add((into.Id, new StoredLine(text, LineState.Unreadable)));
                unreadable++;
            }
            else if (lines.TryAdd((into.Id, id.Device, id.Number), text))
            {
                added++;
                keys.Add((into.Id, id.Device, id.Number));
                if (
                    new EntryReader().Read(line.Bytes, "line", 1) is Read<Entry>.Usable { Value: var entry }
                    && entry.Recorded - Duration.FromMinutes(2) > Now()
                )
                    early[(into.Id, id.Device, id.Number)] = Now();
            }
            else if (lines[(into.Id, id.Device, id.Number)] == text)
                same++;
            else
            {
                asides.Add((into.Id, new StoredLine(text, LineState.Conflicting)));
                conflicting++;
            }
        }
        if (keys.Count == 0 && !opens)
            return new MergeCount(added, same, conflicting, unreadable);
        batches[batch] = (into.Id, opens, keys, new(batch, Instant.FromUnixTimeSeconds(1_930_000_000), source, keys.Count));
        return new MergeCount(added, same, conflicting, unreadable, batch);
    }

    public Task<ImmutableArray<TakenBatch>> BatchesAsync(string casualty) =>
        Task.FromResult(batches.Values.Where(b => b.Casualty == casualty).Select(b => b.Told).Reverse().ToImmutableArray());

    public Task TakeBackAsync(string casualty, string batch)
    {
        batches.Remove(batch, out var taken);
        foreach (var key in taken.Keys)
            lines.Remove(key);
        if (taken.Opens && lines.Keys.All(k => k.Casualty != casualty))
            heads.Remove(casualty);
        return Task.CompletedTask;
    }

    public Task EraseAsync(string casualty)
    {
        heads.Remove(casualty);
        foreach (var key in lines.Keys.Where(k => k.Casualty == casualty).ToArray())
            lines.Remove(key);
        return Task.CompletedTask;
    }

    public Task EraseAllAsync()
    {
        heads.Clear();
        lines.Clear();
        return Task.CompletedTask;
    }

    public Task ExportAsync(string casualty, string fileName)
    {
        Exported.Add(fileName);
        return Task.CompletedTask;
    }

    public Task<StorageHealth> HealthAsync(bool askToPersist) =>
        Task.FromResult(new StorageHealth(askToPersist, 1_000_000, 500_000_000, Shorter));

    public void AcceptLoss() => Shorter = [];

    public void Watch(string? casualty) => Observed = casualty;

    /// <summary>As if another tab had added this line.</summary>
    public void AddElsewhere(string casualty, EntryId id, string line)
    {
        lines[(casualty, id.Device, id.Number)] = line;
        ChangedElsewhere?.Invoke(casualty);
    }

    public void OpenElsewhere(string casualty)
    {
        AlsoOpenElsewhere = true;
        ChangedElsewhere?.Invoke(casualty);
    }
}
