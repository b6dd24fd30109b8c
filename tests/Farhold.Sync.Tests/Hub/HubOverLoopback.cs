using System.Net;
using System.Net.Sockets;
using Farhold.Hub;
using Farhold.Hub.Storage;
using Farhold.Hub.Sync;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.Sync.Tests.Hub;

/// <summary>The real hub on a free port of this machine, with a store of its own; it can be stopped and started again.</summary>
internal sealed class HubOverLoopback : IAsyncDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("farhold-hub-").FullName;
    private WebApplication? running;

    public HubOverLoopback(Func<SyncOptions, SyncOptions>? change = null)
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        Port = ((IPEndPoint)probe.LocalEndpoint).Port;
        File.WriteAllText(Path.Combine(folder, "index.html"), "<!DOCTYPE html><title>Farhold</title>");
        var sync = new SyncOptions(Path.Combine(folder, "records"), 1_000, 1_000);
        Options = new(folder, $"http://127.0.0.1:{Port}", Sync: change is null ? sync : change(sync));
    }

    public int Port { get; }

    public HubOptions Options { get; set; }

    /// <summary>Of the hub that runs now.</summary>
    public IRecordStore Store => running!.Services.GetRequiredService<IRecordStore>();

    public static async Task<HubOverLoopback> StartAsync(Func<SyncOptions, SyncOptions>? change = null)
    {
        var hub = new HubOverLoopback(change);
        await hub.StartAgainAsync();
        return hub;
    }

    public async Task StartAgainAsync()
    {
        running = HubHost.Build(Options, new(ShippedRules.Book));
        await running.StartAsync();
    }

    public async Task StopAsync()
    {
        if (running is null)
            return;
        using var now = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        await running.StopAsync(now.Token);
        await running.DisposeAsync();
        running = null;
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, true);
    }
}
