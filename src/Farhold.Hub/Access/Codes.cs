using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Hub.Access;

/// <summary>Secrets that people carry, and what is kept of them: a hash.</summary>
internal static class Codes
{
    /// <summary>Letters and digits that are not taken for each other.</summary>
    private const string Letters = "abcdefghjkmnpqrstuvwxyz23456789";

    /// <summary>12 of 31: 59 bits, used once, and tried at most ten times a minute.</summary>
    private const int OfInvitation = 12;

    /// <summary>26 of 31: 128 bits. It stands in a link and is never typed.</summary>
    private const int OfLink = 26;

    public static string NewInvitation() => RandomNumberGenerator.GetString(Letters, OfInvitation);

    public static string NewSecret() => RandomNumberGenerator.GetString(Letters, OfLink);

    /// <summary>Four digits to be told by voice.</summary>
    public static string NewSpoken() => RandomNumberGenerator.GetString("0123456789", 4);

    /// <summary>As it is read: in groups of four.</summary>
    public static string Grouped(string code) => string.Join('-', code.Chunk(4).Select(g => new string(g)));

    /// <summary>What is kept of a code; how it was typed, in groups or capitals, does not matter.</summary>
    public static byte[] Hash(string code) =>
        SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(code.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant()));

    public static string Thumb(ReadOnlySpan<byte> key) => Convert.ToHexStringLower(SHA256.HashData(key));

    /// <summary>Six digits of the key's hash, which two screens show beside each other.</summary>
    public static string Digits(ReadOnlySpan<byte> key)
    {
        var number = BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(key)) % 1_000_000;
        return number.ToString("000 000", CultureInfo.InvariantCulture);
    }
}
