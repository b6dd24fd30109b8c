using System.Collections.Immutable;
using System.Text;

namespace Farhold.Records;

/// <summary>Reads one line of a record.</summary>
public sealed class EntryReader
{
    /// <summary>Longest line, in bytes.</summary>
    public const int MaxLine = 1024 * 1024;

    private readonly EntryFields fields = new(new StringPool());

    /// <summary>The entry, or every objection to the line with its column (from 1, in characters).</summary>
    /// <param name="line">UTF-8 without the line's end. The entry keeps it.</param>
    public Read<Entry> Read(ReadOnlyMemory<byte> line, string file, int lineNumber) => Read(line, file, lineNumber, nulls: false);

    /// <summary>The column, from 1 in characters, of a byte of a line: bytes that continue a character do not count.</summary>
    public static int Column(ReadOnlySpan<byte> line, int offset)
    {
        var column = 1;
        foreach (var b in line[..Math.Min(offset, line.Length)])
            if ((b & 0xC0) != 0x80)
                column++;
        return column;
    }

    /// <param name="nulls">Whether a field that is null and that nobody knows counts as not understood.</param>
    internal Read<Entry> Read(ReadOnlyMemory<byte> line, string file, int lineNumber, bool nulls)
    {
        if (line.Length > MaxLine)
            return Refuse(file, lineNumber, line, [(0, $"the line is longer than {MaxLine} bytes")]);
        if (!System.Text.Unicode.Utf8.IsValid(line.Span))
            return Refuse(file, lineNumber, line, [(FirstInvalid(line.Span), "the text is not UTF-8 here")]);
        var entry = fields.Scan(line) ? Compose(line, nulls) : null;
        return entry is not null && fields.Objections.Count == 0
            ? new Read<Entry>.Usable(entry)
            : Refuse(file, lineNumber, line, fields.Objections);
    }

    private Entry? Compose(ReadOnlyMemory<byte> line, bool nulls)
    {
        var kind = fields.KindWord();
        return kind is null
            ? null
            : new Entry(
                fields.RequiredId(Field.Id),
                fields.RequiredHappened(Field.Happened),
                fields.RequiredTime(Field.Recorded),
                fields.RequiredName(Field.By),
                Kinds.Read(kind.Value, fields),
                new JsonText(line)
            )
            {
                Previous = fields.Link(Field.Previous),
                NotUnderstood = Rest(kind.Value, nulls),
            };
    }

    /// <summary>What is left of the line once everything known of it is read.</summary>
    private ImmutableArray<NotUnderstood> Rest(Kind kind, bool nulls)
    {
        fields.Mark(Field.Practice);
        if (fields.Objections.Count == 0)
            fields.RefuseHalfCharacters();
        return kind == Kind.OfNewerVersion ? [fields.UnknownKind()] : fields.NotUnderstood(nulls);
    }

    private static Read<Entry>.Refused Refuse(
        string file,
        int number,
        ReadOnlyMemory<byte> line,
        IReadOnlyList<(int Offset, string Reason)> objections
    ) => new([.. objections.OrderBy(o => o.Offset).Take(20).Select(o => new Refusal(file, number, Column(line.Span, o.Offset), o.Reason))]);

    private static int FirstInvalid(ReadOnlySpan<byte> line)
    {
        var offset = 0;
        while (offset < line.Length && Rune.DecodeFromUtf8(line[offset..], out _, out var used) == System.Buffers.OperationStatus.Done)
            offset += used;
        return offset;
    }
}
