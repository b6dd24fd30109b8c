using System.Security.Cryptography;

namespace Farhold.Signatures;

/// <summary>Which file it was, byte for byte.</summary>
public static class FileHash
{
    public const int Digits = 64;

    /// <summary>The SHA-256 of a file, 64 hexadecimal digits in lower case.</summary>
    public static string Of(ReadOnlySpan<byte> file) => Convert.ToHexStringLower(SHA256.HashData(file));

    /// <summary>The first digits, for a person.</summary>
    public static string Short(string hash) => hash[..Math.Min(8, hash.Length)];
}
