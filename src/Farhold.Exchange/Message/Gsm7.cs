namespace Farhold.Exchange.Message;

/// <summary>The default alphabet of short messages.</summary>
/// <remarks>Source: 3GPP TS 23.038 (formerly GSM 03.38), section 6.2.1 with its extension table (from memory).</remarks>
public static class Gsm7
{
    /// <summary>Septets that one message holds: 140 octets of 8 bits are 160 of 7.</summary>
    public const int MessageSeptets = 160;

    private const string Default =
        "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>"
        + "?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà";

    /// <summary>Reached by an escape: each costs two septets.</summary>
    private const string Extension = "\f^{}\\[~]|€";

    /// <summary>Septets of a text, or null where it holds a character that the alphabet lacks.</summary>
    public static int? Septets(string text)
    {
        var septets = 0;
        foreach (var c in text)
        {
            if (Default.Contains(c, StringComparison.Ordinal))
                septets++;
            else if (Extension.Contains(c, StringComparison.Ordinal))
                septets += 2;
            else
                return null;
        }

        return septets;
    }
}
