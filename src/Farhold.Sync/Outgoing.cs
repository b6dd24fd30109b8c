using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Sync;

/// <summary>A message: what its sender holds, then lines that the other side lacks.</summary>
/// <param name="Lines">As they go over the wire, without ends, each device's in the order of its numbers.</param>
/// <param name="Rest">How many more are lacked there, left for a next message.</param>
public sealed record Outgoing(Head Head, ImmutableArray<ReadOnlyMemory<byte>> Lines, int Rest)
{
    /// <param name="other">
    /// What the other side last said of itself; it may be old, that costs bytes and never a line. Null: nothing is known of it, so nothing
    /// but the head is sent.
    /// </param>
    /// <param name="most">Bytes of lines after which no more is added; at least one line goes.</param>
    /// <param name="now">Told to the other side.</param>
    /// <param name="known">What third sides have said exists and is not here: see <see cref="Head.Known"/>.</param>
    public static Outgoing To(
        Head? other,
        LineSet mine,
        int most = SyncLimits.MaxText / 2,
        Instant? now = null,
        ImmutableSortedDictionary<string, int>? known = null
    )
    {
        var head = new Head(mine.Vector, HashesFor(other ?? Head.Empty, mine)) { Now = now };
        if (known is not null)
            head = head with { Known = known };
        if (other is null)
            return new(head, [], mine.Count);
        var shortening = new WireLinks.Shortening(mine, other.Have);
        var lines = ImmutableArray.CreateBuilder<ReadOnlyMemory<byte>>();
        var rest = 0;
        long size = 0;
        foreach (var line in mine.LackedBy(other))
        {
            if (size >= most)
            {
                rest++;
                continue;
            }

            var wire = shortening.Shorten(line);
            size += wire.Length + 1;
            lines.Add(wire);
        }

        return new(head, lines.ToImmutable(), rest);
    }

    /// <summary>The message as bytes: each line with a line feed behind it.</summary>
    public void Write(Stream to)
    {
        to.Write(Head.Write());
        to.WriteByte((byte)'\n');
        foreach (var line in Lines)
        {
            to.Write(line.Span);
            to.WriteByte((byte)'\n');
        }
    }

    /// <summary>
    /// Those in dispute, unless the other side has listed its lines and nothing of them is lacking here; and those that it listed and of
    /// which something is lacking here.
    /// </summary>
    private static ImmutableSortedDictionary<string, ImmutableArray<ulong>> HashesFor(Head other, LineSet mine)
    {
        var lacking = other.Hashes.Where(h => h.Value.Any(hash => !mine.Holds(hash))).Select(h => h.Key);
        return mine.Disputed(other.Have)
            .Where(d => !other.Hashes.ContainsKey(d))
            .Concat(lacking)
            .ToImmutableSortedDictionary(d => d, mine.Hashes, StringComparer.Ordinal);
    }
}
