using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Documents.Fhir;

/// <summary>Names of resources: the same record gives the same names, on any machine.</summary>
internal static class Names
{
    /// <summary>The SHA-256 of an entry's line, in hexadecimal.</summary>
    public static string OfContent(JsonText line) => Convert.ToHexStringLower(SHA256.HashData(line.Utf8.Span));

    /// <summary>A UUID of version 8 (RFC 9562, section 5.8) from the SHA-256 of what it names.</summary>
    public static string Uuid(string what)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes(what)).AsSpan(0, 16);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true).ToString("D", CultureInfo.InvariantCulture);
    }
}
