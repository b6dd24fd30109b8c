using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Data.Common;
using System.Security.Cryptography;
using Farhold.Sync;
using NodaTime;
using Npgsql;

namespace Farhold.Hub.Storage;

/// <summary>All records in a PostgreSQL database that several hubs may share, lines sealed.</summary>
/// <remarks>
/// Nothing is remembered of positions: the primary key (casualty, position) and the unique key (casualty, device, number, hash) say who
/// was first. Whoever was second looks again and goes on behind (docs/decisions/two-stores.md).
/// </remarks>
internal sealed class PostgresStore : IRecordStore
{
    /// <summary>Held while roots change, so that two hubs never open one casualty twice. Drawn at random.</summary>
    private const string LockRoots = "select pg_advisory_xact_lock(7301664912005)";

    /// <summary>Casualties whose key is remembered. Design: all that are written to on one day.</summary>
    private const int MostKeys = 1_000;

    /// <summary>Design: with pauses of up to 20 ms far more writers than there are hubs can have been first.</summary>
    private const int MostTries = 200;

    private readonly NpgsqlDataSource source;
    private readonly HubKey hub;
    private readonly ConcurrentDictionary<string, DataKey> keys = new(StringComparer.Ordinal);

    private PostgresStore(NpgsqlDataSource source, HubKey hub) => (this.source, this.hub) = (source, hub);

    public DbDataSource Rows => source;

    public bool IsShared => true;

    /// <param name="connection">As Npgsql reads it. It may hold a password, so it never stands in a message.</param>
    /// <param name="keyFile">The hub key, the same for every hub on this database.</param>
    /// <exception cref="StoreUnusableException">
    /// It can't be reached, its key is missing or wrong, or it is of a later version.
    /// </exception>
    public static PostgresStore Open(string connection, string keyFile) => OpenAsync(connection, keyFile).GetAwaiter().GetResult();

    public async Task<int> AppendAsync(Arrival arrival, CancellationToken cancel = default)
    {
        var key = await ReachAsync(() => KeyAsync(arrival.Casualty, cancel));
        var rows = SealedRows.Of(arrival.Lines, key);
        var roots = Roots.Of(arrival.Lines);
        for (var tries = 1; ; tries++)
            try
            {
                return await ReachAsync(() => AppendAsync(arrival, rows, roots, cancel));
            }
            catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.UniqueViolation && tries < MostTries)
            {
                await Task.Delay(RandomNumberGenerator.GetInt32(1 + Math.Min(tries, 20)), cancel); // another writer was first
            }
            catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.ForeignKeyViolation)
            {
                keys.TryRemove(arrival.Casualty, out _); // it was erased meanwhile
                await ReachAsync(() => KeyAsync(arrival.Casualty, cancel));
                throw;
            }
    }

    public Task<ImmutableArray<StoredLine>?> SinceAsync(string casualty, long position, CancellationToken cancel = default) =>
        ReachAsync(async () =>
        {
            await using var connection = await source.OpenConnectionAsync(cancel);
            return await RecordTables.SinceAsync(connection, hub, casualty, position);
        });

    public Task<Match> FindAsync(Roots roots, Instant at, CancellationToken cancel = default) =>
        ReachAsync(() =>
            TogetherAsync(
                async connection =>
                {
                    await connection.RunAsync(LockRoots);
                    return await RecordTables.FindAsync(connection, hub, roots, at);
                },
                cancel
            )
        );

    public Task<int> EraseAsync(string casualty, string by, string reason, Instant at, CancellationToken cancel = default) =>
        ReachAsync(() =>
            TogetherAsync(
                async connection =>
                {
                    await connection.RunAsync(LockRoots);
                    // Waits for whoever appends: an appended line holds its casualty's row until it is committed.
                    await connection.RunAsync("select 1 from casualty where id = @c for update", ("@c", casualty));
                    var lines = await Erasure.EraseAsync(connection, hub, casualty, by, reason, at);
                    keys.TryRemove(casualty, out _);
                    return lines;
                },
                cancel
            )
        );

    public ValueTask DisposeAsync() => source.DisposeAsync();

    private static async Task<PostgresStore> OpenAsync(string connection, string keyFile)
    {
        NpgsqlDataSource? source = null;
        try
        {
            // Whatever the server's own settings are: what is acknowledged is on its disk.
            var settings = new NpgsqlConnectionStringBuilder(connection) { IncludeErrorDetail = false };
            settings.Options = $"{settings.Options} -c synchronous_commit=on".Trim();
            source = new NpgsqlDataSourceBuilder(settings.ConnectionString).Build();
            await using var first = await source.OpenConnectionAsync();
            return new(source, await Migrations.ApplyAsync(first, Dialect.Postgres, keyFile));
        }
        catch (Exception e)
        {
            if (source is not null)
                await source.DisposeAsync();
            if (e is ArgumentException)
                throw new StoreUnusableException("The settings of the database can't be read: they look like Host=…;Database=…", null);
            if (e is NpgsqlException)
                throw new StoreUnusableException($"Records can't be kept in PostgreSQL: {e.Message}", e);
            throw;
        }
    }

    /// <summary>Says of a failure of the database what it means here.</summary>
    private static async Task<T> ReachAsync<T>(Func<Task<T>> act)
    {
        try
        {
            return await act();
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.DiskFull)
        {
            throw new StoreFullException(e);
        }
        catch (NpgsqlException e) when (e is not PostgresException || Outage.IsOne(e))
        {
            throw new StoreAwayException(e);
        }
    }

    private async Task<int> AppendAsync(Arrival arrival, SealedRows rows, Roots roots, CancellationToken cancel)
    {
        if (roots.Lines.IsEmpty && roots.Identities.IsEmpty)
        {
            await using var one = await source.OpenConnectionAsync(cancel);
            return await rows.InsertAsync(one, arrival);
        }

        return await TogetherAsync(
            async connection =>
            {
                await connection.RunAsync(LockRoots);
                var fresh = await rows.InsertAsync(connection, arrival);
                if (fresh > 0)
                    await RecordTables.KeepAsync(connection, roots, arrival.Casualty);
                return fresh;
            },
            cancel
        );
    }

    private async Task<DataKey> KeyAsync(string casualty, CancellationToken cancel)
    {
        if (keys.TryGetValue(casualty, out var known))
            return known;
        await using var connection = await source.OpenConnectionAsync(cancel);
        var key = await RecordTables.KeyAsync(connection, hub, casualty);
        if (keys.Count >= MostKeys)
            keys.Clear();
        return keys[casualty] = key;
    }

    private async Task<T> TogetherAsync<T>(Func<DbConnection, Task<T>> act, CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var transaction = await connection.BeginTransactionAsync(cancel);
        var result = await act(connection);
        await transaction.CommitAsync(CancellationToken.None);
        return result;
    }
}
