using System.Text;

namespace Farhold.Tests;

/// <summary>Entries as the app writes them: each with the link to the one before it of its device.</summary>
public static class Chained
{
    public static IEnumerable<Entry> Of(IEnumerable<Entry> entries)
    {
        var last = new Dictionary<string, JsonText>();
        foreach (var entry in entries.OrderBy(e => e.Id))
        {
            var linked = last.TryGetValue(entry.Id.Device, out var before) ? Linked(entry, EntryChain.LinkTo(before)) : entry;
            last[entry.Id.Device] = linked.Json;
            yield return linked;
        }
    }

    public static Entry Linked(Entry entry, string link)
    {
        var line = entry.Json.ToString();
        return Read(line.Insert(line.IndexOf(',', StringComparison.Ordinal), $",\"previous\":\"{link}\""));
    }

    public static Entry Read(string line) => ((Read<Entry>.Usable)new EntryReader().Read(Encoding.UTF8.GetBytes(line), "line", 1)).Value;
}
