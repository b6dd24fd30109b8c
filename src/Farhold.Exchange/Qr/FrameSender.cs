using System.Buffers.Binary;

namespace Farhold.Exchange.Qr;

/// <summary>Cuts a pack into frames, as many as anyone wants: first every block, then ever new sums of blocks.</summary>
/// <remarks>
/// A systematic random linear code over GF(2): from any set of frames slightly larger than the number of blocks the pack
/// can be told (on average 1.6 more, whatever their number: MacKay 2003, Information Theory, section 50, from memory).
/// </remarks>
public sealed class FrameSender
{
    /// <summary>What fits a code of version 10 (57 × 57 modules) at level L: 395 characters are 263 bytes.</summary>
    public const int UsualFrameBytes = 263;

    private readonly byte[] padded;
    private readonly int packLength;
    private readonly int blockLength;
    private readonly uint transfer;

    /// <param name="frameBytes">Largest frame; a smaller one makes a coarser picture and more frames.</param>
    /// <exception cref="ArgumentException">The pack is empty or too large, or the frame too small for it.</exception>
    public FrameSender(ReadOnlySpan<byte> pack, int frameBytes = UsualFrameBytes)
    {
        var room = frameBytes - Frame.Overhead;
        if (pack.Length is < 32 or > Frame.MaxPack)
            throw new ArgumentException($"A pack has 32 to {Frame.MaxPack} bytes; this one has {pack.Length}.", nameof(pack));
        if (room < 1 || (pack.Length + room - 1) / room > Frame.MaxBlocks)
            throw new ArgumentException($"Frames of {frameBytes} bytes are too small for {pack.Length} bytes.", nameof(frameBytes));
        (packLength, Blocks) = (pack.Length, (pack.Length + room - 1) / room);
        blockLength = Frame.BlockLength(packLength, Blocks);
        Blocks = (pack.Length + blockLength - 1) / blockLength;
        blockLength = Frame.BlockLength(packLength, Blocks);
        padded = new byte[Blocks * blockLength];
        pack.CopyTo(padded);
        transfer = BinaryPrimitives.ReadUInt32BigEndian(pack);
    }

    /// <summary>The least number of frames with which anyone can tell the whole.</summary>
    public int Blocks { get; }

    /// <param name="number">From 0; numbers beyond the largest begin anew.</param>
    public Frame this[int number]
    {
        get
        {
            var frame = new Frame(transfer, Blocks, packLength, number & Frame.MaxNumber, default);
            var bits = frame.Coefficients();
            var sum = new byte[blockLength];
            for (var block = 0; block < Blocks; block++)
                if ((bits[block / 64] >> (block % 64) & 1) != 0)
                    Xor.Into(sum, padded.AsSpan(block * blockLength, blockLength));
            return frame with { Data = sum };
        }
    }
}

internal static class Xor
{
    public static void Into(Span<byte> sum, ReadOnlySpan<byte> other)
    {
        for (var i = 0; i < sum.Length; i++)
            sum[i] ^= other[i];
    }
}
