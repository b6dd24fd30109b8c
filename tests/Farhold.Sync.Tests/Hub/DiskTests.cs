using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Farhold.Hub.Storage;
using Farhold.Hub.Verbs;
using Microsoft.Data.Sqlite;

namespace Farhold.Sync.Tests.Hub;

/// <summary>The store on a real disk that is full, and what it asks of the disk before it acknowledges.</summary>
public sealed partial class DiskTests(ITestOutputHelper output)
{
    private static readonly Instant Noon = Instant.FromUtc(2031, 5, 4, 12, 0);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>A file system of 8 MB of its own, filled up by something else, then with room again.</summary>
    [Fact]
    public async Task On_a_disk_that_is_really_full_nothing_is_acknowledged_that_is_not_kept()
    {
        Assert.SkipUnless(Environment.UserName == "root", "Only root may mount; SqliteStoreTests fills a file that may not grow.");
        await using var disk = await SmallDisk.MountAsync();
        output.WriteLine(disk.Kind);
        var folder = Path.Combine(disk.Folder, "records");
        var acknowledged = 0;
        string id;
        await using (var store = SqliteStore.Open(folder))
        {
            id = (await store.FindAsync(Roots.Of([Held(1)]), Noon, Stop)).Certain!;
            await AppendAsync(1);
            Fill(disk.Ballast, leave: 200_000);
            var full = await Assert.ThrowsAsync<StoreFullException>(async () =>
            {
                while (acknowledged < 20_000)
                    await AppendAsync(acknowledged + 1);
            });
            output.WriteLine($"{acknowledged} lines acknowledged, then: {full.Message} {full.InnerException!.Message}");
            Assert.Equal(acknowledged, (await store.SinceAsync(id, 0, Stop))!.Value.Length);
            await Assert.ThrowsAsync<StoreFullException>(() => AppendAsync(acknowledged + 1));
            File.Delete(disk.Ballast);
            for (var more = 0; more < 100; more++)
                await AppendAsync(acknowledged + 1);

            async Task AppendAsync(int number)
            {
                Assert.Equal(1, await store.AppendAsync(new(id, [Held(number)], "here", Noon), Stop));
                acknowledged = number;
            }
        }

        await using (var again = SqliteStore.Open(folder))
        {
            var lines = (await again.SinceAsync(id, 0, Stop))!.Value;
            Assert.Equal(Enumerable.Range(1, acknowledged).Select(n => (long)n), lines.Select(l => l.Position));
            Assert.Equal(
                Enumerable.Range(1, acknowledged).Select(n => Encoding.UTF8.GetString(Held(n).Bytes.Span)),
                lines.Select(l => Encoding.UTF8.GetString(l.Bytes.Span))
            );
        }

        using var said = new StringWriter(CultureInfo.InvariantCulture);
        Assert.Equal(0, await Verb.RunAsync(["verify", folder], said, said));
        SqliteConnection.ClearAllPools();
    }

    /// <summary>
    /// Of the hub as a process, by the calls it makes: whatever was written to the log has been synced to the disk before a byte of an
    /// answer goes out.
    /// </summary>
    [Fact]
    public async Task An_answer_goes_out_only_after_the_disk_has_said_that_the_log_is_on_it()
    {
        const int Syncs = 12;
        await using var place = new HubOverLoopback(); // only for its folder and port
        var calls = Path.Combine(place.Options.AppFolder, "calls");
        using (var hub = Start(place, calls))
            try
            {
                await KillTests.UpAsync(place.Port);
                var phone = new Side("a7k3") { Hint = Head.Empty };
                phone.Write("first");
                using var client = new PhoneClient(phone, place);
                await client.FindAsync();
                for (var i = 0; i < Syncs; i++)
                {
                    phone.Write("one more");
                    Assert.Equal(HttpStatusCode.OK, await client.SyncAsync());
                    Assert.Equal(phone.Lines.Vector, phone.Hint!.Have);
                }
            }
            finally
            {
                hub.Kill(entireProcessTree: true);
                await hub.WaitForExitAsync(Stop);
            }

        var (writes, flushes, answers, early) = Order(File.ReadLines(calls), place.Port);
        output.WriteLine($"{writes} writes to the log, {flushes} flushes of it, {answers} answers, {early} of them too early");
        Assert.InRange(writes, Syncs, int.MaxValue);
        Assert.InRange(flushes, Syncs, int.MaxValue);
        Assert.InRange(answers, Syncs, int.MaxValue);
        Assert.Equal(0, early);
    }

    [Theory]
    [InlineData("1 pwrite64(9</r/records.sqlite-wal>, \"\", 4096, 32) = 4096\n1 sendto(7<TCP:[127.0.0.1:5->127.0.0.1:6]>, \"\"", 1)]
    [InlineData(
        "1 pwrite64(9</r/records.sqlite-wal>, \"\", 4096, 32) = 4096\n1 fdatasync(9</r/records.sqlite-wal>) = 0\n2 sendto(7<TCP:[127.0.0.1:5->1]>",
        0
    )]
    [InlineData(
        "1 pwrite64(9</r/records.sqlite-wal>, \"\" = 4\n1 fdatasync(9</r/records.sqlite-wal> <unfinished ...>\n2 sendto(7<TCP:[127.0.0.1:5->1]>",
        1
    )]
    [InlineData(
        "1 pwrite64(9</r/records.sqlite-wal>, \"\" = 4\n1 fdatasync(9</r/records.sqlite-wal> <unfinished ...>\n"
            + "1 <... fdatasync resumed>) = 0\n2 sendto(7<TCP:[127.0.0.1:5->1]>",
        0
    )]
    public void An_answer_that_goes_out_too_early_would_be_seen(string calls, int early) =>
        Assert.Equal(early, Order(calls.Split('\n'), 5).Early);

