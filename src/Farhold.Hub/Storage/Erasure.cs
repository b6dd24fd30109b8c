using System.Collections.Immutable;
using System.Data.Common;
using NodaTime;

namespace Farhold.Hub.Storage;

/// <summary>Takes a casualty away, in whatever database. Callers hold the transaction, and nobody else writes to this casualty.</summary>
internal static class Erasure
{
    /// <summary>Every table that refers to a casualty. A test holds this to the tables that there are.</summary>
    public static readonly ImmutableArray<string> Tables =
    [
        "data_key",
        "line",
        "root",
        "seal",
        "share",
        "said",
        "heard",
        "allowed",
        "belongs",
    ];

    /// <summary>See <see cref="IRecordStore.EraseAsync"/>.</summary>
    public static async Task<int> EraseAsync(DbConnection database, HubKey hub, string casualty, string by, string reason, Instant at)
    {
        if (await database.ScalarAsync("select 1 from casualty where id = @c", ("@c", casualty)) is null)
            return await RecordTables.TombstoneAsync(database, [hub.Tombstone("casualty", casualty)]) is null
                ? throw new KeyNotFoundException(casualty)
                : 0;
        var names = await database.AllAsync(
            "select kind, value from root where casualty = @c",
            row => (row.GetString(0), row.GetString(1)),
            ("@c", casualty)
        );
        foreach (var (kind, value) in names.Append(("casualty", casualty)))
            await database.RunAsync(
                "insert into tombstone (root_hmac, casualty, at, by, reason) values (@n, @c, @a, @b, @r) on conflict do nothing",
                ("@n", hub.Tombstone(kind, value)),
                ("@c", casualty),
                ("@a", at.ToUnixTimeMilliseconds()),
                ("@b", by),
                ("@r", reason)
            );
        var lines = 0;
        foreach (var table in Tables)
        {
            var gone = await database.RunAsync($"delete from {table} where casualty = @c", ("@c", casualty));
            lines += table == "line" ? gone : 0;
        }

        await database.RunAsync("delete from casualty where id = @c", ("@c", casualty));
        return lines;
    }
}
