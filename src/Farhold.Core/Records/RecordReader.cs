using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>A line of a record file that can't be read; kept as it stands and written back with the rest.</summary>
/// <param name="Number">Its line, from 1.</param>
/// <param name="Refusals">Why, at least one.</param>
public sealed record DamagedLine(int Number, JsonText Raw, ImmutableArray<Refusal> Refusals)
{
    private const string CutOffHint = "the last line is cut off or broken, as when a phone dies while writing; ";

    /// <summary>
    /// It is the last of its file and has no end. The line itself does not show that: it can't be told of one that went through other
    /// hands.
    /// </summary>
    public bool IsCutOff { get; init; }

    /// <summary>The refusals, with what most likely happened.</summary>
    public ImmutableArray<Refusal> Explained =>
        IsCutOff ? Refusals.SetItem(0, Refusals[0] with { Reason = CutOffHint + Refusals[0].Reason }) : Refusals;
}

/// <summary>What a record file holds, in the order of its lines.</summary>
public sealed record RecordFile(ImmutableArray<Entry> Entries, ImmutableArray<DamagedLine> Damaged)
{
    /// <summary>The line of each entry, from 1.</summary>
    public required ImmutableArray<int> Lines { get; init; }

    /// <summary>
    /// What of the entries this version can't make anything of, in file order; that of amendments depends on their target (see
    /// <see cref="Amendments"/>).
    /// </summary>
    public IEnumerable<Refusal> NotUnderstood(string file) =>
        Entries.Zip(Lines, (entry, line) => entry.NotUnderstood.Select(n => n.In(entry, file, line))).SelectMany(r => r);
}

/// <summary>Reads and writes record files: UTF-8 JSON Lines, one entry a line.</summary>
/// <remarks>
/// One bad line never costs the others. Limits: <see cref="MaxFile"/>, <see cref="EntryReader.MaxLine"/>, nesting of
/// 16, 200 fields an entry. Blank lines are passed over. A byte-order mark is accepted and not written back.
/// </remarks>
public static class RecordReader
{
    /// <summary>Largest file, in bytes: some three million entries.</summary>
    public const int MaxFile = 512 * 1024 * 1024;

    /// <summary>Damaged lines that are kept; a file with more is no record.</summary>
    public const int MaxDamaged = 10_000;

    public static Read<RecordFile> Read(ReadOnlyMemory<byte> bytes, string file)
    {
        if (Whole(bytes.Span) is { } reason)
            return Refuse(file, 1, reason);
        if (bytes.Span.StartsWith("\uFEFF"u8))
            bytes = bytes[3..];
        var entries = ImmutableArray.CreateBuilder<Entry>(Math.Max(4, bytes.Length / 250));
        var lines = ImmutableArray.CreateBuilder<int>(entries.Capacity);
        var damaged = ImmutableArray.CreateBuilder<DamagedLine>();
        var reader = new EntryReader();
        for (var number = 1; !bytes.IsEmpty; number++)
        {
            var end = bytes.Span.IndexOf((byte)'\n');
            var line = end < 0 ? bytes : bytes[..end];
            bytes = end < 0 ? default : bytes[(end + 1)..];
            if (line.Span.EndsWith("\r"u8))
                line = line[..^1];
            if (line.Span.IndexOfAnyExcept(" \t"u8) < 0)
                continue;
            switch (reader.Read(line, file, number))
            {
                case Read<Entry>.Usable usable:
                    entries.Add(usable.Value);
                    lines.Add(number);
                    break;
                case Read<Entry>.Refused refused:
                    damaged.Add(new(number, new(line), refused.Refusals) { IsCutOff = end < 0 });
                    break;
            }

            if (damaged.Count > MaxDamaged)
                return Refuse(file, number, $"more than {MaxDamaged} lines can't be read: this is no record");
        }

        if (entries.Count == 0)
            return damaged.Count == 0
                ? Refuse(file, 1, "there is no entry in the file")
                : new Read<RecordFile>.Refused([.. damaged.SelectMany(d => d.Explained).Take(100)]);
        return new Read<RecordFile>.Usable(
            new(entries.DrainToImmutable(), damaged.DrainToImmutable()) { Lines = lines.DrainToImmutable() }
        );
    }

    /// <summary>All lines of a record, entries first in the order given, then the damaged ones as they stood.</summary>
    public static void Write(Stream to, IEnumerable<Entry> entries, IEnumerable<DamagedLine> damaged)
    {
        foreach (var line in entries.Select(e => e.Json).Concat(damaged.Select(d => d.Raw)))
        {
            to.Write(line.Utf8.Span);
            to.WriteByte((byte)'\n');
        }
    }

    /// <summary>Why the file as a whole is none of ours, or null.</summary>
    private static string? Whole(ReadOnlySpan<byte> bytes) =>
        bytes switch
        {
            { Length: 0 } => "the file is empty; a record begins with an entry of the kind casualty.opened",
            { Length: > MaxFile } => $"the file is larger than {MaxFile / (1024 * 1024)} MiB",
            [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] => "the file is UTF-16; save it as UTF-8",
            [0x1F, 0x8B, ..] or [(byte)'P', (byte)'K', 3, 4, ..] => "the file is compressed; unpack it first",
            _ when bytes[..Math.Min(bytes.Length, 4096)].Contains((byte)0) => "the file is not text in UTF-8",
            _ => null,
        };

    private static Read<RecordFile>.Refused Refuse(string file, int line, string reason) => new([new Refusal(file, line, 1, reason)]);
}
