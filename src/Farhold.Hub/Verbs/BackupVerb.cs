using System.Collections.Immutable;
using System.Data.Common;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Farhold.Hub.Storage;
using Microsoft.Data.Sqlite;

namespace Farhold.Hub.Verbs;

/// <summary>Adds to a backup what has come in since the last one. It needs no key: everything stays sealed.</summary>
internal static class BackupVerb
{
    /// <exception cref="RefusedException">There are no records, or the backup is of others.</exception>
    public static async Task<int> RunAsync(string folder, string target, TimeProvider clock, TextWriter output)
    {
        await using var database = await OpenAsync(folder);
        Check(target);
        var before = Manifest.In(target);
        await database.RunAsync("begin"); // one moment of the records, whatever comes in meanwhile
        var form = await Migrations.CurrentAsync(database);
        if (form < Migrations.Sealed)
            throw new RefusedException("The records are of a form that is not sealed yet: start the hub with them once.");
        var key = Convert.ToHexStringLower((byte[])(await database.ScalarAsync("select print from hub_key"))!);
        if (before is not null && before.Key != key)
            throw new RefusedException($"{target} is a backup of records that are sealed with another hub key.");
        Directory.CreateDirectory(target);
        await using var alone = Alone(target);
        var now = clock.GetUtcNow();
        var stamp = now.ToString("yyyyMMdd'T'HHmmssfff'Z'", CultureInfo.InvariantCulture);
        var known = before?.Casualties ?? ImmutableSortedDictionary<string, BackedUp>.Empty;
        var erased = await ErasedAsync(database, known.Keys);
        var casualties = ImmutableSortedDictionary.CreateBuilder<string, BackedUp>(StringComparer.Ordinal);
        var added = 0L;
        foreach (var id in await database.AllAsync("select id from casualty order by id", row => row.GetString(0)))
        {
            var was = known.GetValueOrDefault(id, BackedUp.Nothing);
            casualties[id] = await AddAsync(database, target, id, was, stamp);
            added += casualties[id].Position - was.Position;
        }

        var tables = await WriteTablesAsync(database, target, $"tables-{stamp}.json");
        await WriteKeysAsync(database, target);
        var manifest = new Manifest(
            Manifest.Current,
            now.ToString("O", CultureInfo.InvariantCulture),
            form,
            key,
            tables,
            casualties.ToImmutable()
        );
        await BackupFiles.WriteAsync(target, Manifest.FileName, 1, to => JsonSerializer.SerializeAsync(to, manifest, Manifest.Json));
        Clear(target, manifest, erased);
        await output.WriteLineAsync(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Backed up: {casualties.Count} casualties, {casualties.Values.Sum(c => c.Position)} lines, {added} of them new; "
            ) + string.Create(CultureInfo.InvariantCulture, $"{tables.Count} rows of other tables; {erased.Count} erased since.")
        );
        return 0;
    }

    private static async Task<SqliteConnection> OpenAsync(string folder)
    {
        var file = Path.Combine(folder, SqliteStore.FileName);
        if (!File.Exists(file))
            throw new RefusedException($"There are no records in {folder}.");
        var database = new SqliteConnection(
            new SqliteConnectionStringBuilder
            {
                DataSource = file,
                Mode = SqliteOpenMode.ReadOnly,
                Pooling = false,
            }.ToString()
        );
        await database.OpenAsync();
        return database;
    }

    /// <summary>Two that add to one backup at once would each write a manifest without the other's files.</summary>
    private static FileStream Alone(string target)
    {
        try
        {
            var file = Path.Combine(target, "running.part");
            return new(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (IOException e)
        {
            throw new RefusedException($"Another backup to {target} is running, or it can't be written: {e.Message}", e);
        }
    }

    /// <summary>A folder that holds other things is not written to.</summary>
    private static void Check(string target)
    {
        if (!Directory.Exists(target))
            return;
        foreach (var entry in Directory.EnumerateFileSystemEntries(target).Select(e => Path.GetFileName(e)))
            if (
                entry is not (Manifest.FileName or Manifest.Keys or Manifest.Lines)
                && !entry.StartsWith("tables-", StringComparison.Ordinal)
                && !entry.EndsWith(".part", StringComparison.Ordinal)
            )
                throw new RefusedException($"{target} holds {entry}, which belongs to no backup: give a folder of its own.");
    }

    /// <summary>Those of a backup that are not in the records any more.</summary>
    private static async Task<List<string>> ErasedAsync(DbConnection database, IEnumerable<string> known)
    {
        var gone = new List<string>();
        foreach (var id in known)
            if (await database.ScalarAsync("select 1 from casualty where id = @c", ("@c", id)) is null)
            {
                if (await database.ScalarAsync("select 1 from tombstone where casualty = @c", ("@c", id)) is null)
                    throw new RefusedException(
                        $"The backup holds {id}, which these records neither hold nor have erased: it is of others."
                    );
                gone.Add(id);
            }

        return gone;
    }

    private static async Task<BackedUp> AddAsync(DbConnection database, string target, string id, BackedUp was, string stamp)
    {
        var (head, last) = (new byte[32], 0L);
        foreach (
            var (position, hash) in await database.AllAsync(
                "select position, hash from line where casualty = @c order by position",
                row => (row.GetInt64(0), row.GetFieldValue<byte[]>(1)),
                ("@c", id)
            )
        )
        {
            (head, last) = (BackedUp.Next(head, hash), position);
            if (last == was.Position && Convert.ToHexStringLower(head) != was.Head)
                break;
        }

        if (last < was.Position || last == was.Position && Convert.ToHexStringLower(head) != was.Head)
            throw new RefusedException(
                string.Create(CultureInfo.InvariantCulture, $"The backup holds other lines of {id} up to position {was.Position}: ")
                    + "these are not the records it is of, or they were set back. Take a new folder."
            );
        if (last == was.Position)
            return was;
        var name = string.Create(CultureInfo.InvariantCulture, $"{Manifest.Lines}/{id}/{stamp}-{was.Position + 1}-{last}.jsonl.gz");
        var file = await BackupFiles.WriteAsync(
            target,
            name,
            last - was.Position,
            to => BackupLine.WriteAsync(to, LinesAsync(database, id, was.Position))
        );
        return new(last, Convert.ToHexStringLower(head), was.Files.Add(file));
    }

    private static async IAsyncEnumerable<BackupLine> LinesAsync(DbConnection database, string id, long since)
    {
        await using var command = database.Command(
            $"select {BackupLine.Columns} from line where casualty = @c and position > @p order by position",
            ("@c", id),
            ("@p", since)
        );
        await using var rows = await command.ExecuteReaderAsync();
        while (await rows.ReadAsync())
            yield return BackupLine.Of(rows);
    }

    private static async Task<BackupFile> WriteTablesAsync(DbConnection database, string target, string name)
    {
        var all = new JsonObject();
        var count = 0;
        foreach (var table in await TableCopy.TablesAsync(database))
        {
            var rows = await TableCopy.ReadAsync(database, table);
            count += rows.Count;
            all[table] = rows;
        }

        return await BackupFiles.WriteAsync(target, name, count, to => JsonSerializer.SerializeAsync(to, all, Manifest.Json));
    }

    /// <summary>Written anew each time, and kept by itself: without a key in it, what older files hold of a casualty is gone.</summary>
    private static async Task WriteKeysAsync(DbConnection database, string target)
    {
        var keys = await database.AllAsync(
            "select casualty, wrapped from data_key",
            row => KeyValuePair.Create(row.GetString(0), row.GetFieldValue<byte[]>(1))
        );
        var all = keys.ToImmutableSortedDictionary(StringComparer.Ordinal);
        await BackupFiles.WriteAsync(target, Manifest.Keys, all.Count, to => JsonSerializer.SerializeAsync(to, all, Manifest.Json));
    }

    private static void Clear(string target, Manifest manifest, List<string> erased)
    {
        foreach (var old in Directory.EnumerateFiles(target, "tables-*").Where(f => Path.GetFileName(f) != manifest.Tables.Name))
            File.Delete(old);
        foreach (var id in erased.Select(id => Path.Combine(target, Manifest.Lines, id)).Where(Directory.Exists))
            Directory.Delete(id, recursive: true);
    }
}
