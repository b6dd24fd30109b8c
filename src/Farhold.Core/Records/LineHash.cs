using System.Buffers;
using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Records;

/// <summary>The SHA-256 of a line, its bytes as they stand in the file without the line's end.</summary>
/// <remarks><c>default</c> stands for no line that anybody could find.</remarks>
public readonly record struct LineHash
{
    private const int Digits = 64;

    private static readonly SearchValues<byte> Hexadecimal = SearchValues.Create("0123456789abcdef"u8);

    private readonly ulong a;
    private readonly ulong b;
    private readonly ulong c;
    private readonly ulong d;

    private LineHash(ReadOnlySpan<byte> hash)
    {
        a = BinaryPrimitives.ReadUInt64BigEndian(hash);
        b = BinaryPrimitives.ReadUInt64BigEndian(hash[8..]);
        c = BinaryPrimitives.ReadUInt64BigEndian(hash[16..]);
        d = BinaryPrimitives.ReadUInt64BigEndian(hash[24..]);
    }

    public static LineHash Of(JsonText line) => Of(line.Utf8.Span);

    /// <param name="line">Without the line's end; need not be text.</param>
    public static LineHash Of(ReadOnlySpan<byte> line)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(line, hash);
        return new(hash);
    }

    /// <summary>Its first 8 bytes as a number, the first byte highest: enough to tell the lines of one record apart.</summary>
    public ulong Short => a;

    /// <summary>Writes the hash.</summary>
    /// <param name="hash">At least 32 bytes.</param>
    public void CopyTo(Span<byte> hash)
    {
        BinaryPrimitives.WriteUInt64BigEndian(hash, a);
        BinaryPrimitives.WriteUInt64BigEndian(hash[8..], b);
        BinaryPrimitives.WriteUInt64BigEndian(hash[16..], c);
        BinaryPrimitives.WriteUInt64BigEndian(hash[24..], d);
    }

    /// <summary>64 hexadecimal digits, lower case; null for anything else.</summary>
    public static LineHash? TryParse(ReadOnlySpan<byte> utf8)
    {
        if (utf8.Length != Digits || utf8.IndexOfAnyExcept(Hexadecimal) >= 0)
            return null;
        Span<char> digits = stackalloc char[Digits];
        Encoding.ASCII.GetChars(utf8, digits);
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        Convert.FromHexString(digits, hash, out _, out _);
        return new(hash);
    }

    /// <summary>64 hexadecimal digits, lower case.</summary>
    public override string ToString() => $"{a:x16}{b:x16}{c:x16}{d:x16}";
}
