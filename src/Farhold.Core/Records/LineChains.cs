using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Records;

/// <summary>Whether the entries of each device hang together by their links, kept up as entries come in, in any order.</summary>
/// <remarks>
/// A line is hashed once at most when it comes in, and only where a link names it: adding an entry costs the same however
/// long the record is. Where several lines stand under one id, any of them may be the one that the next was written after.
/// </remarks>
/// <param name="entries">Those held, one for each id; filled before <see cref="Add"/> is called.</param>
internal sealed class LineChains(IReadOnlyDictionary<EntryId, Entry> entries)
{
    /// <summary>By device, the lowest number that has a link.</summary>
    private readonly Dictionary<string, int> begun = [];

    /// <summary>The hashes under ids that several lines share, and of lines that a link did not fit.</summary>
    private readonly Dictionary<EntryId, HashSet<LineHash>> hashes = [];

    /// <summary>Links that fit no line held under the id before; where none is held at all, nothing can be said of them.</summary>
    private readonly Dictionary<EntryId, HashSet<LineHash>> unfit = [];

    public bool IsEmpty => begun.Count == 0;

    /// <summary>Takes in an entry.</summary>
    /// <param name="held">The line that was there under its id already; null where there was none.</param>
    /// <returns>Whether all that stands in the chains is as unbroken as it was.</returns>
    public bool Add(Entry entry, Entry? held)
    {
        var id = entry.Id;
        if (held is not null)
            Several(id, held).Add(LineHash.Of(entry.Json));
        var sound = !Reaches(id, entry) && held is null;
        var first = begun.GetValueOrDefault(id.Device, int.MaxValue);
        if (entry.Previous is not { } link)
            return sound && id.Number < first;
        if (id.Number < first)
            begun[id.Device] = id.Number;
        var before = id with { Number = id.Number - 1 };
        if (Fits(before, link))
            return sound;
        if (!unfit.TryGetValue(id, out var links))
            unfit.Add(id, links = []);
        links.Add(link);
        return sound && !entries.ContainsKey(before);
    }

    /// <summary>Every entry that does not follow from the line before it.</summary>
    /// <param name="all">Every entry held, all of a conflict too.</param>
    public IEnumerable<ChainBreak> Breaks(IEnumerable<Entry> all)
    {
        foreach (var id in unfit.Keys)
            if (id with { Number = id.Number - 1 } is var before && entries.ContainsKey(before))
                yield return new(id, RecordTexts.ChainOtherBefore(before.ToString()));
        foreach (var entry in all)
            if (
                entry.Previous is null
                && begun.TryGetValue(entry.Id.Device, out var first)
                && first < entry.Id.Number
                && !unfit.ContainsKey(entry.Id)
            )
                yield return new(entry.Id, RecordTexts.ChainNoLink);
    }

    /// <summary>
    /// Digits that are others as soon as anything about the breaks of a device is: which entries, their links, and the lines before them.
    /// </summary>
    public string Print(string device, IEnumerable<EntryId> broken)
    {
        var text = new StringBuilder(device);
        foreach (var id in broken)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{id.Number}");
            var links = unfit.GetValueOrDefault(id)?.Select(l => l.ToString()) ?? [];
            foreach (var hash in links.Order(StringComparer.Ordinal))
                text.Append(' ').Append(hash);
            text.Append(" after");
            foreach (var hash in Lines(id with { Number = id.Number - 1 }).Select(h => h.ToString()).Order(StringComparer.Ordinal))
                text.Append(' ').Append(hash);
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())).AsSpan(0, 8));
    }

    /// <summary>Whether there are links that waited for this line, or fitted none before it; the one it fits is done with.</summary>
    private bool Reaches(EntryId id, Entry entry)
    {
        if (unfit.Count == 0 || id.Number == int.MaxValue)
            return false;
        var next = id with { Number = id.Number + 1 };
        if (!unfit.TryGetValue(next, out var waiting))
            return false;
        waiting.Remove(LineHash.Of(entry.Json));
        if (waiting.Count == 0)
            unfit.Remove(next);
        return true;
    }

    private bool Fits(EntryId before, LineHash link)
    {
        if (hashes.TryGetValue(before, out var several))
            return several.Contains(link);
        if (!entries.TryGetValue(before, out var only))
            return false;
        var hash = LineHash.Of(only.Json);
        if (hash == link)
            return true;
        hashes.Add(before, [hash]);
        return false;
    }

    private HashSet<LineHash> Lines(EntryId id) =>
        hashes.TryGetValue(id, out var lines) ? lines
        : entries.TryGetValue(id, out var only) ? Several(id, only)
        : [];

    private HashSet<LineHash> Several(EntryId id, Entry held)
    {
        if (!hashes.TryGetValue(id, out var lines))
            hashes.Add(id, lines = [LineHash.Of(held.Json)]);
        return lines;
    }
}
