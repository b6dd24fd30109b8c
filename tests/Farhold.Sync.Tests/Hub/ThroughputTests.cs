using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text;
using Farhold.Hub.Storage;
using Microsoft.Data.Sqlite;

namespace Farhold.Sync.Tests.Hub;

/// <summary>How many entries a second the hub acknowledges. Only where asked for: <c>-explicit only</c>, on a machine that does nothing else.</summary>
public sealed class ThroughputTests(ITestOutputHelper output)
{
    private const int Waiting = 64,
        Casualties = 60,
        Clients = 24;

    private static readonly TimeSpan Measured = TimeSpan.FromSeconds(5);

    [Fact(Explicit = true)]
    public async Task The_store_acknowledges_at_least_half_of_what_a_raw_loop_on_the_same_disk_commits()
    {
        var folder = Directory.CreateTempSubdirectory("farhold-throughput-").FullName;
        try
        {
            var ratios = new List<double>();
            for (var round = 0; round < 3; round++) // in turns, since the disk's times vary
            {
                var raw = Raw(Path.Combine(folder, $"raw{round}.sqlite"));
                var store = await StoreAsync(Path.Combine(folder, $"store{round}"));
                ratios.Add(store / raw);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"raw {raw:#,##0}, store {store:#,##0} entries/s: {store / raw:0.00}"));
            }

            Assert.InRange(ratios.Order().ElementAt(1), 0.5, 100);
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(folder, true);
        }
    }

    [Fact(Explicit = true)]
    public async Task Phones_that_send_an_entry_a_request_are_answered()
    {
        await using var hub = await HubOverLoopback.StartAsync(o => o with { MostPerSecond = 100_000 });
        var latencies = await Task.WhenAll(Enumerable.Range(0, Clients).Select(i => Task.Run(() => SendAsync(hub.Port, i))));
        var all = latencies.SelectMany(l => l).Order().ToArray();
        Assert.NotEmpty(all);
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Clients} phones: {all.Length / Measured.TotalSeconds:#,##0} requests/s, median {all[all.Length / 2]:0.0} ms, "
                    + $"99th percentile {all[all.Length * 99 / 100]:0.0} ms"
            )
        );
    }

    private static async Task<List<double>> SendAsync(int port, int i)
    {
        var phone = new Side($"phone{i}") { Hint = Head.Empty };
        phone.Write("first");
        using var client = new PhoneClient(phone, port);
        await client.FindAsync();
        var latencies = new List<double>();
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < Measured; )
        {
            phone.Write("one more");
            var start = clock.Elapsed;
            Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
            latencies.Add((clock.Elapsed - start).TotalMilliseconds);
        }

        return latencies;
    }

    /// <summary>The same table, the same bytes, as many in one transaction as wait in the other.</summary>
    private static double Raw(string file)
    {
        using var database = new SqliteConnection($"Data Source={file};Pooling=False");
        database.Open();
        Run("pragma journal_mode = wal; pragma synchronous = full");
        SqliteMigrations.Apply(database);
        for (var c = 0; c < Casualties; c++)
            Run($"insert into casualty values ('{c}', 0)");
        using var insert = database.CreateCommand();
        insert.CommandText = "insert into line values ($c, $p, $d, $n, $h, $b, 0, 'here')";
        foreach (var name in (string[])["$c", "$p", "$d", "$n", "$h", "$b"])
            insert.Parameters.Add(new SqliteParameter { ParameterName = name });
        var (count, clock) = (0, Stopwatch.StartNew());
        while (clock.Elapsed < Measured)
        {
            Run("begin immediate");
            for (var i = 0; i < Waiting; i++, count++)
            {
                var line = Line(count / Casualties + 1);
                var hash = new byte[32];
                line.Hash.CopyTo(hash);
                object[] values = [$"{count % Casualties}", (count / Casualties) + 1, "a", (count / Casualties) + 1, hash, line.Bytes.ToArray()];
                for (var v = 0; v < values.Length; v++)
                    insert.Parameters[v].Value = values[v];
                insert.ExecuteNonQuery();
            }

            Run("commit");
        }

        return count / clock.Elapsed.TotalSeconds;

        void Run(string sql)
        {
            using var command = database.CreateCommand();
            command.CommandText = sql;
            command.ExecuteNonQuery();
        }
    }

    private static async Task<double> StoreAsync(string folder)
    {
        await using var store = SqliteStore.Open(folder);
        var ids = new List<string>();
        for (var c = 0; c < Casualties; c++)
        {
            var root = HeldLine.Of(Encoding.UTF8.GetBytes($"{{\"id\":\"root{c}-1\"}}"))!;
            ids.Add((await store.FindAsync(Roots.Of([root]), Instant.FromUnixTimeSeconds(0))).Certain!);
        }

        var (count, clock) = (0, Stopwatch.StartNew());
        await Task.WhenAll(
            Enumerable
                .Range(0, Waiting)
                .Select(_ =>
                    Task.Run(async () =>
                    {
                        while (clock.Elapsed < Measured)
                        {
                            var n = Interlocked.Increment(ref count) - 1;
                            Assert.Equal(
                                1,
                                await store.AppendAsync(
                                    new(ids[n % Casualties], [Line((n / Casualties) + 1)], "here", Instant.FromUnixTimeSeconds(0))
                                )
                            );
                        }
                    })
                )
        );
        return count / clock.Elapsed.TotalSeconds;
    }

    private static HeldLine Line(int number) =>
        HeldLine.Of(
            Encoding.UTF8.GetBytes(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{{\"id\":\"a-{number}\",\"previous\":\"{number:x64}\",\"happened\":\"2031-05-04T14:10:00Z\",\"recorded\":\"2031-05-04T14:10:09Z\",\"by\":\"Ane\",\"kind\":\"bleeding.checked\",\"wound\":\"w1\",\"bleeding\":\"none\"}}"
                )
            )
        )!;
}