    /// <param name="calls">As strace writes them, with what the descriptors stand for.</param>
    private static (int Writes, int Flushes, int Answers, int Early) Order(IEnumerable<string> calls, int port)
    {
        var (writes, flushes, answers, early) = (0, 0, 0, 0);
        var unsynced = false;
        var flushing = new HashSet<string>();
        foreach (var call in calls.Select(c => Call().Match(c)).Where(m => m.Success))
        {
            var (thread, name, resumed) = (call.Groups["thread"].Value, call.Groups["name"].Value, call.Groups["resumed"].Success);
            var rest = call.Groups["rest"].Value;
            if (name is "fdatasync" or "fsync")
            {
                if (!resumed && !rest.Contains("records.sqlite-wal>", StringComparison.Ordinal))
                    continue;
                if (rest.EndsWith("<unfinished ...>", StringComparison.Ordinal))
                    flushing.Add(thread);
                else if (rest.EndsWith("= 0", StringComparison.Ordinal) && (!resumed || flushing.Remove(thread)))
                    (unsynced, flushes) = (false, flushes + 1);
            }
            else if (!resumed && name.StartsWith("pwrite", StringComparison.Ordinal))
            {
                if (rest.Contains("records.sqlite-wal>", StringComparison.Ordinal))
                    (unsynced, writes) = (true, writes + 1);
            }
            else if (!resumed && rest.Contains(string.Create(CultureInfo.InvariantCulture, $":{port}->"), StringComparison.Ordinal))
            {
                answers++;
                early += unsynced ? 1 : 0;
            }
        }

        return (writes, flushes, answers, early);
    }

    [GeneratedRegex(
        @"^(?<thread>\d+) +(?<resumed><\.\.\. )?(?<name>pwrite64|pwritev|fdatasync|fsync|sendto|sendmsg|writev|write)(?<rest>\b.*)$"
    )]
    private static partial Regex Call();

    private static Process Start(HubOverLoopback place, string calls)
    {
        var start = new ProcessStartInfo("strace")
        {
            RedirectStandardOutput = true,
            ArgumentList =
            {
                "-f",
                "-yy",
                "--seccomp-bpf",
                "-s",
                "0",
                "-e",
                "trace=pwrite64,pwritev,fdatasync,fsync,sendto,sendmsg,write,writev",
                "-o",
                calls,
                "dotnet",
                Path.Combine(AppContext.BaseDirectory, "Farhold.Hub.dll"),
                "--app",
                place.Options.AppFolder,
                "--urls",
                place.Options.Listen,
                "--records",
                place.Options.Sync!.Folder,
            },
        };
        return Process.Start(start)!;
    }

    private static void Fill(string file, long leave)
    {
        using var stream = new FileStream(file, FileMode.Create);
        var free = new DriveInfo(Path.GetDirectoryName(file)!).AvailableFreeSpace;
        var part = new byte[50_000];
        for (; free > leave; free -= part.Length)
            stream.Write(part);
        stream.Flush(flushToDisk: true);
    }

    private static HeldLine Held(int number) =>
        HeldLine.Of(
            Encoding.UTF8.GetBytes(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{{\"id\":\"a-{number}\",\"kind\":\"note\",\"text\":\"calm {new string('x', 200)}\"}}"
                )
            )
        )!;

    /// <summary>An ext4 in a file where the machine lets a file be mounted, else a part of memory with a limit.</summary>
    private sealed class SmallDisk : IAsyncDisposable
    {
        private readonly string root = Directory.CreateTempSubdirectory("farhold-disk-").FullName;

        public string Folder => Path.Combine(root, "disk");

        public string Ballast => Path.Combine(Folder, "ballast");

        public string Kind { get; private set; } = "";

        public static async Task<SmallDisk> MountAsync()
        {
            var disk = new SmallDisk();
            Directory.CreateDirectory(disk.Folder);
            var image = Path.Combine(disk.root, "image");
            await using (var file = File.Create(image))
                file.SetLength(8 << 20);
            if (
                await RunAsync("mkfs.ext4", "-q", "-O", "^has_journal", image) is ""
                && await RunAsync("mount", "-o", "loop", image, disk.Folder) is ""
            )
                disk.Kind = "ext4 in a file";
            else if (await RunAsync("mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", disk.Folder) is { Length: > 0 } why)
                throw new InvalidOperationException($"Nothing can be mounted here: {why}");
            else
                disk.Kind = "tmpfs";
            return disk;
        }

        public async ValueTask DisposeAsync()
        {
            SqliteConnection.ClearAllPools();
            await RunAsync("umount", Folder);
            Directory.Delete(root, true);
        }

        /// <returns>What went wrong; empty where nothing did.</returns>
        private static async Task<string> RunAsync(string program, params string[] arguments)
        {
            var start = new ProcessStartInfo(program, arguments) { RedirectStandardError = true };
            using var process = Process.Start(start)!;
            var wrong = await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            return process.ExitCode == 0 ? "" : $"{program} ended with {process.ExitCode}: {wrong}";
        }
    }
}
