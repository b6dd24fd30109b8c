using System.Buffers.Binary;
using System.Numerics;

namespace Farhold.Exchange.Qr;

/// <summary>What came of showing a frame to a collector.</summary>
public enum FrameResult
{
    /// <summary>It told something new.</summary>
    Taken,

    /// <summary>What it says was known.</summary>
    NothingNew,

    /// <summary>It is of another transfer, or none of ours: nothing is changed by it.</summary>
    Foreign,

    /// <summary>The whole is there and its hash is right: see <see cref="FrameCollector.Record"/>.</summary>
    Complete,

    /// <summary>All frames were there, but the hash of the whole is wrong. The collection begins anew.</summary>
    WholeDamaged,
}

/// <summary>Gathers frames, in any order, until the pack can be told from them. Never touches a record.</summary>
public sealed class FrameCollector
{
    private readonly SortedDictionary<int, (ulong[] Bits, byte[] Data)> rows = [];
    private Frame? first;

    /// <summary>How many independent frames are held.</summary>
    public int Known => rows.Count;

    /// <summary>How many are needed; 0 before the first.</summary>
    public int Needed => first?.Blocks ?? 0;

    /// <summary>The bytes of the record file, once complete.</summary>
    public byte[]? Record { get; private set; }

    public FrameResult Add(string text)
    {
        if (Frame.Read(text) is not { } frame)
            return FrameResult.Foreign;
        first ??= frame;
        if ((frame.Transfer, frame.Blocks, frame.PackLength) != (first.Transfer, first.Blocks, first.PackLength))
            return FrameResult.Foreign;
        if (Record is not null || !Reduced(frame))
            return FrameResult.NothingNew;
        return rows.Count < frame.Blocks ? FrameResult.Taken : Finish();
    }

    public void Clear()
    {
        rows.Clear();
        (first, Record) = (null, null);
    }

    /// <summary>Takes out of a frame what is known; false if nothing is left.</summary>
    private bool Reduced(Frame frame)
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

    private FrameResult Finish()
    {
        var blockLength = Frame.BlockLength(first!.PackLength, first.Blocks);
        var pack = new byte[first.Blocks * blockLength];
        foreach (var (pivot, row) in rows.Reverse())
        {
            for (var other = pivot + 1; other < first.Blocks; other++)
                if (Has(row.Bits, other))
                    Xor.Into(row.Data, pack.AsSpan(other * blockLength, blockLength));
            row.Data.CopyTo(pack.AsSpan(pivot * blockLength));
        }

        var whole = pack.AsSpan(0, first.PackLength);
        if (first.PackLength >= 4 && BinaryPrimitives.ReadUInt32BigEndian(whole) == first.Transfer)
            Record = Pack.Unpack(whole);
        if (Record is not null)
            return FrameResult.Complete;
        Clear();
        return FrameResult.WholeDamaged;
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
