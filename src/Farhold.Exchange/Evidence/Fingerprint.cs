using System.Security.Cryptography;

namespace Farhold.Exchange.Evidence;

/// <summary>Twenty hexadecimal digits that stand for the whole record, to be compared by eye or voice.</summary>
/// <remarks>
/// The first 80 bits of the SHA-256 of all lines, sorted by their bytes, each once, each with a line feed. The order in
/// which entries came does not matter. Anyone can redo it: <c>LC_ALL=C sort -u record.jsonl | sha256sum | cut -c1-20</c>.
/// </remarks>
public static class Fingerprint
{
    private const int Digits = 20;

    /// <summary><c>3f2a 91bc 07de 5512 c0ff</c>.</summary>
    public static string Of(CareRecord record)
    {
        var lines = record.Entries.Select(e => e.Json).Concat(record.Damaged.Select(d => d.Raw)).Distinct().ToList();
        lines.Sort((a, b) => a.Utf8.Span.SequenceCompareTo(b.Utf8.Span));
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var line in lines)
        {
            hash.AppendData(line.Utf8.Span);
            hash.AppendData("\n"u8);
        }

        var digits = Convert.ToHexStringLower(hash.GetHashAndReset())[..Digits];
        return string.Join(' ', digits.Chunk(4).Select(c => new string(c)));
    }
}
