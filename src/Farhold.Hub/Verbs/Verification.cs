using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using Farhold.Hub.Storage;
using Farhold.Sync;

namespace Farhold.Hub.Verbs;

/// <summary>What was found of a database. One run each.</summary>
/// <param name="database">Open, in a transaction that only reads.</param>
internal sealed class Verification(DbConnection database)
{
    /// <summary>Each with its place.</summary>
    public List<string> Faults { get; } = [];

    public int Casualties { get; private set; }

    public long Lines { get; private set; }

    public int Seals { get; private set; }

    public long Tombstones { get; private set; }

    /// <summary>Entries whose link is that of another line: so they came, nothing of them was changed here.</summary>
    public int Broken { get; private set; }

    public async Task RunAsync(HubKey hub)
    {
        var pages = await database.AllAsync("pragma integrity_check", row => row.GetString(0));
        Faults.AddRange(pages.Where(p => p != "ok").Select(p => $"The file: {p}"));
        var astray = await database.AllAsync("pragma foreign_key_check", row => row.GetString(0));
        Faults.AddRange(astray.GroupBy(t => t).Select(t => $"{t.Key}: {t.Count()} rows refer to what is not there."));
        Tombstones = (long)(await database.ScalarAsync("select count(*) from tombstone"))!;
        foreach (var id in await database.AllAsync("select id from casualty order by id", row => row.GetString(0)))
        {
            Casualties++;
            if (await database.ScalarAsync("select wrapped from data_key where casualty = @c", ("@c", id)) is not byte[] wrapped)
                Faults.Add($"{id} has no data key.");
            else if (hub.Unwrap(id, wrapped) is not { } key)
                Faults.Add($"The data key of {id} is not as it was wrapped.");
            else
                await CasualtyAsync(id, key);
        }
    }

    private async Task CasualtyAsync(string id, DataKey key)
    {
        var (held, last) = (new LineSet(), 0L);
        var rows = await database.AllAsync(
            "select position, device, number, hash, bytes from line where casualty = @c order by position",
            row => (Position: row.GetInt64(0), Device: row.GetString(1), Number: row.GetInt64(2), Hash: Blob(row, 3), Box: Blob(row, 4)),
            ("@c", id)
        );
        foreach (var row in rows)
        {
            Lines++;
            if (row.Position != last + 1)
                Faults.Add($"{Place(id, row.Position)} does not follow on {Number(last)}.");
            last = row.Position;
            if (key.Unseal(row.Device, row.Number, row.Hash, row.Box) is not { } bytes)
                Faults.Add($"{Place(id, row.Position)} is not as it was sealed.");
            else if (HeldLine.Of(bytes) is not { } line || !SHA256.HashData(bytes).AsSpan().SequenceEqual(row.Hash))
                Faults.Add($"{Place(id, row.Position)} has another hash.");
            else if ((line.Id?.Device ?? "") != row.Device || (line.Id?.Number ?? 0) != row.Number)
                Faults.Add($"{Place(id, row.Position)} stands under another id than its own.");
            else
            {
                if (held.Add(bytes) is not Addition.New)
                    Faults.Add($"{Place(id, row.Position)} is there twice, or more than a record may have.");
                if (row.Number == 1)
                    await RootAsync(id, row.Position, line.Hash.ToString());
            }
        }

        await SealsAsync(id, held);
        Broken += Breaks(held);
    }

    private async Task RootAsync(string id, long position, string hash)
    {
        if (await database.ScalarAsync("select 1 from root where kind = 'line' and value = @v", ("@v", hash)) is null)
            Faults.Add($"{Place(id, position)} is a first line, and no casualty is known by it.");
    }

    /// <summary>A seal vouches for lines that were here when it was taken: all of them still have to be, and the very same.</summary>
    private async Task SealsAsync(string id, LineSet held)
    {
        var seals = await database.AllAsync(
            "select thumb, device, number, head from seal where casualty = @c order by thumb",
            row => (Thumb: row.GetString(0), Device: row.GetString(1), Number: row.GetInt64(2), Head: Blob(row, 3)),
            ("@c", id)
        );
        var vector = held.Vector;
        foreach (var seal in seals)
        {
            Seals++;
            var place = $"The seal of {seal.Thumb} over {id}";
            if (Head.Read(seal.Head, "head") is not Read<Head>.Usable(var head))
                Faults.Add($"{place} has a head that can't be read.");
            else if (vector[seal.Device].Length < seal.Number)
                Faults.Add($"{place} is over {seal.Device}-1 to {Number(seal.Number)}; {Number(vector[seal.Device].Length)} are here.");
            else if (
                head.Have[seal.Device].Length == seal.Number
                && held.Confirmed(seal.Device, head.Have) < seal.Number
                && !HasVariants(held, seal.Device)
            )
                Faults.Add($"{place} is over other lines of {seal.Device} than those that are here.");
        }
    }

    /// <summary>A second line under a number may have come in since: then the running hash is another by right.</summary>
    private static bool HasVariants(LineSet held, string device) =>
        held.Lines.Where(l => l.Id?.Device == device).GroupBy(l => l.Id!.Value.Number).Any(n => n.Count() > 1);

    private static int Breaks(LineSet held)
    {
        using var file = new MemoryStream();
        foreach (var line in held.Lines)
        {
            file.Write(line.Bytes.Span);
            file.WriteByte((byte)'\n');
        }

        return RecordReader.Read(file.ToArray(), "record") is Read<RecordFile>.Usable(var read) ? CareRecord.Of(read).Breaks.Length : 0;
    }

    private static byte[] Blob(DbDataReader row, int column) => row.GetFieldValue<byte[]>(column);

    private static string Place(string id, long position) => $"Line {Number(position)} of {id}";

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
