using System.Globalization;
using System.Text;
using Farhold.Hub.Storage;
using Microsoft.Data.Sqlite;

namespace Farhold.Sync.Tests.Hub;

/// <summary>docs/decisions/sealed-at-rest.md, read from the bytes of the files.</summary>
public sealed class SealedAtRestTests : IDisposable
{
    private const string Marked = "Quillfeather";

    private static readonly Instant Noon = Instant.FromUtc(2031, 5, 4, 12, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("farhold-sealed-").FullName;

    private string Database => Path.Combine(folder, SqliteStore.FileName);

    private string Key => Path.Combine(folder, HubKey.FileName);

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, true);
    }

    [Fact]
    public async Task No_text_of_a_line_is_in_the_files_while_it_is_kept()
    {
        await using var store = SqliteStore.Open(folder);
        var id = await FilledAsync(store, "a");
        Assert.Empty(Holding(Marked));
        Assert.NotEmpty(Holding(id)); // so what is looked for would be found
        Assert.Contains(
            Marked,
            Encoding.UTF8.GetString((await store.SinceAsync(id, 0, Stop))!.Value[0].Bytes.Span),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task After_erasure_nothing_that_it_was_known_by_is_in_the_files()
    {
        await using var store = SqliteStore.Open(folder);
        var id = await FilledAsync(store, "erased-device");
        var other = await FilledAsync(store, "other");
        var root = HeldLine.Of(Line("erased-device", 1))!.Hash.ToString();
        Assert.NotEmpty(Holding(root));
        Assert.NotEmpty(Holding("erased-device"));
        Assert.Equal(300, await store.EraseAsync(id, "owner", "asked for", Noon, Stop));
        foreach (var gone in (string[])[Marked, root, "erased-device"])
            Assert.Empty(Holding(gone));
        Assert.Empty(Holding(Convert.FromHexString(root)));
        Assert.Equal(300, (await store.SinceAsync(other, 0, Stop))!.Value.Length);
    }

    /// <summary>Forms 1 and 2 as their files make them, with lines enough to lie on many pages.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public async Task A_database_with_plain_lines_is_sealed_and_no_plain_byte_is_left(int form)
    {
        MakePlain(form, 500);
        Assert.NotEmpty(Holding(Marked));
        await using (var store = SqliteStore.Open(folder))
        {
            var lines = (await store.SinceAsync("c1", 0, Stop))!.Value;
            Assert.Equal(
                Enumerable.Range(1, 500).Select(n => Encoding.UTF8.GetString(Line("a", n))),
                lines.Select(l => Encoding.UTF8.GetString(l.Bytes.Span))
            );
            Assert.Equal(Enumerable.Range(1, 500).Select(n => (long)n), lines.Select(l => l.Position));
            Assert.Empty(Holding(Marked));
            Assert.Equal(1, await store.AppendAsync(new("c1", [HeldLine.Of(Line("a", 501))!], "here", Noon), Stop));
            Assert.Equal("0", await store.PragmaAsync("user_version"));
        }

        Assert.Empty(Holding(Marked));
    }

    [Fact]
    public async Task A_start_that_was_cut_short_before_the_file_was_written_anew_is_made_up_for()
    {
        await using (var store = SqliteStore.Open(folder))
            await store.PragmaAsync("user_version");
        using (var database = Open())
        {
            // What an unfinished start leaves: sealed rows, and plain bytes in pages that nothing refers to any more.
            Run(database, "pragma secure_delete = off");
            Run(database, "create table was(bytes blob)");
            Run(database, $"insert into was values (cast('{string.Concat(Enumerable.Repeat(Marked, 2_000))}' as blob))");
            Run(database, "drop table was");
            Run(database, "pragma user_version = 1");
            Run(database, "pragma wal_checkpoint(truncate)");
        }

        Assert.NotEmpty(Holding(Marked));
        await using (var store = SqliteStore.Open(folder))
            Assert.Equal("0", await store.PragmaAsync("user_version"));
        Assert.Empty(Holding(Marked));
    }

    [Fact]
    [System.Runtime.Versioning.SupportedOSPlatform("linux")]
    public async Task The_key_is_for_its_owner_alone()
    {
        await SqliteStore.Open(folder).DisposeAsync();
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Key));
        Assert.Equal(32, Convert.FromBase64String(File.ReadAllText(Key)).Length);
    }

    [Fact]
    public async Task Without_its_key_a_store_is_not_opened_and_no_new_key_is_made()
    {
        await using (var store = SqliteStore.Open(folder))
            await FilledAsync(store, "a");
        var kept = Path.Combine(folder, "kept");
        File.Move(Key, kept);
        Assert.Contains("missing", Refused(), StringComparison.Ordinal);
        Assert.False(File.Exists(Key));
        File.WriteAllText(Key, Convert.ToBase64String(new byte[32]));
        Assert.Contains("not the one", Refused(), StringComparison.Ordinal);
        File.WriteAllText(Key, "short");
        Assert.Contains("no hub key", Refused(), StringComparison.Ordinal);
        await using (var elsewhere = SqliteStore.Open(folder, kept))
            Assert.NotNull(elsewhere);

        string Refused() => Assert.Throws<StoreUnusableException>(() => SqliteStore.Open(folder)).Message;
    }

    /// <summary>Bytes changed, and whole rows passed off as others: of another number, or another casualty.</summary>
    [Theory]
    [InlineData(
        "update line set bytes = cast(substr(bytes, 1, 20) || x'00' || substr(bytes, 22) as blob) where position = 1 and casualty = $one"
    )]
    [InlineData("update line set number = 9999 where position = 1 and casualty = $one")]
    [InlineData("update line set hash = zeroblob(32) where position = 1 and casualty = $one")]
    [InlineData(
        "update line set bytes = (select bytes from line where position = 1 and casualty = $other) where position = 1 and casualty = $one"
    )]
    [InlineData("update data_key set wrapped = (select wrapped from data_key where casualty = $other) where casualty = $one")]
    public async Task What_was_changed_in_the_file_is_told_and_not_handed_out(string change)
    {
        string one,
            other;
        await using (var store = SqliteStore.Open(folder))
            (one, other) = (await FilledAsync(store, "a"), await FilledAsync(store, "b"));
        using (var database = Open())
        {
            using var command = database.CreateCommand();
            command.CommandText = change;
            command.Parameters.AddWithValue("$one", one);
            command.Parameters.AddWithValue("$other", other);
            Assert.Equal(1, command.ExecuteNonQuery());
        }

        await using var again = SqliteStore.Open(folder);
        var told = await Assert.ThrowsAsync<StoreDamagedException>(() => again.SinceAsync(one, 0, Stop));
        Assert.Contains(one, told.Message, StringComparison.Ordinal);
        Assert.Equal(300, (await again.SinceAsync(other, 0, Stop))!.Value.Length);
    }

    /// <summary>A table that came later and refers to a casualty would make erasure fail, or leave something behind.</summary>
    [Fact]
    public async Task Erasure_knows_every_table_that_refers_to_a_casualty()
    {
        await SqliteStore.Open(folder).DisposeAsync();
        using var database = Open();
        using var command = database.CreateCommand();
        command.CommandText =
            "select m.name from sqlite_master m join pragma_table_info(m.name) c on c.name = 'casualty' "
            + "where m.type = 'table' and m.name <> 'tombstone' order by m.name";
        using var rows = command.ExecuteReader();
        var tables = new List<string>();
        while (rows.Read())
            tables.Add(rows.GetString(0));
        Assert.Equal(tables, Erasure.Tables.Order(StringComparer.Ordinal));
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static byte[] Line(string device, int number) =>
        Encoding.UTF8.GetBytes(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{{\"id\":\"{device}-{number}\",\"kind\":\"note\",\"text\":\"{Marked}, by the stove, calm, {number}\"}}"
            )
        );

    private static async Task<string> FilledAsync(SqliteStore store, string device)
    {
        var lines = Enumerable.Range(1, 300).Select(n => HeldLine.Of(Line(device, n))!).ToArray();
        var id = (await store.FindAsync(Roots.Of(lines), Noon, Stop)).Certain!;
        Assert.Equal(300, await store.AppendAsync(new(id, [.. lines], "here", Noon), Stop));
        return id;
    }

    private void MakePlain(int form, int lines)
    {
        using var database = Open();
        Run(database, "pragma journal_mode = wal");
        Run(database, "create table version(number integer primary key, applied text not null) strict");
        for (var number = 1; number <= form; number++)
        {
            var sql = Path.Combine(Farhold.Tests.Architecture.Repository.Root, "src/Farhold.Hub/Storage/sqlite", $"{number}.sql");
            Run(database, File.ReadAllText(sql));
            Run(database, $"insert into version values ({number}, '2031-05-04')");
        }

        Run(database, "insert into casualty values ('c1', 0)");
        for (var number = 1; number <= lines; number++)
        {
            using var command = database.CreateCommand();
            command.CommandText = "insert into line values ('c1', $n, 'a', $n, $h, $b, 0, 'here')";
            var line = HeldLine.Of(Line("a", number))!;
            command.Parameters.AddWithValue("$n", number);
            command.Parameters.AddWithValue("$h", Convert.FromHexString(line.Hash.ToString()));
            command.Parameters.AddWithValue("$b", line.Bytes.ToArray());
            command.ExecuteNonQuery();
        }
    }

    private SqliteConnection Open()
    {
        var database = new SqliteConnection($"Data Source={Database};Pooling=False");
        database.Open();
        return database;
    }

    private static void Run(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private List<string> Holding(string text) => Holding(Encoding.UTF8.GetBytes(text));

    /// <summary>The files of the folder that hold these bytes somewhere.</summary>
    private List<string> Holding(byte[] bytes) =>
        [.. Directory.GetFiles(folder).Where(f => Bytes(f).AsSpan().IndexOf(bytes) >= 0).Select(f => Path.GetFileName(f))];

    private static byte[] Bytes(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }
}
