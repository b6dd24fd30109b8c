using System.Net;
using System.Net.Sockets;
using Farhold.Hub;
using Farhold.Hub.Access;
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

    /// <summary>The services of the hub that runs in this process.</summary>
    public IServiceProvider Services => running!.Services;

    /// <summary>
    /// A code that lets one device in, made at the console; the hub may run in this process, in another one, or not at all.
    /// </summary>
    public async Task<string> InviteAsync(HubRole role = HubRole.Carer, string team = "watch", bool beforehand = true)
    {
        var now = SystemClock.Instance.GetCurrentInstant();
        var invitation = new Invitation(role, team, "somebody", now + Duration.FromHours(1), beforehand);
        if (running is not null)
            return await ((AccessStore)Services.GetService(typeof(AccessStore))!).InviteAsync(invitation, "console", now);
        await using var store = SqliteStore.Open(Options.Sync!.Folder);
        return await new AccessStore(store.Rows).InviteAsync(invitation, "console", now);
    }

    /// <summary>A device that was let in.</summary>
    public async Task<Signer> EnrolAsync(HubRole role = HubRole.Carer, string team = "watch", string? device = null, bool beforehand = true)
    {
        var signer = new Signer();
        using var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{Port}") };
        device ??= $"d{signer.Thumb[..8]}";
        using var answer = await signer.EnrolAsync(client, Port, await InviteAsync(role, team, beforehand), device);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync());
        return signer;
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
