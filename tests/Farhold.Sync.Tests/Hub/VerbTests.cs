using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Farhold.Hub.Storage;
using Farhold.Hub.Verbs;
using Microsoft.Data.Sqlite;

namespace Farhold.Sync.Tests.Hub;

/// <summary>Backup, restore and verify, on records that are really there.</summary>
public sealed class VerbTests : IDisposable
{
    private const string Marked = "Quillfeather";

    private static readonly Instant Noon = Instant.FromUtc(2031, 5, 4, 12, 0);

    private readonly string root = Directory.CreateTempSubdirectory("farhold-verbs-").FullName;
    private readonly StringWriter said = new(CultureInfo.InvariantCulture);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Folder => Path.Combine(root, "records");

    private string Target => Path.Combine(root, "backup");

    private string Anew => Path.Combine(root, "anew");

    private string Key => Path.Combine(Folder, HubKey.FileName);

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        said.Dispose();
        Directory.Delete(root, true);
    }

    [Fact]
    public async Task What_a_running_hub_has_is_backed_up_bit_by_bit_and_restored_whole()
    {
        string one,
            other;
        await using (var store = SqliteStore.Open(Folder))
        {
            one = await FilledAsync(store, "a", 1, 20);
            await FillTablesAsync(store, one);
            Assert.Equal(0, await RunAsync("backup", Folder, Target));
            var first = Files(Manifest.Lines).Single();
            var (written, bytes) = (File.GetLastWriteTimeUtc(first), await File.ReadAllBytesAsync(first, Stop));
            await AppendAsync(store, one, "a", 21, 30);
            other = await FilledAsync(store, "b", 1, 5);
            Assert.Equal(0, await RunAsync("backup", Folder, Target));
            Assert.Contains("2 casualties, 35 lines, 15 of them new", said.ToString(), StringComparison.Ordinal);
            Assert.Equal(bytes, await File.ReadAllBytesAsync(first, Stop));
            Assert.Equal(written, File.GetLastWriteTimeUtc(first));
            Assert.Equal("20 10", await CountsAsync(one));
            Assert.Equal("5", await CountsAsync(other));
            Assert.Equal(0, await RunAsync("backup", Folder, Target)); // nothing new
            Assert.Equal(3, Files(Manifest.Lines).Length);
        }

        Assert.Equal(0, await RunAsync("restore", Target, Anew, "--hub-key", Key));
        await using var before = SqliteStore.Open(Folder);
        await using var after = SqliteStore.Open(Anew, Key);
        foreach (var casualty in (string[])[one, other])
            Assert.Equal(await TextsAsync(before, casualty), await TextsAsync(after, casualty));
        Assert.Equal(await TablesAsync(before), await TablesAsync(after));
        Assert.Equal(one, (await after.FindAsync(Roots.Of([Held("a", 1)]), Noon, Stop)).Certain);
        Assert.Equal(1, await after.AppendAsync(new(one, [Held("a", 30), Held("a", 31)], "here", Noon), Stop));
        Assert.Equal(31, (await after.SinceAsync(one, 30, Stop))!.Value.Single().Position);
    }

    /// <summary>Each backup is of one moment, and what it says it holds can be had from it.</summary>
    [Fact]
    public async Task A_backup_while_phones_send_is_whole()
    {
        await using var store = SqliteStore.Open(Folder);
        var id = await FilledAsync(store, "a", 1, 1);
        using var end = new CancellationTokenSource();
        var sending = Task.Run(
            async () =>
            {
                var n = 2;
                for (; !end.IsCancellationRequested; n++)
                    await AppendAsync(store, id, "a", n, n);
                return n - 1;
            },
            Stop
        );
        for (var round = 0; round < 5; round++)
        {
            Assert.Equal(0, await RunAsync("backup", Folder, Target));
            await Task.Delay(50, Stop);
        }

        await end.CancelAsync();
        var sent = await sending;
        Assert.Equal(0, await RunAsync("restore", Target, Anew, "--hub-key", Key));
        await using var restored = SqliteStore.Open(Anew, Key);
        var lines = await TextsAsync(restored, id);
        Assert.InRange(lines.Count, 5, sent);
        Assert.Equal((await TextsAsync(store, id)).Take(lines.Count), lines);
    }

    [Fact]
    public async Task No_text_is_in_a_backup_and_no_key_either()
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 50);
        await RunAsync("backup", Folder, Target);
        var key = (await File.ReadAllTextAsync(Key, Stop)).Trim();
        foreach (var file in Directory.GetFiles(Target, "*", SearchOption.AllDirectories))
        {
            var text = Encoding.Latin1.GetString(await UnpackedAsync(file));
            Assert.DoesNotContain(Marked, text, StringComparison.Ordinal);
            Assert.DoesNotContain(key, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_erased_casualty_leaves_the_backup_and_older_copies_of_it_can_not_be_read_without_their_key()
    {
        string gone,
            stays;
        var old = Path.Combine(root, "old");
        await using (var store = SqliteStore.Open(Folder))
        {
            (gone, stays) = (await FilledAsync(store, "a", 1, 20), await FilledAsync(store, "b", 1, 20));
            await RunAsync("backup", Folder, Target);
            Copy(Target, old);
            await store.EraseAsync(gone, "owner", "asked for", Noon, Stop);
            Assert.Equal(0, await RunAsync("backup", Folder, Target));
        }

        Assert.DoesNotContain(
            Directory.GetDirectories(Path.Combine(Target, Manifest.Lines)),
            d => d.EndsWith(gone, StringComparison.Ordinal)
        );
        Assert.Equal(0, await RunAsync("restore", Target, Anew, "--hub-key", Key));
        await using (var restored = SqliteStore.Open(Anew, Key))
        {
            Assert.NotNull((await restored.FindAsync(Roots.Of([Held("a", 1)]), Noon, Stop)).Erased);
            Assert.Equal(20, (await TextsAsync(restored, stays)).Count);
        }

        // The keys are kept apart and written anew at each backup: an old copy of the rest finds no key any more.
        File.Copy(Path.Combine(Target, Manifest.Keys), Path.Combine(old, Manifest.Keys), overwrite: true);
        var fromOld = Path.Combine(root, "from-old");
        Assert.Equal(0, await RunAsync("restore", old, fromOld, "--hub-key", Key));
        Assert.Contains($"{gone} is left out", said.ToString(), StringComparison.Ordinal);
        await using var left = SqliteStore.Open(fromOld, Key);
        Assert.Null(await left.SinceAsync(gone, 0, Stop));
        Assert.Equal(20, (await TextsAsync(left, stays)).Count);
    }

    /// <summary>A tombstone among the tables counts also where files and keys of an older day lie beside it.</summary>
    [Fact]
    public async Task What_a_tombstone_names_is_left_out()
    {
        await using (var store = SqliteStore.Open(Folder))
        {
            var id = await FilledAsync(store, "a", 1, 3);
            await RunAsync("backup", Folder, Target);
            Change(
                Files("").Single(f => Path.GetFileName(f).StartsWith("tables-", StringComparison.Ordinal)),
                tables =>
                    tables["tombstone"] = new JsonArray(
                        new JsonObject
                        {
                            ["root_hmac"] = new JsonObject { ["base64"] = "AAAA" },
                            ["casualty"] = id,
                            ["at"] = 1,
                            ["by"] = "owner",
                            ["reason"] = "asked for",
                        }
                    )
            );
        }

        Assert.Equal(0, await RunAsync("restore", Target, Anew, "--hub-key", Key));
        Assert.Contains("Restored: 0 casualties, 0 lines", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("1 that were erased", said.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("damaged", "not as it was written")]
    [InlineData("missing", "is missing")]
    [InlineData("tables", "not as it was written")]
    [InlineData("manifest", "can't be read")]
    [InlineData("no manifest", "no backup")]
    [InlineData("no keys", "keys.json is missing")]
    [InlineData("wrong key", "not the one")]
    [InlineData("outside", "not in the backup")]
    [InlineData("full folder", "is not empty")]
    public async Task A_backup_that_is_not_whole_is_refused_and_nothing_is_left_behind(string what, string why)
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 20);
        await RunAsync("backup", Folder, Target);
        var lines = Files(Manifest.Lines).Single();
        var key = Key;
        switch (what)
        {
            case "damaged":
                Flip(lines, new FileInfo(lines).Length / 2);
                break;
            case "missing":
                File.Delete(lines);
                break;
            case "tables":
                Flip(Directory.GetFiles(Target, "tables-*").Single(), 5);
                break;
            case "manifest":
                await File.WriteAllTextAsync(Path.Combine(Target, Manifest.FileName), "{", Stop);
                break;
            case "no manifest":
                File.Delete(Path.Combine(Target, Manifest.FileName));
                break;
            case "no keys":
                File.Delete(Path.Combine(Target, Manifest.Keys));
                break;
            case "wrong key":
                key = Path.Combine(root, "other.key");
                await File.WriteAllTextAsync(key, Convert.ToBase64String(new byte[32]), Stop);
                break;
            case "outside":
                Change(Path.Combine(Target, Manifest.FileName), m => m["tables"]!["name"] = "../records/records.sqlite");
                break;
            default:
                Directory.CreateDirectory(Anew);
                await File.WriteAllTextAsync(Path.Combine(Anew, "mine"), "mine", Stop);
                break;
        }

        Assert.Equal(2, await RunAsync("restore", Target, Anew, "--hub-key", key));
        Assert.Contains(why, said.ToString(), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(Anew, SqliteStore.FileName)));
    }

    /// <summary>The files are as they were written, and yet a row is not as it was sealed: found on its way in.</summary>
    [Fact]
    public async Task A_row_that_is_another_one_is_found_though_the_files_fit()
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 5);
        using (var database = Database())
            Run(database, "update line set device = 'z' where position = 3");
        await RunAsync("backup", Folder, Target);
        Assert.Equal(2, await RunAsync("restore", Target, Anew, "--hub-key", Key));
        Assert.Contains("Line 3 of", said.ToString(), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Anew));
    }

    [Fact]
    public async Task Two_backups_at_once_are_not_made()
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 5);
        Assert.Equal(0, await RunAsync("backup", Folder, Target));
        await using (new FileStream(Path.Combine(Target, "running.part"), FileMode.Create, FileAccess.Write, FileShare.None))
            Assert.Equal(2, await RunAsync("backup", Folder, Target));
        Assert.Contains("Another backup", said.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, await RunAsync("backup", Folder, Target));
    }

    [Fact]
    public async Task A_backup_of_other_records_is_not_added_to()
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 5);
        await RunAsync("backup", Folder, Target);
        using (var database = Database()) // set back, and gone on with differently
            Run(database, "update line set hash = zeroblob(32) where position = 5");
        Assert.Equal(2, await RunAsync("backup", Folder, Target));
        Assert.Contains("other lines", said.ToString(), StringComparison.Ordinal);
        using (var database = Database())
            Run(database, "delete from line where position = 5");
        Assert.Equal(2, await RunAsync("backup", Folder, Target));
        var elsewhere = Path.Combine(root, "elsewhere");
        await using (var store = SqliteStore.Open(elsewhere))
            await FilledAsync(store, "b", 1, 5);
        Assert.Equal(2, await RunAsync("backup", elsewhere, Target));
        Assert.Contains("another hub key", said.ToString(), StringComparison.Ordinal);
        Directory.CreateDirectory(Anew);
        await File.WriteAllTextAsync(Path.Combine(Anew, "mine"), "mine", Stop);
        Assert.Equal(2, await RunAsync("backup", Folder, Anew));
    }

    [Fact]
    public async Task Verify_says_what_it_has_read_and_that_all_of_it_fits()
    {
        await using var store = SqliteStore.Open(Folder); // also while the hub runs
        await FilledAsync(store, "a", 1, 20);
        await FilledAsync(store, "b", 1, 5);
        Assert.Equal(0, await RunAsync("verify", Folder));
        Assert.Contains("2 casualties, 25 lines", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("All of it fits", said.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("update line set number = 99 where position = 7", "Line 7 of")]
    [InlineData("update line set hash = zeroblob(32) where position = 7", "Line 7 of")]
    [InlineData("delete from line where position = 7", "Line 8 of")]
    [InlineData("delete from root", "Line 1 of")]
    [InlineData("update data_key set wrapped = zeroblob(60)", "data key")]
    [InlineData("delete from data_key", "no data key")]
    [InlineData("insert into seal values ((select id from casualty), 't', 'a', 21, x'7B7D', '', x'00', 0)", "can't be read")]
    [InlineData("insert into belongs values ('nobody', 'x')", "belongs")]
    public async Task Verify_names_what_does_not_fit(string change, string place)
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 20);
        using (var database = Database())
            Run(database, "pragma foreign_keys = off; " + change);
        Assert.Equal(1, await RunAsync("verify", Folder));
        Assert.Contains(place, said.ToString(), StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", said.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, 20, 0)] // as it was sealed
    [InlineData(20, 12, 0)] // more has come in since
    [InlineData(15, 20, 1)] // the end is missing
    public async Task Verify_holds_what_is_here_to_what_was_sealed(int held, int sealedTo, int ended)
    {
        await using (var store = SqliteStore.Open(Folder))
        {
            var id = await FilledAsync(store, "a", 1, held);
            var then = new LineSet();
            for (var n = 1; n <= sealedTo; n++)
                then.Add(Held("a", n).Bytes);
            await using var rows = await store.Rows.OpenConnectionAsync(Stop);
            await SealAsync(rows, id, sealedTo, Outgoing.To(null, then, 0).Head.Write());
        }

        Assert.Equal(ended, await RunAsync("verify", Folder));
        Assert.Contains("1 seals", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verify_finds_other_lines_than_those_that_were_sealed()
    {
        await using (var store = SqliteStore.Open(Folder))
        {
            var id = await FilledAsync(store, "a", 1, 20);
            var other = new LineSet();
            for (var n = 1; n <= 20; n++)
                other.Add(n == 9 ? Encoding.UTF8.GetBytes("{\"id\":\"a-9\",\"kind\":\"note\",\"text\":\"another\"}") : Held("a", n).Bytes);
            await using var rows = await store.Rows.OpenConnectionAsync(Stop);
            await SealAsync(rows, id, 20, Outgoing.To(null, other, 0).Head.Write());
        }

        Assert.Equal(1, await RunAsync("verify", Folder));
        Assert.Contains("over other lines of a", said.ToString(), StringComparison.Ordinal);
    }

    /// <summary>One byte of a sealed line, changed on the disk: the pages of the file are sound, and still it is found.</summary>
    [Fact]
    public async Task Verify_finds_one_changed_byte_in_the_file()
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 20);
        byte[] box;
        using (var database = Database())
        {
            using var command = database.CreateCommand();
            command.CommandText = "select bytes from line where position = 13";
            box = (byte[])command.ExecuteScalar()!;
        }

        var file = Path.Combine(Folder, SqliteStore.FileName);
        var at = (await File.ReadAllBytesAsync(file, Stop)).AsSpan().IndexOf(box);
        Assert.True(at > 0);
        Flip(file, at + 40);
        Assert.Equal(1, await RunAsync("verify", Folder));
        Assert.Contains("Line 13 of", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("1 faults", said.ToString(), StringComparison.Ordinal);
    }

    /// <summary>What phones sent is kept as it is: a broken chain is the record's doubt and no fault of the store.</summary>
    [Fact]
    public async Task Verify_tells_broken_chains_and_is_content_with_them()
    {
        await using (var store = SqliteStore.Open(Folder))
        {
            var phone = new Side("a");
            for (var i = 0; i < 5; i++)
                phone.Write("calm");
            var lines = phone.Lines.Lines.Select(l => Encoding.UTF8.GetString(l.Bytes.Span)).ToArray();
            lines[2] = lines[2].Replace("calm", "changed", StringComparison.Ordinal);
            var held = lines.Select(l => HeldLine.Of(Encoding.UTF8.GetBytes(Whole(l)))!).ToArray();
            var id = (await store.FindAsync(Roots.Of(held), Noon, Stop)).Certain!;
            await store.AppendAsync(new(id, [.. held], "here", Noon), Stop);
        }

        Assert.Equal(0, await RunAsync("verify", Folder));
        Assert.Contains("do not follow from the line before", said.ToString(), StringComparison.Ordinal);

        static string Whole(string line) =>
            line.Replace(
                "\"kind\":",
                "\"happened\":\"2031-05-04T02:00:00Z\",\"recorded\":\"2031-05-04T02:00:00Z\",\"by\":\"Ane\",\"kind\":",
                StringComparison.Ordinal
            );
    }

    [Fact]
    public async Task Verify_without_the_key_says_so()
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 2);
        File.Move(Key, Path.Combine(root, "kept"));
        Assert.Equal(2, await RunAsync("verify", Folder));
        Assert.Contains("missing", said.ToString(), StringComparison.Ordinal);
        await File.WriteAllTextAsync(Key, Convert.ToBase64String(new byte[32]), Stop);
        Assert.Equal(2, await RunAsync("verify", Folder));
        Assert.Contains("not the one", said.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, await RunAsync("verify", Folder, "--hub-key", Path.Combine(root, "kept")));
    }

    [Fact]
    public async Task The_program_itself_knows_the_verbs()
    {
        await using (var store = SqliteStore.Open(Folder))
            await FilledAsync(store, "a", 1, 2);
        Assert.Equal((0, "All of it fits"), await ProgramAsync("All of it fits", "verify", Folder));
        Assert.Equal((2, "backup FOLDER TARGET"), await ProgramAsync("backup FOLDER TARGET", "backup"));
        Assert.Equal((2, "no records"), await ProgramAsync("no records", "backup", Anew, Target));
    }

    private static async Task<(int Ended, string Said)> ProgramAsync(string looked, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in args.Prepend(Path.Combine(AppContext.BaseDirectory, "Farhold.Hub.dll")))
            start.ArgumentList.Add(argument);
        using var hub = Process.Start(start)!;
        var (results, refusals) = (hub.StandardOutput.ReadToEndAsync(Stop), hub.StandardError.ReadToEndAsync(Stop));
        await hub.WaitForExitAsync(Stop);
        var text = hub.ExitCode == 2 ? await refusals : await results;
        return (hub.ExitCode, text.Contains(looked, StringComparison.Ordinal) ? looked : text);
    }

    private async Task<int> RunAsync(params string[] args) => (await Verb.RunAsync(args, said, said))!.Value;

    private static HeldLine Held(string device, int number) =>
        HeldLine.Of(
            Encoding.UTF8.GetBytes(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{{\"id\":\"{device}-{number}\",\"kind\":\"note\",\"text\":\"{Marked} {number}\"}}"
                )
            )
        )!;

    private static async Task<string> FilledAsync(SqliteStore store, string device, int from, int to)
    {
        var id = (await store.FindAsync(Roots.Of([Held(device, 1)]), Noon, Stop)).Certain!;
        await AppendAsync(store, id, device, from, to);
        return id;
    }

    private static Task<int> AppendAsync(SqliteStore store, string id, string device, int from, int to) =>
        store.AppendAsync(new(id, [.. Enumerable.Range(from, to - from + 1).Select(n => Held(device, n))], "here", Noon), Stop);

    private static async Task<List<string>> TextsAsync(SqliteStore store, string id) =>
        [
            .. (await store.SinceAsync(id, 0, Stop))!.Value.Select(l =>
                string.Create(CultureInfo.InvariantCulture, $"{l.Position} {Encoding.UTF8.GetString(l.Bytes.Span)}")
            ),
        ];

    /// <summary>One row of each kind that a table can hold: text, numbers, bytes, nothing.</summary>
    private static async Task FillTablesAsync(SqliteStore store, string id)
    {
        await using var rows = await store.Rows.OpenConnectionAsync(Stop);
        await rows.RunAsync("insert into audit (position, at, who, what, about, hash) values (1, 2, 'Ane “A”', 'x', '', x'0001')");
        await rows.RunAsync("insert into belongs (casualty, team) values (@c, 'north')", ("@c", id));
        await rows.RunAsync(
            "insert into share (id, casualty, secret, code, wrong, made, made_by, until, opened) values ('s', @c, x'FF', null, 0, 1, 'x', 2, 0)",
            ("@c", id)
        );
    }

    private static Task<int> SealAsync(System.Data.Common.DbConnection rows, string id, int number, byte[] head) =>
        rows.RunAsync(
            "insert into seal (casualty, thumb, device, number, head, base, signature, at) values (@c, 't', 'a', @n, @h, '', x'00', 0)",
            ("@c", id),
            ("@n", number),
            ("@h", head)
        );

    private static async Task<Dictionary<string, string>> TablesAsync(SqliteStore store)
    {
        await using var rows = await store.Rows.OpenConnectionAsync(Stop);
        var all = new Dictionary<string, string>();
        foreach (var table in (await TableCopy.TablesAsync(rows)).Append("data_key").Append("line"))
            all[table] = (await TableCopy.ReadAsync(rows, table)).ToJsonString();
        return all;
    }

    private string[] Files(string under) =>
        Directory.GetFiles(
            Path.Combine(Target, under),
            "*",
            under.Length > 0 ? SearchOption.AllDirectories : SearchOption.TopDirectoryOnly
        );

    /// <summary>How many lines are in each file of a casualty, in order.</summary>
    private async Task<string> CountsAsync(string id)
    {
        var counts = new List<int>();
        foreach (var file in Directory.GetFiles(Path.Combine(Target, Manifest.Lines, id)).Order(StringComparer.Ordinal))
            counts.Add((await UnpackedAsync(file)).Count(b => b == '\n'));
        return string.Join(' ', counts);
    }

    private static async Task<byte[]> UnpackedAsync(string file)
    {
        await using Stream packed = File.OpenRead(file);
        await using var plain = file.EndsWith(".gz", StringComparison.Ordinal)
            ? new System.IO.Compression.GZipStream(packed, System.IO.Compression.CompressionMode.Decompress)
            : packed;
        using var memory = new MemoryStream();
        await plain.CopyToAsync(memory, Stop);
        return memory.ToArray();
    }

    /// <summary>Changes a file of JSON in a backup; the manifest tells its hash as if it had been written so.</summary>
    private void Change(string file, Action<JsonNode> change)
    {
        var json = JsonNode.Parse(File.ReadAllBytes(file))!;
        change(json);
        File.WriteAllText(file, json.ToJsonString());
        if (Path.GetFileName(file) == Manifest.FileName)
            return;
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(file)));
        Change(Path.Combine(Target, Manifest.FileName), m => m["tables"]!["sha256"] = hash);
    }

    private static void Flip(string file, long at)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.ReadWrite);
        stream.Position = at;
        var was = stream.ReadByte();
        stream.Position = at;
        stream.WriteByte((byte)(was ^ 1));
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    private SqliteConnection Database()
    {
        var database = new SqliteConnection($"Data Source={Path.Combine(Folder, SqliteStore.FileName)};Pooling=False");
        database.Open();
        return database;
    }

    private static void Run(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
