using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Farhold.Exchange.Qr;

/// <summary>One frame of a transfer: a block of the pack, or the sum of several.</summary>
/// <param name="Transfer">The first four bytes of the pack.</param>
/// <param name="Blocks">Into how many the pack is cut.</param>
/// <param name="PackLength">Bytes of the whole pack.</param>
/// <param name="Number">Below <paramref name="Blocks"/>: that block itself; from there on, the sum that <see cref="Coefficients"/>
/// names.</param>
/// <param name="Data">As long as a block; the last block is filled up with zeros.</param>
/// <remarks>
/// In bytes, big-endian: F7, version 1, transfer (4), blocks (2), pack length (3), number (3), data, and the first four bytes
/// of the SHA-256 of all that. In the code: base45.
/// </remarks>
public sealed record Frame(uint Transfer, int Blocks, int PackLength, int Number, ReadOnlyMemory<byte> Data)
{
    /// <summary>Bytes of a frame beside its data.</summary>
    public const int Overhead = Head + Check;

    public const int MaxBlocks = 4_000;
    public const int MaxPack = 1 << 20;
    public const int MaxNumber = (1 << 24) - 1;

    private const byte Magic = 0xF7;
    private const byte Version = 1;
    private const int Head = 14;
    private const int Check = 4;

    public static int BlockLength(int packLength, int blocks) => (packLength + blocks - 1) / blocks;

    public string Text()
    {
        var bytes = new byte[Overhead + Data.Length];
        (bytes[0], bytes[1]) = (Magic, Version);
        BinaryPrimitives.WriteUInt32BigEndian(bytes.AsSpan(2), Transfer);
        BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(6), (ushort)Blocks);
        Three(bytes.AsSpan(8), PackLength);
        Three(bytes.AsSpan(11), Number);
        Data.Span.CopyTo(bytes.AsSpan(Head));
        SHA256.HashData(bytes.AsSpan(0, bytes.Length - Check)).AsSpan(0, Check).CopyTo(bytes.AsSpan(bytes.Length - Check));
        return Base45.Encode(bytes);
    }

    /// <summary>The frame, or null where the text is none, or damaged.</summary>
    public static Frame? Read(string text)
    {
        if (text.Length > 4_296 || Base45.Decode(text) is not { Length: > Overhead } bytes || bytes[0] != Magic || bytes[1] != Version)
            return null;
        if (!SHA256.HashData(bytes.AsSpan(0, bytes.Length - Check)).AsSpan(0, Check).SequenceEqual(bytes.AsSpan(bytes.Length - Check)))
            return null;
        var blocks = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(6));
        var packLength = Three(bytes.AsSpan(8));
        var data = bytes.AsMemory(Head, bytes.Length - Overhead);
        return blocks is >= 1 and <= MaxBlocks && packLength is >= 1 and <= MaxPack && data.Length == BlockLength(packLength, blocks)
            ? new(BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(2)), blocks, packLength, Three(bytes.AsSpan(11)), data)
            : null;
    }

    /// <summary>Which blocks the frame is the sum of, a bit each, the lowest first.</summary>
    public ulong[] Coefficients()
    {
        var bits = new ulong[(Blocks + 63) / 64];
        if (Number < Blocks)
        {
            bits[Number / 64] = 1UL << (Number % 64);
            return bits;
        }

        var state = ((ulong)Transfer << 24) | (uint)Number;
        for (var i = 0; i < bits.Length; i++)
            bits[i] = SplitMix(ref state);
        if (Blocks % 64 != 0)
            bits[^1] &= (1UL << (Blocks % 64)) - 1;
        if (bits.All(b => b == 0))
            bits[Number % Blocks / 64] |= 1UL << (Number % Blocks % 64);
        return bits;
    }

    /// <summary>Source: Steele, Lea and Flood 2014, Fast splittable pseudorandom number generators (constants from memory).</summary>
    private static ulong SplitMix(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            var z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    private static void Three(Span<byte> to, int value) =>
        (to[0], to[1], to[2]) = ((byte)(value >> 16), (byte)((value >> 8) & 0xFF), (byte)(value & 0xFF));

    private static int Three(ReadOnlySpan<byte> from) => (from[0] << 16) | (from[1] << 8) | from[2];
}
