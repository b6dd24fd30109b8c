using System.Security.Cryptography;

namespace Farhold.Sync;

/// <summary>The lines of one device, by number.</summary>
internal sealed class DeviceLines
{
    private static readonly byte[] Nothing = new byte[SHA256.HashSizeInBytes];

    /// <summary>Under each number, in the order of bytes.</summary>
    private readonly SortedDictionary<int, List<HeldLine>> lines = [];

    /// <summary>D₁, D₂, …, as far as the lines go without a gap.</summary>
    private readonly List<byte[]> running = [];

    public int Count { get; private set; }

    public int PrefixLength => running.Count;

    public Prefix Prefix => new(running.Count, Running(running.Count));

    public IEnumerable<HeldLine> All => lines.Values.SelectMany(v => v);

    /// <summary>Those that the prefix does not count.</summary>
    public IEnumerable<HeldLine> Odd => lines.SelectMany(l => l.Value.Skip(l.Key <= running.Count ? 1 : 0));

    /// <summary>All under numbers, in order.</summary>
    public IEnumerable<(int Number, IReadOnlyList<HeldLine> Variants)> Numbered =>
        lines.Select(l => (l.Key, (IReadOnlyList<HeldLine>)l.Value));

    /// <param name="length">From 0 to <see cref="PrefixLength"/>.</param>
    public ulong Running(int length) => length == 0 ? 0 : System.Buffers.Binary.BinaryPrimitives.ReadUInt64BigEndian(running[length - 1]);

    /// <summary>The lines under a number; none where there are none.</summary>
    public IReadOnlyList<HeldLine> At(int number) => lines.TryGetValue(number, out var variants) ? variants : [];

    /// <param name="line">One that is not held yet.</param>
    public void Add(int number, HeldLine line)
    {
        if (!lines.TryGetValue(number, out var variants))
            lines.Add(number, variants = []);
        var at = variants.FindIndex(v => v.Bytes.Span.SequenceCompareTo(line.Bytes.Span) > 0);
        variants.Insert(at < 0 ? variants.Count : at, line);
        Count++;
        if (at == 0 && number <= running.Count)
            running.RemoveRange(number - 1, running.Count - number + 1);
        Extend();
    }

    private void Extend()
    {
        Span<byte> both = stackalloc byte[2 * SHA256.HashSizeInBytes];
        while (lines.TryGetValue(running.Count + 1, out var next))
        {
            (running.Count == 0 ? Nothing : running[^1]).CopyTo(both);
            next[0].Hash.CopyTo(both[SHA256.HashSizeInBytes..]);
            running.Add(SHA256.HashData(both));
        }
    }
}
