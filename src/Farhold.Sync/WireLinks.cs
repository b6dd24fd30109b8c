using System.Globalization;
using System.Text;

namespace Farhold.Sync;

/// <summary>Takes the link out of a line on its way, where the other side can put it back.</summary>
/// <remarks>
/// <para>A line of a record may begin with <c>{"id":"a7k3-13","previous":"</c> and 64 digits. On the wire there stand instead</para>
/// <para>no digits, where the link is that of the line under <c>a7k3-12</c> that came last in the same message;</para>
/// <para>its first eight digits, where it is that of a line under <c>a7k3-12</c> that the other side says it holds.</para>
/// <para>A line that would be taken for such a one, or that begins with <c>=</c>, has a <c>=</c> put before it.</para>
/// <para>What the other side can't put back, since it lost what it held, it does not take; the next round sends it whole.</para>
/// </remarks>
internal static class WireLinks
{
    public const byte Literal = (byte)'=';

    private const int Digits = 64,
        Few = 8;

    private static ReadOnlySpan<byte> Begin => "{\"id\":\""u8;

    private static ReadOnlySpan<byte> Mark => "\",\"previous\":\""u8;

    /// <summary>Shortens the lines of one message, in its order.</summary>
    /// <param name="other">The side that the message is for, as it described itself.</param>
    internal sealed class Shortening(LineSet mine, Vector other)
    {
        private readonly Dictionary<EntryId, LineHash> sent = [];

        public byte[] Shorten(HeldLine line)
        {
            var bytes = line.Bytes.Span;
            var (before, at, digits) = LinkIn(bytes);
            if (line.Id is { } id)
                sent[id] = line.Hash;
            if (before is not { } previous)
                return bytes.StartsWith([Literal]) ? [Literal, .. bytes] : bytes.ToArray();
            if (digits is 0 or Few)
                return [Literal, .. bytes];
            if (digits != Digits || LineHash.TryParse(bytes.Slice(at, Digits)) is not { } link)
                return bytes.ToArray();
            if (sent.TryGetValue(previous, out var last) && last == link)
                return [.. bytes[..at], .. bytes[(at + Digits)..]];
            if (mine.Confirmed(previous.Device, other) >= previous.Number && mine.At(previous) is [var first, ..] && first.Hash == link)
                return [.. bytes[..(at + Few)], .. bytes[(at + Digits)..]];
            return bytes.ToArray();
        }
    }

    /// <summary>Restores the lines of one message, in its order.</summary>
    /// <param name="mine">What is held here; lines of the message may be added to it in between.</param>
    internal sealed class Restoring(LineSet mine)
    {
        private readonly Dictionary<EntryId, LineHash> came = [];

        /// <returns>Null where the link can't be put back.</returns>
        public ReadOnlyMemory<byte>? Restore(ReadOnlyMemory<byte> wire)
        {
            var line = Whole(wire);
            if (line is { } whole && LineKey.In(whole.Span) is { } id)
                came[id] = LineHash.Of(whole.Span);
            else if (LineKey.In(wire.Span) is { } lost)
                came.Remove(lost); // what follows from it can't be restored either
            return line;
        }

        private ReadOnlyMemory<byte>? Whole(ReadOnlyMemory<byte> wire)
        {
            var bytes = wire.Span;
            if (bytes.StartsWith([Literal]))
                return wire[1..];
            var (before, at, digits) = LinkIn(bytes);
            if (before is not { } previous || digits is not (0 or Few))
                return wire;
            var link = digits == 0 ? InMessage(previous) : Held(previous, bytes.Slice(at, Few));
            if (link is not { } found)
                return null;
            byte[] whole = [.. bytes[..at], .. Encoding.ASCII.GetBytes(found.ToString()), .. bytes[(at + digits)..]];
            return whole;
        }

        private LineHash? InMessage(EntryId id) => came.TryGetValue(id, out var last) ? last : null;

        private LineHash? Held(EntryId id, ReadOnlySpan<byte> digits)
        {
            if (!uint.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var first))
                return null;
            var fitting = mine.At(id).Where(l => (uint)(l.Hash.Short >> 32) == first).ToArray();
            return fitting is [var only] ? only.Hash : null;
        }
    }

    /// <summary>The id before that of the line, where the digits of its link begin, and how many there are.</summary>
    private static (EntryId? Before, int At, int Digits) LinkIn(ReadOnlySpan<byte> line)
    {
        if (!line.StartsWith(Begin))
            return default;
        var end = line[Begin.Length..].IndexOf((byte)'"') + Begin.Length;
        if (end <= Begin.Length || LineKey.In(line) is not { Number: > 1 } id || !line[end..].StartsWith(Mark))
            return default;
        var at = end + Mark.Length;
        var digits = line[at..].IndexOf((byte)'"');
        return digits < 0 ? default : (id with { Number = id.Number - 1 }, at, digits);
    }
}
