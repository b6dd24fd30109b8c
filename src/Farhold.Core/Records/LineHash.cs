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

    public static LineHash Of(JsonText line)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(line.Utf8.Span, hash);
        return new(hash);
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
