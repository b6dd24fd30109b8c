using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;

namespace Farhold.Exchange.Evidence;

/// <summary>Where the chain of a device first does not hold.</summary>
public sealed record ChainBreak(EntryId At, string Reason);

/// <summary>How the entries of one device hang together.</summary>
/// <param name="Linked">How many name the entry before them.</param>
/// <param name="Unchecked">How many of those name an entry that is not held, so that nothing can be said.</param>
public sealed record DeviceChain(string Device, int Entries, int Linked, int Unchecked, ChainBreak? Break);

/// <summary>The chain of entries: each holds the SHA-256 of the line its device wrote before it.</summary>
/// <remarks>
/// The line counts byte for byte as it stands in the file, without its end. Entries written before there were links hold
/// none; from its first link on, a device links every entry. A chain shows that a line was changed or taken out of the
/// middle. It does not show that the last ones were taken, or that someone wrote the whole chain anew: for that the
/// <see cref="Fingerprint"/> has to be known from elsewhere.
/// </remarks>
public static class EntryChain
{
    /// <summary>64 hexadecimal digits, lower case.</summary>
    public const string Field = "previous";

    public static string LinkTo(JsonText line) => Convert.ToHexStringLower(SHA256.HashData(line.Utf8.Span));

    /// <summary>Every device of the record, by name.</summary>
    public static ImmutableArray<DeviceChain> Check(CareRecord record) =>
        [.. record.Entries.GroupBy(e => e.Id.Device).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => Check(g.Key, [.. g]))];

    private static DeviceChain Check(string device, Entry[] entries)
    {
        var byNumber = entries.ToLookup(e => e.Id.Number, e => LinkTo(e.Json));
        var (linked, uncheckedLinks, begun) = (0, 0, false);
        ChainBreak? first = null;
        foreach (var entry in entries.OrderBy(e => e.Id.Number))
        {
            var link = LinkOf(entry);
            if (link is null && begun)
                first ??= new(entry.Id, "it has no link, though entries of this device before it have one");
            if (link is null)
                continue;
            begun = true;
            linked++;
            var before = byNumber[entry.Id.Number - 1];
            if (!before.Any())
                uncheckedLinks++;
            else if (!before.Contains(link))
                first ??= new(entry.Id, $"the entry before it ({device}-{Say.Number(entry.Id.Number - 1)}) is not the one it was written after");
        }

        return new(device, entries.Length, linked, uncheckedLinks, first);
    }

    /// <summary>The link as it stands; empty where it is no text; null where there is none.</summary>
    private static string? LinkOf(Entry entry)
    {
        if (entry.Json.Utf8.Span.IndexOf("\"previous\""u8) < 0)
            return null;
        using var json = JsonDocument.Parse(entry.Json.Utf8);
        return !json.RootElement.TryGetProperty(Field, out var link) ? null
            : link.ValueKind == JsonValueKind.String ? link.GetString() : "";
    }
}
