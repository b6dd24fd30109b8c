using System.Collections.Immutable;
using System.Text;
using Farhold.App.Store;
using NodaTime;

namespace Farhold.App.HandOver;

/// <summary>A record, read to see whose it is and what it says, and added to nothing.</summary>
public sealed record ComingRecord(IncomingFile File, CareRecord Record)
{
    /// <param name="here">This phone.</param>
    /// <param name="now">When it came in.</param>
    public static ComingRecord Of(IncomingFile file, string here, Instant now) =>
        new(file, Read(file.Lines.Select(l => l.Bytes), here, now));

    public static CareRecord Of(ImmutableArray<StoredLine> lines, string here) =>
        Read(lines.Select(l => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(l.Text)), here, null);

    /// <summary>Whether it is surely of the casualty whose record is held.</summary>
    public bool IsOf(CareRecord held, ImmutableArray<StoredLine> lines) =>
        RecordIdentity.Of(held.Entries).IsOf(RecordIdentity.Of(Record.Entries), File.Shares(lines));

    private static CareRecord Read(IEnumerable<ReadOnlyMemory<byte>> lines, string here, Instant? received)
    {
        var record = new CareRecord([], []) { Writer = here };
        var reader = new EntryReader();
        var number = 0;
        foreach (var line in lines)
        {
            number++;
            if (reader.Read(line, "record", number) is Read<Entry>.Usable usable)
                record.Add(usable.Value, received);
        }

        return record;
    }
}
