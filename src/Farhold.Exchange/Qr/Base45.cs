namespace Farhold.Exchange.Qr;

/// <summary>Bytes in the 45 characters that a QR code packs densest as text.</summary>
/// <remarks>Source: RFC 9285 (2022), sections 4.1 to 4.4.</remarks>
public static class Base45
{
    private const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

    public static string Encode(ReadOnlySpan<byte> bytes)
    {
        var text = new char[(bytes.Length / 2 * 3) + (bytes.Length % 2 * 2)];
        var at = 0;
        for (var i = 0; i < bytes.Length; i += 2)
        {
            var pair = i + 1 < bytes.Length;
            var value = pair ? (bytes[i] << 8) + bytes[i + 1] : bytes[i];
            for (var digits = pair ? 3 : 2; digits > 0; digits--, value /= 45)
                text[at++] = Alphabet[value % 45];
        }

        return new(text);
    }

    /// <summary>The bytes, or null where the text is no base45.</summary>
    public static byte[]? Decode(ReadOnlySpan<char> text)
    {
        if (text.Length % 3 == 1)
            return null;
        var bytes = new byte[(text.Length / 3 * 2) + (text.Length % 3 / 2)];
        var at = 0;
        for (var i = 0; i < text.Length; i += 3)
        {
            var group = text[i..Math.Min(i + 3, text.Length)];
            var value = 0;
            for (var digit = group.Length - 1; digit >= 0; digit--)
            {
                var index = Alphabet.IndexOf(group[digit], StringComparison.Ordinal);
                if (index < 0)
                    return null;
                value = (value * 45) + index;
            }

            if (value > (group.Length == 3 ? 0xFFFF : 0xFF))
                return null;
            if (group.Length == 3)
                bytes[at++] = (byte)(value >> 8);
            bytes[at++] = (byte)(value & 0xFF);
        }

        return bytes;
    }
}
