using System.Buffers.Binary;
using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Farhold.Documents.Card;

/// <summary>DejaVu Sans, built in: Latin, Greek, Cyrillic and more, the same on every machine.</summary>
internal sealed class CardFonts : IFontResolver
{
    private const string Family = "DejaVu Sans";

    private static readonly CardFonts Instance = new();
    private static readonly byte[] Plain = Bytes("DejaVuSans.ttf");
    private static readonly byte[] Bold = Bytes("DejaVuSans-Bold.ttf");
    private static readonly HashSet<int> Held = [.. Letters(Plain).Intersect(Letters(Bold))];

    /// <summary>PDFsharp takes one resolver for the whole process.</summary>
    public static void Use()
    {
        if (GlobalFontSettings.FontResolver is null)
            GlobalFontSettings.FontResolver = Instance;
    }

    /// <summary>With a Unicode map in the file, so that any name can be copied out of it.</summary>
    public static XFont Of(double points, bool bold) =>
        new(Family, points, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode));

    /// <summary>
    /// The text with every letter the fonts lack written as its code point: <c>[U+96EA]</c>. Nothing goes missing unseen.
    /// </summary>
    public static string Printable(string text)
    {
        if (text.All(c => c < 128 || Held.Contains(c)))
            return text;
        var all = new StringBuilder(text.Length + 8);
        foreach (var rune in text.EnumerateRunes())
            if (rune.Value < 128 || Held.Contains(rune.Value))
                all.Append(rune);
            else
                all.Append(System.Globalization.CultureInfo.InvariantCulture, $"[U+{rune.Value:X4}]");
        return all.ToString();
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) => new(bold ? "bold" : "plain");

    public byte[]? GetFont(string faceName) => faceName == "bold" ? Bold : Plain;

    private static byte[] Bytes(string name)
    {
        using var stream = typeof(CardFonts).Assembly.GetManifestResourceStream(name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Code points of the basic plane that have a glyph: the font's cmap table, format 4 (OpenType 1.9, 2021).</summary>
    private static IEnumerable<int> Letters(byte[] font)
    {
        int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(font.AsSpan(at));
        int U32(int at) => (int)BinaryPrimitives.ReadUInt32BigEndian(font.AsSpan(at));
        var cmap = Enumerable
            .Range(0, U16(4))
            .Select(i => 12 + (16 * i))
            .Where(t => font.AsSpan(t, 4).SequenceEqual("cmap"u8))
            .Select(t => U32(t + 8))
            .First();
        var table = Enumerable.Range(0, U16(cmap + 2)).Select(i => cmap + U32(cmap + 8 + (8 * i))).First(t => U16(t) == 4);
        var segments = U16(table + 6) / 2;
        for (var i = 0; i < segments; i++)
        {
            var (end, start) = (U16(table + 14 + (2 * i)), U16(table + 16 + (2 * segments) + (2 * i)));
            var delta = U16(table + 16 + (4 * segments) + (2 * i));
            var at = table + 16 + (6 * segments) + (2 * i);
            for (var c = start; c <= end && c != 0xFFFF; c++)
            {
                var glyph = U16(at) == 0 ? c + delta : U16(at + U16(at) + (2 * (c - start)));
                if ((glyph & 0xFFFF) != 0)
                    yield return c;
            }
        }
    }
}
