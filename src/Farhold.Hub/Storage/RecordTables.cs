using System.Collections.Immutable;
using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub.Storage;

/// <summary>What is the same in every database: looking casualties up, and reading lines. Callers hold the transaction.</summary>
internal static class RecordTables
{
    /// <summary>See <see cref="IRecordStore.FindAsync"/>.</summary>
    public static async Task<Match> FindAsync(DbConnection database, HubKey hub, Roots roots, Instant at)
    {
        if (await TombstoneAsync(database, [.. Pairs(roots).Select(r => hub.Tombstone(r.Kind, r.Value))]) is { } erased)
            return new(null, [], erased);
        var known = await KnownAsync(database, roots);
        var found = known.Values.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToImmutableArray();
        if (found.Length > 1 || found is [var one] && await BringsAnotherAsync(database, one, roots.Identities, known))
            return new(null, found);
        if (found is [var only])
        {
            await KeepAsync(database, roots, only);
            return new(only, []);
        }

        var id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        var opened = at.ToUnixTimeMilliseconds();
        await database.RunAsync("insert into casualty (id, opened) values (@c, @o)", ("@c", id), ("@o", opened));
        await database.RunAsync("insert into data_key (casualty, wrapped) values (@c, @w)", ("@c", id), ("@w", hub.NewKey(id).Wrapped));
        await KeepAsync(database, roots, id);
        return new(id, []);
    }

    /// <summary>Remembers that a casualty is known by these, as far as nobody else is.</summary>
    public static async Task KeepAsync(DbConnection database, Roots roots, string casualty)
    {
        var all = Pairs(roots).ToArray();
        if (all.Length == 0)
            return;
        await using var command = database.Command("", ("@c", casualty));
        command.CommandText =
            "insert into root (kind, value, casualty) values "
            + string.Join(", ", all.Select((r, i) => $"({Add(command, "@k", i, r.Kind)}, {Add(command, "@v", i, r.Value)}, @c)"))
            + " on conflict do nothing";
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>See <see cref="IRecordStore.SinceAsync"/>.</summary>
    public static async Task<ImmutableArray<StoredLine>?> SinceAsync(DbConnection database, HubKey hub, string casualty, long position)
    {
        await using (
            var command = database.Command(
                "select k.wrapped, l.position, l.device, l.number, l.hash, l.bytes from data_key k "
                    + "left join line l on l.casualty = k.casualty and l.position > @p where k.casualty = @c order by l.position",
                ("@c", casualty),
                ("@p", position)
            )
        )
        await using (var rows = await command.ExecuteReaderAsync())
        {
            var lines = ImmutableArray.CreateBuilder<StoredLine>();
            DataKey? key = null;
            while (await rows.ReadAsync())
            {
                key ??= Unwrapped(hub, casualty, rows.GetFieldValue<byte[]>(0));
                if (!await rows.IsDBNullAsync(1))
                    lines.Add(Unsealed(rows, key, casualty));
            }

            if (key is not null)
                return lines.ToImmutable();
        }

        if (await TombstoneAsync(database, [hub.Tombstone("casualty", casualty)]) is { } erased)
            throw new ErasedException(erased);
        return null;
    }

    /// <summary>The data key of a casualty.</summary>
    /// <exception cref="ErasedException">It is gone, with the casualty.</exception>
    /// <exception cref="KeyNotFoundException">There is no such casualty.</exception>
    public static async Task<DataKey> KeyAsync(DbConnection database, HubKey hub, string casualty)
    {
        if (await database.ScalarAsync("select wrapped from data_key where casualty = @c", ("@c", casualty)) is byte[] wrapped)
            return Unwrapped(hub, casualty, wrapped);
        if (await TombstoneAsync(database, [hub.Tombstone("casualty", casualty)]) is { } erased)
            throw new ErasedException(erased);
        throw new KeyNotFoundException(casualty);
    }

    /// <summary>The tombstone under any of these names.</summary>
    public static async Task<Tombstone?> TombstoneAsync(DbConnection database, IReadOnlyCollection<byte[]> names)
    {
        if (names.Count == 0)
            return null;
        await using var command = database.Command("");
        command.CommandText =
            "select at, by, reason from tombstone where root_hmac in ("
            + string.Join(", ", names.Select((n, i) => Add(command, "@n", i, n)))
            + ") order by at";
        await using var rows = await command.ExecuteReaderAsync();
        return await rows.ReadAsync()
            ? new(Instant.FromUnixTimeMilliseconds(rows.GetInt64(0)), rows.GetString(1), rows.GetString(2))
            : null;
    }

    /// <summary>What roots are called in the table.</summary>
    public static IEnumerable<(string Kind, string Value)> Pairs(Roots roots) =>
        roots.Lines.Select(l => ("line", l)).Concat(roots.Identities.Select(i => ("identity", Storable(i))));

    /// <summary>Those of the roots that are known, and whose they are.</summary>
    private static async Task<Dictionary<(string Kind, string Value), string>> KnownAsync(DbConnection database, Roots roots)
    {
        var known = new Dictionary<(string, string), string>();
        if (!Pairs(roots).Any())
            return known;
        await using var command = database.Command("");
        command.CommandText =
            "select kind, value, casualty from root where "
            + string.Join(
                " or ",
                Pairs(roots).Select((r, i) => $"kind = {Add(command, "@k", i, r.Kind)} and value = {Add(command, "@v", i, r.Value)}")
            );
        await using var rows = await command.ExecuteReaderAsync();
        while (await rows.ReadAsync())
            known.Add((rows.GetString(0), rows.GetString(1)), rows.GetString(2));
        return known;
    }

    /// <summary>It is known by identities, and not by all of these: then it may hold two people.</summary>
    private static async Task<bool> BringsAnotherAsync(
        DbConnection database,
        string casualty,
        ImmutableSortedSet<string> identities,
        Dictionary<(string Kind, string Value), string> known
    ) =>
        identities.Any(i => !known.ContainsKey(("identity", Storable(i))))
        && await database.ScalarAsync("select 1 from root where kind = 'identity' and casualty = @c", ("@c", casualty)) is not null;

    private static DataKey Unwrapped(HubKey hub, string casualty, byte[] wrapped) =>
        hub.Unwrap(casualty, wrapped) ?? throw new StoreDamagedException($"The data key of {casualty} is not as it was wrapped.");

    private static StoredLine Unsealed(DbDataReader row, DataKey key, string casualty)
    {
        var position = row.GetInt64(1);
        var bytes = key.Unseal(row.GetString(2), row.GetInt64(3), row.GetFieldValue<byte[]>(4), row.GetFieldValue<byte[]>(5));
        return bytes is null
            ? throw new StoreDamagedException(
                string.Create(CultureInfo.InvariantCulture, $"Line {position} of {casualty} is not as it was sealed.")
            )
            : new(position, bytes);
    }

    private static string Add(DbCommand command, string name, int number, object value)
    {
        var parameter = command.CreateParameter();
        parameter.ParameterName = string.Create(CultureInfo.InvariantCulture, $"{name}{number}");
        parameter.Value = value;
        command.Parameters.Add(parameter);
        return parameter.ParameterName;
    }

    /// <summary>PostgreSQL's text holds no zero; nobody gives one on purpose.</summary>
    private static string Storable(string text) => text.Replace('\0', '\uFFFD');
}
