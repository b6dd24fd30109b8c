using System.Text;

namespace Farhold.Sync;

/// <summary>Under which device and number a line is counted.</summary>
/// <remarks>
/// What follows the first <c>"id":</c> in it, broken or not. Every version of the program has to find the same key in the same bytes, or
/// their running hashes differ for ever: so nothing here depends on what is understood of an entry.
/// </remarks>
internal static class LineKey
{
    private const int Longest = 80;

    /// <returns>Null where none can be made out.</returns>
    public static EntryId? In(ReadOnlySpan<byte> line)
    {
        for (var rest = line; rest.IndexOf("\"id\""u8) is >= 0 and var at; )
        {
            rest = rest[(at + 4)..];
            var value = rest.TrimStart(" \t"u8);
            if (!value.StartsWith(":"u8))
                continue;
            value = value[1..].TrimStart(" \t"u8);
            if (!value.StartsWith("\""u8))
                return null;
            value = value[1..];
            var end = value.IndexOf((byte)'"');
            return end is > 0 and <= Longest ? EntryId.TryParse(Encoding.UTF8.GetString(value[..end])) : null;
        }

        return null;
    }
}
