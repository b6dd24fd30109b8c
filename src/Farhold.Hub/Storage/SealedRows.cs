using System.Collections.Immutable;
using System.Security.Cryptography;
using Farhold.Sync;
using Npgsql;

namespace Farhold.Hub.Storage;

/// <summary>Lines that came in together as columns, sealed: one statement for all of them.</summary>
internal sealed class SealedRows
{
    private readonly string[] devices;
    private readonly long[] numbers;
    private readonly byte[][] hashes;
    private readonly byte[][] boxes;

    private SealedRows(ImmutableArray<HeldLine> lines, DataKey key)
    {
        devices = [.. lines.Select(l => l.Id?.Device ?? "")];
        numbers = [.. lines.Select(l => (long)(l.Id?.Number ?? 0))];
        hashes = [.. lines.Select(Hash)];
        boxes = [.. lines.Select((l, i) => key.Seal(devices[i], numbers[i], hashes[i], l.Bytes.Span))];
    }

    /// <summary>Each line once.</summary>
    public static SealedRows Of(ImmutableArray<HeldLine> lines, DataKey key) => new([.. lines.DistinctBy(l => l.Hash)], key);

    /// <summary>Adds those that are not there, behind the last that is.</summary>
    /// <returns>How many are new.</returns>
    /// <exception cref="PostgresException">Unique violation: another writer was faster, and what it wrote is found next time.</exception>
    public async Task<int> InsertAsync(System.Data.Common.DbConnection database, Arrival arrival)
    {
        const string Insert = """
            insert into line (casualty, position, device, number, hash, bytes, arrived, via)
            select @c, (select coalesce(max(position), 0) from line where casualty = @c) + row_number() over (order by t.place),
                t.device, t.number, t.hash, t.bytes, @a, @v
            from unnest(@d, @n, @h, @b) with ordinality as t(device, number, hash, bytes, place)
            where not exists (
                select 1 from line l where l.casualty = @c and l.device = t.device and l.number = t.number and l.hash = t.hash)
            """;
        return await database.RunAsync(
            Insert,
            ("@c", arrival.Casualty),
            ("@a", arrival.At.ToUnixTimeMilliseconds()),
            ("@v", arrival.Via),
            ("@d", devices),
            ("@n", numbers),
            ("@h", hashes),
            ("@b", boxes)
        );
    }

    private static byte[] Hash(HeldLine line)
    {
        var hash = new byte[SHA256.HashSizeInBytes];
        line.Hash.CopyTo(hash);
        return hash;
    }
}
