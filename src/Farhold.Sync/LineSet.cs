using System.Collections.Immutable;

namespace Farhold.Sync;

/// <summary>What came of a line that was to be added.</summary>
public enum Addition
{
    New,

    /// <summary>The very line is held already.</summary>
    Held,

    /// <summary>Nothing but white space.</summary>
    Blank,

    /// <summary>Longer than <see cref="SyncLimits.MaxLine"/>: not taken.</summary>
    TooLong,

    /// <summary>Of one device more than <see cref="SyncLimits.MaxDevices"/>: not taken.</summary>
    TooManyDevices,

    /// <summary>One line outside the prefixes more than <see cref="SyncLimits.MaxOdd"/>: not taken.</summary>
    TooManyOdd,
}

/// <summary>The lines that one side holds of a casualty, readable or not: a set of bytes. Not thread-safe.</summary>
/// <remarks>Two lines of the same short hash would be taken for one by the other side: a chance of 2⁻⁶⁴ for a pair.</remarks>
public sealed class LineSet
{
    private readonly Dictionary<LineHash, HeldLine> lines = [];
    private readonly HashSet<ulong> shorts = [];
    private readonly SortedDictionary<string, DeviceLines> devices = new(StringComparer.Ordinal);
    private readonly SortedDictionary<ulong, HeldLine> nameless = [];

    public int Count => lines.Count;

    /// <summary>Every line: by device, number and bytes, then those without a legible id.</summary>
    public IEnumerable<HeldLine> Lines => devices.Values.SelectMany(d => d.All).Concat(nameless.Values);

    public Vector Vector =>
        new(
            devices
                .Where(d => d.Value.PrefixLength > 0)
                .ToImmutableSortedDictionary(d => d.Key, d => d.Value.Prefix, StringComparer.Ordinal),
            [.. devices.Values.SelectMany(d => d.Odd).Concat(nameless.Values).Select(l => l.Hash.Short)]
        );

    /// <summary>Adds a line; order and repetition do not matter.</summary>
    /// <param name="bytes">Without the line's end. The set keeps them.</param>
    /// <exception cref="ArgumentException">There is a line feed in it, so it is no line.</exception>
    public Addition Add(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Span.Contains((byte)'\n'))
            throw new ArgumentException("A line holds no line feed.", nameof(bytes));
        if (bytes.Length > SyncLimits.MaxLine)
            return Addition.TooLong;
        if (HeldLine.Of(bytes) is not { } line)
            return Addition.Blank;
        if (lines.ContainsKey(line.Hash))
            return Addition.Held;
        if (Objection(line) is { } objection)
            return objection;
        lines.Add(line.Hash, line);
        shorts.Add(line.Hash.Short);
        if (line.Id is not { } id)
        {
            nameless[line.Hash.Short] = line;
            return Addition.New;
        }

        if (!devices.TryGetValue(id.Device, out var device))
            devices.Add(id.Device, device = new());
        device.Add(id.Number, line);
        return Addition.New;
    }

    public bool Holds(ulong hash) => shorts.Contains(hash);

    /// <summary>Up to which number the other side surely holds what this one does of a device, as it says itself.</summary>
    public int Confirmed(string device, Vector other) =>
        devices.TryGetValue(device, out var mine) && Same(mine, other[device]) ? other[device].Length : 0;

    /// <summary>Devices of which the other side's prefix is others lines than ours, as far as that can be seen from here.</summary>
    public IEnumerable<string> Disputed(Vector other) =>
        devices.Where(d => other[d.Key].Length <= d.Value.PrefixLength && !Same(d.Value, other[d.Key])).Select(d => d.Key);

    /// <summary><see cref="LineHash.Short"/> of all lines of a device, in order.</summary>
    public ImmutableArray<ulong> Hashes(string device) =>
        devices.TryGetValue(device, out var mine) ? [.. mine.All.Select(l => l.Hash.Short)] : [];

    /// <summary>Lines that the other side lacks by what it says of itself, each device's in the order of its numbers.</summary>
    /// <remarks>
    /// What lies within a prefix that the other side has longer, or differently, is left to what it lists or sends next: nothing is sent
    /// on suspicion.
    /// </remarks>
    public IEnumerable<HeldLine> LackedBy(Head other) =>
        devices
            .SelectMany(d => LackedBy(other, d.Key, d.Value))
            .Concat(nameless.Where(n => !other.Have.Odd.Contains(n.Key)).Select(n => n.Value));

    /// <summary>Lines held under an id, in the order of bytes.</summary>
    internal IReadOnlyList<HeldLine> At(EntryId id) => devices.TryGetValue(id.Device, out var device) ? device.At(id.Number) : [];

    private static IEnumerable<HeldLine> LackedBy(Head other, string device, DeviceLines mine)
    {
        var odd = other.Have.Odd;
        if (other.Hashes.TryGetValue(device, out var listed))
        {
            var all = listed.ToHashSet();
            return mine.All.Where(l => !all.Contains(l.Hash.Short) && !odd.Contains(l.Hash.Short));
        }

        var theirs = other.Have[device];
        var same = theirs.Length <= mine.PrefixLength && Same(mine, theirs);
        return mine
            .Numbered.SelectMany(n =>
                n.Number > theirs.Length ? n.Variants
                : same ? n.Variants.Skip(1)
                : []
            )
            .Where(l => !odd.Contains(l.Hash.Short));
    }

    private static bool Same(DeviceLines mine, Prefix theirs) =>
        theirs.Length <= mine.PrefixLength && mine.Running(theirs.Length) == theirs.Running;

    private Addition? Objection(HeldLine line)
    {
        var device = line.Id is { } id ? devices.GetValueOrDefault(id.Device) : null;
        if (line.Id is not null && device is null && devices.Count == SyncLimits.MaxDevices)
            return Addition.TooManyDevices;
        if (line.Id?.Number == (device?.PrefixLength ?? 0) + 1)
            return null;
        return lines.Count - devices.Values.Sum(d => d.PrefixLength) >= SyncLimits.MaxOdd ? Addition.TooManyOdd : null;
    }
}
