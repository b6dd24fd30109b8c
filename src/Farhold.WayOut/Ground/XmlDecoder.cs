using System.Text;

namespace Farhold.WayOut.Ground;

/// <summary>
/// Turns the bytes of an XML file into text, piece by piece, in the encoding its byte order mark, its first bytes or its
/// declaration tell (XML 1.0, appendix F, from memory).
/// </summary>
internal sealed class XmlDecoder
{
    /// <summary>No XML file may hold this character, so a strict parser stops at the place of a byte that can't be read.</summary>
    private const string Unreadable = "\uFFFF";

    /// <summary>Bytes looked at for a declaration (design).</summary>
    private const int Opening = 1024;

    private readonly ReadOnlyMemory<byte> content;
    private readonly Decoder? decoder;
    private int at;

    public XmlDecoder(ReadOnlyMemory<byte> content)
    {
        this.content = content;
        var (wide, mark) = First(content.Span);
        at = mark;
        var declared = Declared((wide ?? Encoding.Latin1).GetString(content.Span[mark..Math.Min(content.Length, Opening)]));
        decoder = Chosen(wide, declared)?.GetDecoder();
    }

    /// <summary>The file names an encoding that can't be read, or one that it plainly isn't in.</summary>
    public bool IsUnknown => decoder is null;

    public bool IsAtEnd => at >= content.Length;

    public double Share => (double)at / Math.Max(1, content.Length);

    public string Next(int bytes)
    {
        var piece = content.Span.Slice(at, Math.Min(bytes, content.Length - at));
        at += piece.Length;
        var text = new char[decoder!.GetCharCount(piece, IsAtEnd)];
        return new(text, 0, decoder.GetChars(piece, text, IsAtEnd));
    }

    /// <returns>An encoding of two or four bytes a unit, or null; and the length of the byte order mark.</returns>
    private static (Encoding? Wide, int Mark) First(ReadOnlySpan<byte> bytes) =>
        bytes switch
        {
            [0xFF, 0xFE, 0, 0, ..] => (Encoding.UTF32, 4),
            [0, 0, 0xFE, 0xFF, ..] => (new UTF32Encoding(bigEndian: true, byteOrderMark: false), 4),
            [0xFF, 0xFE, ..] => (Encoding.Unicode, 2),
            [0xFE, 0xFF, ..] => (Encoding.BigEndianUnicode, 2),
            [0xEF, 0xBB, 0xBF, ..] => (null, 3),
            [(byte)'<', 0, 0, 0, ..] => (Encoding.UTF32, 0),
            [0, 0, 0, (byte)'<', ..] => (new UTF32Encoding(bigEndian: true, byteOrderMark: false), 0),
            [(byte)'<', 0, ..] => (Encoding.Unicode, 0),
            [0, (byte)'<', ..] => (Encoding.BigEndianUnicode, 0),
            _ => (null, 0),
        };

    /// <returns>What an XML declaration at the beginning names; null without one.</returns>
    private static string? Declared(string opening)
    {
        const string name = "encoding";
        var end = opening.IndexOf("?>", StringComparison.Ordinal);
        if (!opening.StartsWith("<?xml", StringComparison.Ordinal) || end < 0)
            return null;
        var declaration = opening.AsSpan(0, end);
        var found = declaration.IndexOf(name);
        if (found < 0)
            return null;
        var value = declaration[(found + name.Length)..].TrimStart(" \t\r\n=");
        var close = value.Length > 0 && value[0] is '"' or '\'' ? value[1..].IndexOf(value[0]) : -1;
        return close < 0 ? null : value.Slice(1, close).ToString();
    }

    private static Encoding? Chosen(Encoding? wide, string? declared)
    {
        var said = declared?.ToUpperInvariant();
        if (said is "UTF-16" or "UCS-2" or "ISO-10646-UCS-2" or "UCS-4" or "ISO-10646-UCS-4" or "UTF-16LE" or "UTF-16BE" or "UTF-32")
            return wide is null ? null : Strict(wide);
        if (wide is not null)
            return said is null ? Strict(wide) : null;
        try
        {
            return Strict(said is null ? Encoding.UTF8 : Encoding.GetEncoding(declared!));
        }
        catch (Exception e) when (e is ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    private static Encoding Strict(Encoding encoding) =>
        Encoding.GetEncoding(encoding.CodePage, EncoderFallback.ReplacementFallback, new DecoderReplacementFallback(Unreadable));
}
