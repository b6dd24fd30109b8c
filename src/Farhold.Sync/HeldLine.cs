namespace Farhold.Sync;

/// <summary>A line as it stands in the record file, without its end.</summary>
/// <param name="Id">The id that is legible in it; null where none is. Nothing else of it need be.</param>
public sealed record HeldLine(EntryId? Id, LineHash Hash, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>Whatever the bytes are; carriage returns at the end belong to the line's end.</summary>
    /// <returns>Null where there is nothing but white space, which is no line.</returns>
    public static HeldLine? Of(ReadOnlyMemory<byte> bytes)
    {
        var line = bytes.TrimEnd((byte)'\r');
        return line.Span.IndexOfAnyExcept(" \t"u8) < 0 ? null : new(LineKey.In(line.Span), LineHash.Of(line.Span), line);
    }
}
