using Farhold.Hub.Storage;
using Microsoft.Data.Sqlite;

namespace Farhold.Sync.Tests.Hub;

public sealed class SqliteStoreTests : RecordStoreContract
{
    private readonly string folder = Directory.CreateTempSubdirectory("farhold-store-").FullName;
    private SqliteStore? open;

    private protected override IRecordStore Open() => open = SqliteStore.Open(folder);

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, true);
    }

    /// <summary>sqlite.org/pragma.html: FULL is 2, and in a write-ahead log syncs it at every commit.</summary>
    [Fact]
    public async Task A_commit_waits_for_the_disk()
    {
        Assert.Equal("wal", await open!.PragmaAsync("journal_mode"));
        Assert.Equal("2", await open.PragmaAsync("synchronous"));
    }

    /// <summary>A limit on the pages of the file, at which SQLite says the same as on a full disk (SQLITE_FULL).</summary>
    [Fact]
    public async Task On_a_full_disk_nothing_is_acknowledged_that_is_not_kept_and_it_goes_on_once_there_is_room()
    {
        var id = await NewAsync("a");
        await AppendAsync(id, Line("a", 1));
        await open!.PragmaAsync($"max_page_count = {await open.PragmaAsync("page_count")}");
        var acknowledged = 1;
        var more = Enumerable.Range(2, 400).Select(n => Line("a", n)).ToArray();
        var full = await Assert.ThrowsAsync<StoreFullException>(async () =>
        {
            foreach (var line in more)
            {
                await AppendAsync(id, line);
                acknowledged++;
            }
        });
        Assert.Contains("no room", full.Message, StringComparison.Ordinal);
        Assert.Equal(acknowledged, (await AllAsync(id)).Count);
        await open.PragmaAsync("max_page_count = 1000000");
        Assert.Equal(401 - acknowledged, await AppendAsync(id, more));
        Assert.Equal(Enumerable.Range(1, 401).Select(p => (long)p), (await AllAsync(id)).Select(l => l.Position));
    }

    [Fact]
    public async Task Records_of_a_later_version_are_left_alone()
    {
        await open!.PragmaAsync("user_version");
        await open.DisposeAsync();
        using (var later = new SqliteConnection($"Data Source={Path.Combine(folder, SqliteStore.FileName)};Pooling=False"))
        {
            later.Open();
            using var command = later.CreateCommand();
            command.CommandText = $"insert into version values ({Migrations.Latest(Dialect.Sqlite) + 1}, 'later')";
            command.ExecuteNonQuery();
        }

        Assert.Contains(
            "later version",
            Assert.Throws<StoreUnusableException>(() => SqliteStore.Open(folder)).Message,
            StringComparison.Ordinal
        );
    }
}
