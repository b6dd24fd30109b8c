using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Farhold.Documents.Card;

/// <summary>Puts what the library generates randomly into one form, so that the same card is the same file.</summary>
/// <remarks>
/// The tags of font subsets, and the ids of the document in its trailer and in its metadata. All keep their length, so
/// that no offset in the file changes.
/// </remarks>
internal static partial class PdfSameness
{
    public static byte[] Of(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        var tags = new List<string>();
        text = FontTags()
            .Replace(
                text,
                m =>
                {
                    var tag = m.Groups[2].Value;
                    if (!tags.Contains(tag))
                        tags.Add(tag);
                    return $"{m.Groups[1].Value}FARHO{(char)('A' + tags.IndexOf(tag))}+";
                }
            );
        var rest = Ids().Replace(text, m => m.Groups[1].Value);
        var print = Convert.ToHexString(SHA256.HashData(Encoding.Latin1.GetBytes(rest)).AsSpan(0, 16));
        return Encoding.Latin1.GetBytes(
            Ids()
                .Replace(
                    text,
                    m =>
                        m.Value.StartsWith("/ID", StringComparison.Ordinal)
                            ? $"/ID[<{print}><{print}>]"
                            : m.Groups[1].Value + new Guid(Convert.FromHexString(print)).ToString("D")
                )
        );
    }

    [GeneratedRegex(@"(/(?:FontName|BaseFont)/)([A-Z]{6})\+")]
    private static partial Regex FontTags();

    [GeneratedRegex(@"/ID\[<[0-9A-F]{32}><[0-9A-F]{32}>\]|(<xmpMM:(?:DocumentID|InstanceID)>uuid:)[0-9a-f-]{36}")]
    private static partial Regex Ids();
}
