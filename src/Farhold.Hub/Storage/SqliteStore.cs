using System.Collections.Immutable;
using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using System.Threading.Channels;
using Farhold.Sync;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace Farhold.Hub.Storage;

/// <summary>All records in one SQLite file, written by one task, lines sealed.</summary>
/// <remarks>
/// Write-ahead log with <c>synchronous=FULL</c>: a commit returns once it is on the disk. Whatever waits is committed together, so many
/// phones cost few flushes.
/// </remarks>
internal sealed class SqliteStore : IRecordStore
{
    public const string FileName = "records.sqlite";

    /// <summary>Design: enough to share one flush, few enough that nobody waits long.</summary>
    private const int MostTogether = 256;

    /// <summary>Casualties whose last position and key are remembered. Design: all that are written to on one day.</summary>
    private const int MostPlaces = 1_000;

    private const int Full = 13; // SQLITE_FULL, sqlite.org/rescode.html

    private readonly DbDataSource reading;
    private readonly SqliteConnection writing;
    private readonly SqliteCommand insert;
    private readonly HubKey hub;
    private readonly Dictionary<string, Place> places = [];
    private readonly Channel<Job> queue = Channel.CreateBounded<Job>(new BoundedChannelOptions(4096) { SingleReader = true });
    private readonly Task writer;

    /// <summary>The log may still hold what was erased.</summary>
    private bool logHoldsErased;

    private SqliteStore(DbDataSource rows, DbDataSource reading, SqliteConnection writing, HubKey hub)
    {
        (Rows, this.reading, this.writing, this.hub) = (rows, reading, writing, hub);
        insert = writing.CreateCommand();
        insert.CommandText =
            "insert into line (casualty, position, device, number, hash, bytes, arrived, via) values ($c, $p, $d, $n, $h, $b, $a, $v) "
            + "on conflict (casualty, device, number, hash) do nothing";
        foreach (var name in (string[])["$c", "$p", "$d", "$n", "$h", "$b", "$a", "$v"])
            insert.Parameters.Add(new SqliteParameter { ParameterName = name });
        writer = Task.Run(WriteAsync);
    }

    public DbDataSource Rows { get; }

    public bool IsShared => false;

    /// <param name="folder">Made where it is missing.</param>
    /// <param name="keyFile">The hub key; null: <see cref="HubKey.FileName"/> in the folder.</param>
    /// <exception cref="StoreUnusableException">It can't be written, its key is missing or wrong, or it is of a later version.</exception>
    public static SqliteStore Open(string folder, string? keyFile = null) => OpenAsync(folder, keyFile).GetAwaiter().GetResult();

