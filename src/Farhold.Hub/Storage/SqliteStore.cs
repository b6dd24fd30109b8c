using System.Collections.Immutable;
using System.Data.Common;
using System.Security.Cryptography;
using System.Threading.Channels;
using Farhold.Sync;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace Farhold.Hub.Storage;

/// <summary>All records in one SQLite file, written by one task.</summary>
/// <remarks>
/// Write-ahead log with <c>synchronous=FULL</c>: a commit returns once it is on the disk. Whatever waits is committed together, so many
/// phones cost few flushes.
/// </remarks>
internal sealed class SqliteStore : IRecordStore
{
    public const string FileName = "records.sqlite";

    /// <summary>Design: enough to share one flush, few enough that nobody waits long.</summary>
    private const int MostTogether = 256;

    private const int Full = 13; // SQLITE_FULL, sqlite.org/rescode.html

    private readonly string reading;
    private readonly SqliteConnection writing;
    private readonly SqliteCommand insert;
    private readonly Dictionary<string, long> positions = [];
    private readonly Channel<Job> queue = Channel.CreateBounded<Job>(new BoundedChannelOptions(4096) { SingleReader = true });
    private readonly Task writer;

    private SqliteStore(string file)
    {
        reading = new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly }.ToString();
        Rows = SqliteFactory.Instance.CreateDataSource(
            new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true }.ToString()
        );
        writing = new(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
        writing.Open();
        Run("pragma journal_mode = wal");
        Run("pragma synchronous = full");
        Run("pragma foreign_keys = on");
        SqliteMigrations.Apply(writing);
        insert = writing.CreateCommand();
        insert.CommandText =
            "insert into line (casualty, position, device, number, hash, bytes, arrived, via) values ($c, $p, $d, $n, $h, $b, $a, $v) "
            + "on conflict (casualty, device, number, hash) do nothing";
        foreach (var name in (string[])["$c", "$p", "$d", "$n", "$h", "$b", "$a", "$v"])
            insert.Parameters.Add(new SqliteParameter { ParameterName = name });
        writer = Task.Run(WriteAsync);
    }

    public DbDataSource Rows { get; }

    /// <param name="folder">Made where it is missing.</param>
    /// <exception cref="StoreUnusableException">It can't be written, or is of a later version.</exception>
    public static SqliteStore Open(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            return new(Path.Combine(folder, FileName));
        }
        catch (Exception e) when (e is SqliteException or UnauthorizedAccessException or IOException and not StoreUnusableException)
        {
            throw new StoreUnusableException($"Records can't be kept in {folder}: {e.Message}", e);
        }
    }

    public Task<int> AppendAsync(Arrival arrival, CancellationToken cancel = default) => DoAsync(() => Append(arrival), cancel);

    public Task<Match> FindAsync(Roots roots, Instant at, CancellationToken cancel = default) => DoAsync(() => Find(roots, at), cancel);

    public async Task<ImmutableArray<StoredLine>?> SinceAsync(string casualty, long position, CancellationToken cancel = default)
    {
        await using var connection = new SqliteConnection(reading);
        await connection.OpenAsync(cancel);
        using var known = Command(connection, "select 1 from casualty where id = $c", ("$c", casualty));
        if (known.ExecuteScalar() is null)
            return null;
        var lines = ImmutableArray.CreateBuilder<StoredLine>();
        using var select = Command(
            connection,
            "select position, bytes from line where casualty = $c and position > $p order by position",
            ("$c", casualty),
            ("$p", position)
        );
        using var rows = select.ExecuteReader();
        while (rows.Read())
            lines.Add(new(rows.GetInt64(0), rows.GetFieldValue<byte[]>(1)));
        return lines.ToImmutable();
    }

    public async ValueTask DisposeAsync()
    {
        if (!queue.Writer.TryComplete())
            return;
        await writer;
        await insert.DisposeAsync();
        await writing.DisposeAsync();
        await Rows.DisposeAsync();
    }

    /// <summary>The value of a pragma of the connection that writes, for tests.</summary>
    internal Task<string> PragmaAsync(string pragma) => DoAsync(() => Scalar($"pragma {pragma}")?.ToString() ?? "", default);

    private async Task<T> DoAsync<T>(Func<T> act, CancellationToken cancel)
    {
        var done = new TaskCompletionSource<object?>(TaskCreationOptions.RunContinuationsAsynchronously);
        await queue.Writer.WriteAsync(new(() => act(), done), cancel);
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
            Commit(batch);
        }
    }

    /// <summary>All in one transaction. Where it can't be committed, none is acknowledged: asking again is safe.</summary>
    private void Commit(List<Job> batch)
    {
        var results = new object?[batch.Count];
        try
        {
            Run("begin immediate");
            for (var i = 0; i < batch.Count; i++)
                results[i] = Attempt(batch[i]);
            Run("commit");
        }
        catch (Exception e) // whatever it is, whoever waits has to know, and the next batch may succeed
        {
            positions.Clear();
            RollBack();
            foreach (var job in batch)
                job.Done.SetException(e is SqliteException { SqliteErrorCode: Full } ? new StoreFullException(e) : e);
            return;
        }

        for (var i = 0; i < batch.Count; i++)
            if (results[i] is KeyNotFoundException unknown)
                batch[i].Done.SetException(unknown);
            else
                batch[i].Done.SetResult(results[i]);
    }

    private static object? Attempt(Job job)
    {
        try
        {
            return job.Act();
        }
        catch (KeyNotFoundException e)
        {
            return e; // found before anything of it was written
        }
    }

    private void RollBack()
    {
        try
        {
            Run("rollback");
        }
        catch (SqliteException)
        {
            // SQLite has rolled back by itself, as it does when the disk is full.
        }
    }

    private int Append(Arrival arrival)
    {
        if (!positions.TryGetValue(arrival.Casualty, out var position))
        {
            if (Scalar("select 1 from casualty where id = $c", ("$c", arrival.Casualty)) is null)
                throw new KeyNotFoundException(arrival.Casualty);
            position = (long)Scalar("select coalesce(max(position), 0) from line where casualty = $c", ("$c", arrival.Casualty))!;
        }

        var before = position;
        foreach (var line in arrival.Lines)
            if (Insert(arrival, line, position + 1))
                position++;
        positions[arrival.Casualty] = position;
        if (position > before)
            Keep(Roots.Of(arrival.Lines), arrival.Casualty);
        return (int)(position - before);
    }

    private bool Insert(Arrival arrival, HeldLine line, long position)
    {
        var hash = new byte[SHA256.HashSizeInBytes];
        line.Hash.CopyTo(hash);
        object[] values =
        [
            arrival.Casualty,
            position,
            line.Id?.Device ?? "",
            line.Id?.Number ?? 0,
            hash,
            line.Bytes.ToArray(),
            arrival.At.ToUnixTimeMilliseconds(),
            arrival.Via,
        ];
        for (var i = 0; i < values.Length; i++)
            insert.Parameters[i].Value = values[i];
        return insert.ExecuteNonQuery() > 0;
    }

    private Match Find(Roots roots, Instant at)
    {
        var byIdentity = roots.Identities.Select(i => CasualtyOf("identity", i)).OfType<string>().ToHashSet();
        var found = roots
            .Lines.Select(l => CasualtyOf("line", l))
            .OfType<string>()
            .Concat(byIdentity)
            .Distinct()
            .Order()
            .ToImmutableArray();
        if (found.Length > 1 || found is [var one] && !roots.Identities.IsEmpty && BringsAnother(one, roots.Identities))
            return new(null, found);
        var id = found is [var only] ? only : Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        if (found.IsEmpty)
            Run("insert into casualty (id, opened) values ($c, $o)", ("$c", id), ("$o", at.ToUnixTimeMilliseconds()));
        Keep(roots, id);
        return new(id, []);
    }

    private string? CasualtyOf(string kind, string value) =>
        (string?)Scalar("select casualty from root where kind = $k and value = $v", ("$k", kind), ("$v", value));

    /// <summary>It is known by identities, and not by all of these: then it may hold two people.</summary>
    private bool BringsAnother(string casualty, ImmutableSortedSet<string> identities) =>
        Scalar("select 1 from root where kind = 'identity' and casualty = $c", ("$c", casualty)) is not null
        && identities.Any(i => CasualtyOf("identity", i) != casualty);

    private void Keep(Roots roots, string casualty)
    {
        foreach (
            var (kind, values) in (ReadOnlySpan<(string, ImmutableSortedSet<string>)>)
                [("line", roots.Lines), ("identity", roots.Identities)]
        )
        foreach (var value in values)
            Run(
                "insert into root (kind, value, casualty) values ($k, $v, $c) on conflict do nothing",
                ("$k", kind),
                ("$v", value),
                ("$c", casualty)
            );
    }

    private void Run(string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(writing, sql, values);
        command.ExecuteNonQuery();
    }

    private object? Scalar(string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(writing, sql, values);
        return command.ExecuteScalar();
    }

    private static SqliteCommand Command(SqliteConnection on, string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        var command = on.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in values)
            command.Parameters.AddWithValue(name, value);
        return command;
    }

    private sealed record Job(Func<object?> Act, TaskCompletionSource<object?> Done);
}
