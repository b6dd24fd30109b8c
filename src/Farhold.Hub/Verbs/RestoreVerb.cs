using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using Farhold.Hub.Storage;
using Microsoft.Data.Sqlite;

namespace Farhold.Hub.Verbs;

/// <summary>Makes records anew from a backup. Each line is unsealed on its way in, and everything is verified afterwards.</summary>
internal static class RestoreVerb
{
    /// <exception cref="RefusedException">The backup is not whole, the folder not empty, or the key not the one.</exception>
    public static async Task<int> RunAsync(string target, string folder, string keyFile, TextWriter output)
    {
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any(e => Path.GetFileName(e) != HubKey.FileName))
            throw new RefusedException($"{folder} is not empty: records are only restored where nothing but the hub key is.");
        var manifest =
            Manifest.In(target) ?? throw new RefusedException($"There is no backup in {target}: {Manifest.FileName} is missing.");
        if (manifest.Form < Migrations.Sealed || manifest.Form > Migrations.Latest(Dialect.Sqlite))
            throw new RefusedException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The backup is of form {manifest.Form}, which this version of the hub can't restore."
                )
            );
        await CheckAsync(target, manifest);
        var keys = KeysIn(target);
        var hub = HubKey.Read(keyFile);
        if (Convert.ToHexStringLower(hub.Print) != manifest.Key)
            throw new RefusedException($"The key in {keyFile} is not the one that the backup is sealed with.");
        var tables =
            JsonNode.Parse(await File.ReadAllBytesAsync(Manifest.PathOf(target, manifest.Tables))) as JsonObject
            ?? throw new RefusedException($"{manifest.Tables.Name} holds no tables.");
        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, SqliteStore.FileName);
        var done = false;
        try
        {
            await using var database = new SqliteConnection(
                new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString()
            );
            await database.OpenAsync();
            await database.ScalarAsync("pragma journal_mode = wal");
            await database.RunAsync("pragma foreign_keys = on");
            await Migrations.ApplyAsync(database, Dialect.Sqlite, keyFile, manifest.Form);
            await database.RunAsync("begin immediate");
            await FillAsync(database, target, manifest, tables, new(hub, keys), output);
            await database.RunAsync("commit");
            await database.ScalarAsync("pragma wal_checkpoint(truncate)");
            done = true;
        }
        catch (SqliteException e)
        {
            throw new RefusedException($"The backup does not fit together: {e.Message}", e);
        }
        finally
        {
            if (!done)
                foreach (var ending in (string[])["", "-wal", "-shm"])
                    File.Delete(file + ending);
        }

        return await VerifyVerb.RunAsync(folder, keyFile, output);
    }

    private static async Task CheckAsync(string target, Manifest manifest)
    {
        var faults = new List<string>();
        foreach (var file in manifest.Casualties.Values.SelectMany(c => c.Files).Append(manifest.Tables))
            if (await BackupFiles.FaultAsync(target, file) is { } fault)
                faults.Add(fault);
        if (faults.Count > 0)
            throw new RefusedException("The backup is not whole; nothing was restored.\n" + string.Join('\n', faults));
    }

    private static Dictionary<string, byte[]> KeysIn(string target)
    {
        var file = Path.Combine(target, Manifest.Keys);
        if (!File.Exists(file))
            throw new RefusedException($"{file} is missing: without it nobody can read the lines.");
        try
        {
            return JsonSerializer.Deserialize<Dictionary<string, byte[]>>(File.ReadAllBytes(file), Manifest.Json) ?? [];
        }
        catch (JsonException e)
        {
            throw new RefusedException($"{file} can't be read: {e.Message}", e);
        }
    }

    private static async Task FillAsync(
        DbConnection database,
        string target,
        Manifest manifest,
        JsonObject tables,
        Keys keys,
        TextWriter output
    )
    {
        await database.RunAsync("pragma defer_foreign_keys = on");
        var erased = Column(tables, "tombstone", "casualty").ToHashSet(StringComparer.Ordinal);
        var known = Column(tables, "casualty", "id").Where(id => !erased.Contains(id)).ToList();
        var kept = known.Where(keys.Wrapped.ContainsKey).ToHashSet(StringComparer.Ordinal);
        foreach (var id in known.Where(id => !kept.Contains(id)))
            await output.WriteLineAsync($"{id} is left out: its key is not among those of the backup, as after an erasure.");
        var rows = 0;
        foreach (var (table, all) in tables)
            rows += await TableCopy.WriteAsync(database, table, (JsonArray)all!, row => Comes(table, row, kept));
        var lines = 0L;
        foreach (var id in kept.Order(StringComparer.Ordinal))
        {
            await database.RunAsync("insert into data_key (casualty, wrapped) values (@c, @w)", ("@c", id), ("@w", keys.Wrapped[id]));
            if (manifest.Casualties.TryGetValue(id, out var backed))
                lines += await LinesAsync(database, target, id, backed, keys.Of(id));
        }

        await output.WriteLineAsync(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Restored: {kept.Count} casualties, {lines} lines, {rows} rows of other tables; {erased.Count} that were erased stay so."
            )
        );
    }

    private static IEnumerable<string> Column(JsonObject tables, string table, string column) =>
        (tables[table] as JsonArray)?.Select(r => r?[column]?.GetValue<string>()).OfType<string>() ?? [];

    private static bool Comes(string table, JsonObject row, HashSet<string> kept) =>
        table == "casualty" ? kept.Contains(row["id"]!.GetValue<string>())
        : Erasure.Tables.Contains(table) ? kept.Contains(row["casualty"]!.GetValue<string>())
        : true;

    private static async Task<long> LinesAsync(DbConnection database, string target, string id, BackedUp backed, DataKey key)
    {
        var (head, last) = (new byte[SHA256.HashSizeInBytes], 0L);
        foreach (var file in backed.Files)
        await foreach (var line in BackupLine.ReadAsync(Manifest.PathOf(target, file)))
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"Line {line.Position} of {id}, in {file.Name},");
            if (line.Position != last + 1)
                throw new RefusedException(string.Create(CultureInfo.InvariantCulture, $"{place} does not follow on {last}."));
            if (key.Unseal(line.Device, line.Number, line.Hash, line.Bytes) is null)
                throw new RefusedException($"{place} is not as it was sealed.");
            (head, last) = (BackedUp.Next(head, line.Hash), line.Position);
            await database.RunAsync(
                $"insert into line (casualty, {BackupLine.Columns}) values (@c, @p, @d, @n, @h, @b, @a, @v)",
                ("@c", id),
                ("@p", line.Position),
                ("@d", line.Device),
                ("@n", line.Number),
                ("@h", line.Hash),
                ("@b", line.Bytes),
                ("@a", line.Arrived),
                ("@v", line.Via)
            );
        }

        return last == backed.Position && Convert.ToHexStringLower(head) == backed.Head
            ? last
            : throw new RefusedException($"The lines of {id} are not those that the manifest tells of.");
    }

    private sealed record Keys(HubKey Hub, Dictionary<string, byte[]> Wrapped)
    {
        public DataKey Of(string casualty) =>
            Hub.Unwrap(casualty, Wrapped[casualty])
            ?? throw new RefusedException($"The key of {casualty} in {Manifest.Keys} is not as it was wrapped.");
    }
}