    private static async Task<SqliteStore> OpenAsync(string folder, string? keyFile)
    {
        SqliteConnection? writing = null;
        try
        {
            Directory.CreateDirectory(folder);
            var file = Path.Combine(folder, FileName);
            writing = new(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
            await writing.OpenAsync();
            foreach (
                var pragma in (string[])
                    ["journal_mode = wal", "synchronous = full", "foreign_keys = on", "secure_delete = on", "busy_timeout = 100"]
            )
                await writing.ScalarAsync($"pragma {pragma}");
            var hub = await Migrations.ApplyAsync(writing, Dialect.Sqlite, keyFile ?? Path.Combine(folder, HubKey.FileName));
            await RewriteAsync(writing);
            return new(Source(file, SqliteOpenMode.ReadWrite), Source(file, SqliteOpenMode.ReadOnly), writing, hub);
        }
        catch (Exception e)
        {
            if (writing is not null)
                await writing.DisposeAsync();
            if (e is SqliteException or UnauthorizedAccessException or IOException and not StoreUnusableException)
                throw new StoreUnusableException($"Records can't be kept in {folder}: {e.Message}", e);
            throw;
        }
    }

    public Task<int> AppendAsync(Arrival arrival, CancellationToken cancel = default) => DoAsync(() => AppendAsync(arrival), cancel);

    public Task<Match> FindAsync(Roots roots, Instant at, CancellationToken cancel = default) =>
        DoAsync(() => RecordTables.FindAsync(writing, hub, roots, at), cancel);

    public Task<int> EraseAsync(string casualty, string by, string reason, Instant at, CancellationToken cancel = default) =>
        DoAsync(
            async () =>
            {
                var lines = await Erasure.EraseAsync(writing, hub, casualty, by, reason, at);
                places.Remove(casualty);
                logHoldsErased = true;
                return lines;
            },
            cancel
        );

    public async Task<ImmutableArray<StoredLine>?> SinceAsync(string casualty, long position, CancellationToken cancel = default)
    {
        await using var connection = await reading.OpenConnectionAsync(cancel);
        return await RecordTables.SinceAsync(connection, hub, casualty, position);
    }

    public async ValueTask DisposeAsync()
    {
        if (!queue.Writer.TryComplete())
            return;
        await writer;
        await insert.DisposeAsync();
        await writing.DisposeAsync();
        await reading.DisposeAsync();
        await Rows.DisposeAsync();
    }

    /// <summary>The value of a pragma of the connection that writes, for tests.</summary>
    internal Task<string> PragmaAsync(string pragma) =>
        DoAsync(async () => Convert.ToString(await writing.ScalarAsync($"pragma {pragma}"), CultureInfo.InvariantCulture) ?? "", default);

    private static DbDataSource Source(string file, SqliteOpenMode mode) =>
        SqliteFactory.Instance.CreateDataSource(
            new SqliteConnectionStringBuilder
            {
                DataSource = file,
                Mode = mode,
                ForeignKeys = true,
            }.ToString()
        );

    /// <summary>Writes the file anew where sqlite/3.sql has asked for it, also at the next start where this one was cut short.</summary>
    private static async Task RewriteAsync(SqliteConnection database)
    {
        if (await database.ScalarAsync("pragma user_version") is 0L)
            return;
        await database.RunAsync("vacuum");
        await database.ScalarAsync("pragma wal_checkpoint(truncate)");
        await database.RunAsync("pragma user_version = 0");
    }

    private async Task<T> DoAsync<T>(Func<Task<T>> act, CancellationToken cancel)
    {
        var done = new TaskCompletionSource<object?>(TaskCreationOptions.RunContinuationsAsynchronously);
        await queue.Writer.WriteAsync(new(async () => await act(), done), cancel);
        return (T)(await done.Task)!;
    }

    private async Task WriteAsync()
    {
        var batch = new List<Job>();
        while (await queue.Reader.WaitToReadAsync())
        {
            batch.Clear();
            while (batch.Count < MostTogether && queue.Reader.TryRead(out var job))
                batch.Add(job);
            await CommitAsync(batch);
        }
    }

    /// <summary>All in one transaction. Where it can't be committed, none is acknowledged: asking again is safe.</summary>
    private async Task CommitAsync(List<Job> batch)
    {
        var results = new object?[batch.Count];
        try
        {
            await writing.RunAsync("begin immediate");
            for (var i = 0; i < batch.Count; i++)
                results[i] = await AttemptAsync(batch[i]);
            await writing.RunAsync("commit");
            if (logHoldsErased)
                logHoldsErased = await writing.ScalarAsync("pragma wal_checkpoint(truncate)") is not 0L; // a reader may be in its way
        }
        catch (Exception e) // whatever it is, whoever waits has to know, and the next batch may succeed
        {
            places.Clear();
            await RollBackAsync();
            foreach (var job in batch)
                job.Done.SetException(e is SqliteException { SqliteErrorCode: Full } ? new StoreFullException(e) : e);
            return;
        }

        for (var i = 0; i < batch.Count; i++)
            if (results[i] is Exception refused)
                batch[i].Done.SetException(refused);
            else
                batch[i].Done.SetResult(results[i]);
    }

    private static async Task<object?> AttemptAsync(Job job)
    {
        try
        {
            return await job.Act();
        }
        catch (Exception e) when (e is KeyNotFoundException or ErasedException or StoreDamagedException)
        {
            return e; // found before anything of it was written
        }
    }

    private async Task RollBackAsync()
    {
        try
        {
            await writing.RunAsync("rollback");
        }
        catch (SqliteException)
        {
            // SQLite has rolled back by itself, as it does when the disk is full.
        }
    }

    private async Task<int> AppendAsync(Arrival arrival)
    {
        var place = await PlaceAsync(arrival.Casualty);
        var position = place.Position;
        foreach (var line in arrival.Lines)
            if (Insert(arrival, line, position + 1, place.Key))
                position++;
        places[arrival.Casualty] = place with { Position = position };
        if (position > place.Position)
            await RecordTables.KeepAsync(writing, Roots.Of(arrival.Lines), arrival.Casualty);
        return (int)(position - place.Position);
    }

    private async Task<Place> PlaceAsync(string casualty)
    {
        if (places.TryGetValue(casualty, out var known))
            return known;
        if (places.Count >= MostPlaces)
            places.Clear();
        var key = await RecordTables.KeyAsync(writing, hub, casualty);
        var last = await writing.ScalarAsync("select coalesce(max(position), 0) from line where casualty = @c", ("@c", casualty));
        return new((long)last!, key);
    }

    private bool Insert(Arrival arrival, HeldLine line, long position, DataKey key)
    {
        var hash = new byte[SHA256.HashSizeInBytes];
        line.Hash.CopyTo(hash);
        var (device, number) = (line.Id?.Device ?? "", line.Id?.Number ?? 0);
        object[] values =
        [
            arrival.Casualty,
            position,
            device,
            number,
            hash,
            key.Seal(device, number, hash, line.Bytes.Span),
            arrival.At.ToUnixTimeMilliseconds(),
            arrival.Via,
        ];
        for (var i = 0; i < values.Length; i++)
            insert.Parameters[i].Value = values[i];
        return insert.ExecuteNonQuery() > 0;
    }

    private sealed record Job(Func<Task<object?>> Act, TaskCompletionSource<object?> Done);

    private sealed record Place(long Position, DataKey Key);
}
