using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Farhold.App.Store;

namespace Farhold.App.Tests.Doubles;

/// <summary>The log kept in memory, with a switch that makes the phone full.</summary>
internal sealed class MemoryLogStore : ILogStore
{
    private readonly Dictionary<string, CasualtyHead> heads = [];
    private readonly SortedDictionary<(string Casualty, string Device, int Number), string> lines = [];
    private readonly List<(string Casualty, StoredLine Line)> asides = [];
    private readonly List<Appended.NotStored> rescued = [];

    public event Action<string>? ChangedElsewhere;

    public string Device => "7k3f";

    public bool AlsoOpenElsewhere { get; private set; }

    public bool Full { get; set; }

    public string? Watched { get; private set; }

    public List<string> Exported { get; } = [];

    public ImmutableArray<ShorterRecord> Shorter { get; set; } = [];

    public string NewCasualtyId() => "c" + (heads.Count + 1).ToString(CultureInfo.InvariantCulture);

    public Task<ImmutableArray<CasualtyHead>> ListAsync() => Task.FromResult(heads.Values
        .Select(h => h with { Entries = lines.Keys.Count(k => k.Casualty == h.Id) }).ToImmutableArray());

    public Task<ImmutableArray<StoredLine>> ReadAsync(string casualty) => Task.FromResult<ImmutableArray<StoredLine>>(
    [
        .. lines.Where(l => l.Key.Casualty == casualty).Select(l => new StoredLine(l.Value, LineState.Kept)),
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

    public Task<MergeCount> MergeAsync(CasualtyHead into, ImmutableArray<IncomingLine> incoming)
    {
        heads[into.Id] = into;
        int added = 0, same = 0, conflicting = 0, unreadable = 0;
        foreach (var line in incoming)
        {
            var text = Encoding.UTF8.GetString(line.Bytes.Span);
            if (line.Id is not { } id)
            {
                asides.Add((into.Id, new StoredLine(text, LineState.Unreadable)));
                unreadable++;
            }
            else if (lines.TryAdd((into.Id, id.Device, id.Number), text))
                added++;
            else if (lines[(into.Id, id.Device, id.Number)] == text)
                same++;
            else
            {
                asides.Add((into.Id, new StoredLine(text, LineState.Conflicting)));
                conflicting++;
            }
        }
        return Task.FromResult(new MergeCount(added, same, conflicting, unreadable));
    }

    public Task ExportAsync(string casualty, string fileName)
    {
        Exported.Add(fileName);
        return Task.CompletedTask;
    }

    public Task<StorageHealth> HealthAsync(bool askToPersist) =>
        Task.FromResult(new StorageHealth(askToPersist, 1_000_000, 500_000_000, Shorter));

    public void AcceptLoss() => Shorter = [];

    public void Watch(string? casualty) => Watched = casualty;

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
