using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>An entry that does not follow from the line its device wrote before it.</summary>
public sealed record ChainBreak(EntryId At, string Reason);

/// <summary>How the entries of one device hang together.</summary>
/// <param name="Linked">How many name the entry before them.</param>
/// <param name="Unchecked">How many of those name an entry that is not held, so that nothing can be said.</param>
/// <param name="Breaks">In order of their numbers.</param>
public sealed record DeviceChain(string Device, int Entries, int Linked, int Unchecked, ImmutableArray<ChainBreak> Breaks);

/// <summary>The chain of entries: each holds the SHA-256 of the line its device wrote before it.</summary>
/// <remarks>
/// The line counts byte for byte as it stands in the file, without its end. Entries written before there were links hold
/// none; from its first link on, a device links every entry. A chain shows that a line was changed or taken out of the
/// middle. It does not show that the last ones were taken, or that someone wrote the whole chain anew: for that the
/// fingerprint of the record has to be known from elsewhere.
/// </remarks>
public static class EntryChain
{
    /// <summary>64 hexadecimal digits, lower case.</summary>
    public const string Field = "previous";

    public static string LinkTo(JsonText line) => LineHash.Of(line).ToString();

    /// <summary>Every device of the record, by name.</summary>
    public static ImmutableArray<DeviceChain> Check(CareRecord record)
    {
        var held = record.Entries.Select(e => e.Id).ToHashSet();
        var breaks = record.Breaks.ToLookup(b => b.At.Device);
        return
        [
            .. record
                .Entries.GroupBy(e => e.Id.Device)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new DeviceChain(
                    g.Key,
                    g.Count(),
                    g.Count(e => e.Previous is not null),
                    g.Count(e => e.Previous is not null && !held.Contains(e.Id with { Number = e.Id.Number - 1 })),
                    [.. breaks[g.Key].OrderBy(b => b.At.Number)]
                )),
        ];
    }
}
