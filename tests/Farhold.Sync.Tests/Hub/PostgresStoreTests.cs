using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Text;
using Farhold.Hub.Storage;
using Npgsql;

namespace Farhold.Sync.Tests.Hub;

/// <summary>The contract, and two hubs on one database.</summary>
public sealed class PostgresStoreTests(PostgresServer server) : RecordStoreContract, IClassFixture<PostgresServer>
{
    private static readonly Instant Noon = Instant.FromUtc(2031, 5, 4, 12, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("farhold-store-").FullName;
    private string connection = "";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Key => Path.Combine(folder, HubKey.FileName);

    private protected override IRecordStore Open() => PostgresStore.Open(connection, Key);

    public override async ValueTask InitializeAsync()
    {
        connection = await server.NewAsync();
        await base.InitializeAsync();
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Directory.Delete(folder, true);
    }

    /// <summary>postgresql.org, "Write Ahead Log": off would acknowledge before the disk has it.</summary>
    [Fact]
    public async Task A_commit_waits_for_the_disk()
    {
        await using var store = PostgresStore.Open(connection, Key);
        await using var rows = await store.Rows.OpenConnectionAsync(Stop);
        Assert.Equal("on", await rows.ScalarAsync("show synchronous_commit"));
        Assert.Equal("on", await rows.ScalarAsync("show fsync"));
    }

    [Fact]
    public async Task Two_hubs_that_append_to_one_casualty_lose_and_double_nothing()
    {
        await using var one = PostgresStore.Open(connection, Key);
        await using var other = PostgresStore.Open(connection, Key);
        var id = await NewAsync("a");
        var lines = Enumerable.Range(1, 400).Select(n => HeldLine.Of(Encoding.UTF8.GetBytes(Line("a", n)))!).ToArray();
        var fresh = 0;
        await Task.WhenAll(
            Enumerable
                .Range(0, 8)
                .Select(worker =>
                    Task.Run(
                        async () =>
                        {
                            var random = new Random(worker);
                            for (var from = worker * 40; from < 400; from += random.Next(1, 60))
                            {
                                var some = lines.Skip(from).Take(random.Next(1, 60));
                                var store = worker % 2 == 0 ? one : other;
                                Interlocked.Add(ref fresh, await store.AppendAsync(new(id, [.. some], "here", Noon), Stop));
                            }

                            Interlocked.Add(
                                ref fresh,
                                await (worker % 2 == 0 ? one : other).AppendAsync(new(id, [.. lines], "here", Noon), Stop)
                            );
                        },
                        Stop
                    )
                )
        );
        Assert.Equal(400, fresh); // each was new to exactly one of them
        var all = await AllAsync(id);
        Assert.Equal(Enumerable.Range(1, 400).Select(p => (long)p), all.Select(l => l.Position));
        Assert.Equal(lines.Select(l => Encoding.UTF8.GetString(l.Bytes.Span)).Order(), all.Select(l => l.Line).Order());
    }

    [Fact]
    public async Task Hubs_that_start_at_once_on_an_empty_database_make_it_once()
    {
        var empty = await server.NewAsync();
        var key = Path.Combine(folder, "new", HubKey.FileName);
        var stores = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => PostgresStore.Open(empty, key), Stop)));
        foreach (var store in stores)
            await store.DisposeAsync();
        Assert.Equal([HubKey.FileName], Directory.GetFiles(Path.GetDirectoryName(key)!).Select(f => Path.GetFileName(f)));
    }

    [Fact]
    public async Task Two_hubs_that_are_asked_for_a_new_casualty_at_once_open_one()
    {
        await using var one = PostgresStore.Open(connection, Key);
        await using var other = PostgresStore.Open(connection, Key);
        for (var round = 0; round < 10; round++)
        {
            var roots = Roots.Of([HeldLine.Of(Encoding.UTF8.GetBytes(Line($"r{round}", 1)))!]);
            var found = await Task.WhenAll(
                Enumerable.Range(0, 6).Select(i => Task.Run(() => (i % 2 == 0 ? one : other).FindAsync(roots, Noon, Stop), Stop))
            );
            Assert.Single(found.Select(m => m.Certain).Distinct());
        }

        await using var rows = await one.Rows.OpenConnectionAsync(Stop);
        Assert.Equal(10L, await rows.ScalarAsync("select count(*) from casualty"));
    }

    /// <summary>A hub keeps lines in memory: what came in at another one has to be seen all the same.</summary>
    [Fact]
    public async Task What_came_in_at_one_hub_is_handed_out_by_the_other()
    {
        await using var one = await HubOverLoopback.StartAsync(s => s with { Postgres = connection, KeyFile = Key });
        await using var other = await HubOverLoopback.StartAsync(s => s with { Postgres = connection, KeyFile = Key });
        var (here, there) = (new Side("here") { Hint = Head.Empty }, new Side("there") { Hint = Head.Empty });
        here.Write("first");
        there.Write("first");
        using var atOne = new PhoneClient(here, one);
        await atOne.FindAsync();
        using var atOther = new PhoneClient(there, other);
        there.Lines.Add(here.Lines.Lines.First().Bytes); // they met once
        await atOther.FindAsync();
        Assert.Equal(atOne.Casualty, atOther.Casualty);
        for (var round = 0; round < 3; round++)
        {
            here.Write("more");
            Assert.Equal(HttpStatusCode.OK, await atOne.SyncAsync());
            there.Write("more");
            Assert.Equal(HttpStatusCode.OK, await atOther.SyncAsync());
        }

        Assert.Equal(HttpStatusCode.OK, await atOne.SyncAsync());
        Assert.Equal(8, here.Lines.Count);
        Assert.Equal(here.Lines.Vector, there.Lines.Vector);
        await one.Store.EraseAsync(atOne.Casualty, "owner", "asked for", Noon, Stop);
        Assert.Equal(HttpStatusCode.Gone, await atOther.SyncAsync());
    }

    /// <summary>Who was at it while it was erased has either gone with it, or is told.</summary>
    [Fact]
    public async Task What_one_hub_erases_the_other_takes_in_no_more()
    {
        await using var one = PostgresStore.Open(connection, Key);
        await using var other = PostgresStore.Open(connection, Key);
        var id = await NewAsync("a");
        await other.AppendAsync(new(id, [HeldLine.Of(Encoding.UTF8.GetBytes(Line("a", 1)))!], "here", Noon), Stop); // it knows the key now
        using var erased = new CancellationTokenSource();
        var writers = Enumerable
            .Range(0, 4)
            .Select(w =>
                Task.Run(
                    async () =>
                    {
                        for (var n = 2; ; n++)
                            await other.AppendAsync(new(id, [HeldLine.Of(Encoding.UTF8.GetBytes(Line($"w{w}", n)))!], "here", Noon), Stop);
                    },
                    Stop
                )
            )
            .ToArray();
        await Task.Delay(200, Stop);
        Assert.InRange(await one.EraseAsync(id, "owner", "asked for", Noon, Stop), 2, int.MaxValue);
        foreach (var writer in writers)
            await Assert.ThrowsAsync<ErasedException>(() => writer);
        await using var rows = await one.Rows.OpenConnectionAsync(Stop);
        foreach (var table in Erasure.Tables)
            Assert.Equal(0L, await rows.ScalarAsync($"select count(*) from {table}"));
    }

    [Fact]
    public async Task Another_key_is_refused_and_so_is_a_later_version()
    {
        var elsewhere = Path.Combine(folder, "elsewhere.key");
        Assert.Contains("missing", Refused(elsewhere), StringComparison.Ordinal);
        await File.WriteAllTextAsync(elsewhere, Convert.ToBase64String(new byte[32]), Stop);
        Assert.Contains("not the one", Refused(elsewhere), StringComparison.Ordinal);
        await using (var rows = new NpgsqlConnection(connection))
        {
            await rows.OpenAsync(Stop);
            await rows.RunAsync(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"insert into version values ({Migrations.Latest(Dialect.Postgres) + 1}, 'later')"
                )
            );
        }

        Assert.Contains("later version", Refused(Key), StringComparison.Ordinal);

        string Refused(string key) => Assert.Throws<StoreUnusableException>(() => PostgresStore.Open(connection, key)).Message;
    }

    [Fact]
    public void Settings_that_fit_nothing_are_refused_without_being_repeated()
    {
        foreach (var settings in (string[])["Host=127.0.0.1;Port=1;Username=u;Password=owl;Timeout=1", "owl"])
        {
            var refused = Assert.Throws<StoreUnusableException>(() => PostgresStore.Open(settings, Key));
            Assert.DoesNotContain("owl", refused.ToString(), StringComparison.Ordinal);
        }
    }

    /// <summary>Numbered alike, and meaning the same: each has the tables and columns of the other.</summary>
    [Fact]
    public async Task Both_dialects_have_the_same_tables_and_columns()
    {
        Assert.Equal(Migrations.Latest(Dialect.Sqlite), Migrations.Latest(Dialect.Postgres));
        await using var sqlite = SqliteStore.Open(folder);
        await using var there = await sqlite.Rows.OpenConnectionAsync(Stop);
        var one = await there.AllAsync(
            "select m.name, c.name, c.\"notnull\" or c.pk, c.type from sqlite_master m join pragma_table_info(m.name) c "
                + "where m.type = 'table' order by m.name, c.name",
            row => (row.GetString(0), row.GetString(1), row.GetInt64(2) != 0, row.GetString(3).ToUpperInvariant())
        );
        await using var rows = new NpgsqlConnection(connection);
        await rows.OpenAsync(Stop);
        var types = new Dictionary<string, string>
        {
            ["text"] = "TEXT",
            ["bigint"] = "INTEGER",
            ["integer"] = "INTEGER",
            ["bytea"] = "BLOB",
        };
        var other = await rows.AllAsync(
            "select table_name::text, column_name::text, is_nullable = 'NO', data_type::text from information_schema.columns "
                + "where table_schema = 'public' order by 1, 2",
            row => (row.GetString(0), row.GetString(1), row.GetBoolean(2), types[row.GetString(3)])
        );
        Assert.Equal(one.Order(), other.Order());
    }

    [Fact]
    public async Task A_phone_is_told_to_ask_again_while_the_server_is_away()
    {
        await using var own = new PostgresServer();
        await own.InitializeAsync();
        var database = await own.NewAsync();
        await using var hub = await HubOverLoopback.StartAsync(s => s with { Postgres = database, KeyFile = Key });
        var phone = new Side("here") { Hint = Head.Empty };
        phone.Write("first");
        using var client = new PhoneClient(phone, hub);
        await client.FindAsync();
        Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
        await own.KillAsync();
        phone.Write("more");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await client.SyncAsync());
        await own.StartAsync();
        HttpStatusCode again;
        for (var tries = 0; (again = await client.SyncAsync()) == HttpStatusCode.ServiceUnavailable && tries < 20; tries++)
            await Task.Delay(100, Stop); // connections of before end one by one
        Assert.Equal(HttpStatusCode.OK, again);
        Assert.Equal(phone.Lines.Vector, phone.Hint!.Have);
    }

    /// <summary>The server is ended without a word while hubs append, and started again, several times over.</summary>
    [Fact]
    public async Task Nothing_acknowledged_is_lost_when_the_server_is_killed()
    {
        await using var own = new PostgresServer();
        await own.InitializeAsync();
        var database = await own.NewAsync();
        var acknowledged = new ConcurrentBag<string>();
        string id;
        await using (var store = PostgresStore.Open(database, Key))
        {
            var first = HeldLine.Of(Encoding.UTF8.GetBytes(Line("first", 1)))!;
            id = (await store.FindAsync(Roots.Of([first]), Noon, Stop)).Certain!;
            using var end = new CancellationTokenSource();
            var writers = Enumerable.Range(0, 4).Select(w => Task.Run(() => WriteAsync(store, w, end.Token), Stop)).ToArray();
            var random = new Random(5);
            for (var life = 0; life < Math.Max(2, Cases.Of(4)); life++)
            {
                var before = acknowledged.Count;
                while (acknowledged.Count < before + 50)
                    await Task.Delay(random.Next(5, 50), Stop);
                await own.KillAsync();
                await own.StartAsync();
            }

            await end.CancelAsync();
            await Task.WhenAll(writers);
        }

        await using var anew = PostgresStore.Open(database, Key);
        var lines = (await anew.SinceAsync(id, 0, Stop))!.Value;
        Assert.Equal(Enumerable.Range(1, lines.Length).Select(p => (long)p), lines.Select(l => l.Position));
        var stored = lines.Select(l => Encoding.UTF8.GetString(l.Bytes.Span)).ToList();
        Assert.Equal(stored.Count, stored.Distinct().Count());
        Assert.Empty(acknowledged.Except(stored));
        Assert.InRange(acknowledged.Count, 100, int.MaxValue);

        async Task WriteAsync(PostgresStore store, int writer, CancellationToken stop)
        {
            for (var n = 1; !stop.IsCancellationRequested; n++)
            {
                var line = Line($"w{writer}", n);
                for (var tries = 0; ; tries++)
                    try
                    {
                        await store.AppendAsync(
                            new(id, [HeldLine.Of(Encoding.UTF8.GetBytes(line))!], "here", Noon),
                            CancellationToken.None
                        );
                        acknowledged.Add(line);
                        break;
                    }
                    catch (StoreAwayException) when (tries < 600)
                    {
                        await Task.Delay(50, CancellationToken.None); // the same again: whether it was kept is not known
                    }
            }
        }
    }
}
