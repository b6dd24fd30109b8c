using System.Buffers.Binary;
using System.Numerics;

namespace Farhold.Exchange.Qr;

/// <summary>The frames of one transfer, reduced against each other until the pack can be told from them.</summary>
internal sealed class FrameCollection(Frame first)
{
    private readonly SortedDictionary<int, (ulong[] Bits, byte[] Data)> rows = [];

    public int Known => rows.Count;

    public int Needed => first.Blocks;

    public bool IsWhole => Known == Needed;

    /// <summary>Whether a frame is of this transfer.</summary>
    public bool Takes(Frame frame) => (frame.Transfer, frame.Blocks, frame.PackLength) == (first.Transfer, first.Blocks, first.PackLength);

    /// <summary>Takes out of a frame what is known; false if nothing is left.</summary>
    public bool Add(Frame frame)
    {
        var (bits, data) = (frame.Coefficients(), frame.Data.ToArray());
        foreach (var (pivot, row) in rows)
            if (Has(bits, pivot))
                Add(row, bits, data);
        if (Lowest(bits) is not { } own)
            return false;
        rows.Add(own, (bits, data));
        return true;
    }

    /// <summary>The record file; null where the whole is not what its hash says.</summary>
    public byte[]? Unpack()
    {
        var blockLength = Frame.BlockLength(first.PackLength, first.Blocks);
        var pack = new byte[first.Blocks * blockLength];
        foreach (var (pivot, row) in rows.Reverse())
        {
            for (var other = pivot + 1; other < first.Blocks; other++)
                if (Has(row.Bits, other))
                    Xor.Into(row.Data, pack.AsSpan(other * blockLength, blockLength));
            row.Data.CopyTo(pack.AsSpan(pivot * blockLength));
        }

        var whole = pack.AsSpan(0, first.PackLength);
        return first.PackLength >= 4 && BinaryPrimitives.ReadUInt32BigEndian(whole) == first.Transfer ? Pack.Unpack(whole) : null;
    }

    private static void Add((ulong[] Bits, byte[] Data) row, ulong[] bits, byte[] data)
    {
        for (var i = 0; i < bits.Length; i++)
            bits[i] ^= row.Bits[i];
        Xor.Into(data, row.Data);
    }

    private static bool Has(ulong[] bits, int at) => (bits[at / 64] >> (at % 64) & 1) != 0;

    private static int? Lowest(ulong[] bits)
    {
        for (var i = 0; i < bits.Length; i++)
            if (bits[i] != 0)
                return (i * 64) + BitOperations.TrailingZeroCount(bits[i]);
        return null;
    }
}
