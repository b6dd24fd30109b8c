using System.Collections.Immutable;
using System.Text;
using NodaTime;

namespace Farhold.App.HandOver;

/// <summary>A record, read to see whose it is and what it says, and added to nothing.</summary>
public sealed record ComingRecord(IncomingFile File, CareRecord Record)
{
    /// <param name="here">This phone.</param>
    /// <param name="now">When it came in.</param>
    /// <param name="breathe">Lets touches through in between: a long record takes seconds on a slow phone.</param>
    public static async Task<ComingRecord> OfAsync(IncomingFile file, string here, Instant now, Func<Task> breathe) =>
        new(file, await ReadAsync(file.Lines.Select(l => (l.Bytes, (Instant?)now)), here, breathe));

    public static Task<CareRecord> OfAsync(ImmutableArray<StoredLine> lines, string here, Func<Task> breathe) =>
        ReadAsync(lines.Select(l => ((ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(l.Text), l.Received)), here, breathe);

    /// <summary>Whether it is surely of the casualty whose record is held.</summary>
    public bool IsOf(CareRecord held, ImmutableArray<StoredLine> lines) =>
        RecordIdentity.Of(held.Entries).IsOf(RecordIdentity.Of(Record.Entries), File.Shares(lines));

    private static async Task<CareRecord> ReadAsync(
        IEnumerable<(ReadOnlyMemory<byte> Bytes, Instant? Received)> lines,
        string here,
        Func<Task> breathe
    )
    {
        var record = new CareRecord([], []) { Writer = here };
        var reader = new EntryReader();
        var number = 0;
        foreach (var (line, received) in lines)
        {
            if (++number % IncomingFile.Piece == 0)
                await breathe();
            if (reader.Read(line, "record", number) is Read<Entry>.Usable usable)
                record.Add(usable.Value, received);
        }

        return record;
    }
}
