using System.Buffers.Text;

namespace Farhold.Signatures;

/// <summary>Bytes as base64url without padding (RFC 4648, section 5), read only in the one form they are written in.</summary>
public static class Base64UrlText
{
    public static string Write(ReadOnlySpan<byte> bytes) => Base64Url.EncodeToString(bytes);

    /// <summary>The bytes, or null where the text is not exactly how <paramref name="length"/> bytes are written.</summary>
    public static byte[]? Read(string text, int length)
    {
        if (!Base64Url.IsValid(text, out var decoded) || decoded != length)
            return null;
        var bytes = Base64Url.DecodeFromChars(text);
        return Write(bytes) == text ? bytes : null; // unused bits of the last character are zero
    }
}
