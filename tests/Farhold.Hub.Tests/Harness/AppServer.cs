using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;

namespace Farhold.Hub.Tests.Harness;

/// <summary>The real hub on a free port of this machine; can be stopped and started again at the same address.</summary>
internal sealed class AppServer : IAsyncDisposable
{
    private WebApplication? running;

    private readonly Action<WebApplication>? more;
    private readonly HubRules rules;

    private readonly string? records;

    private AppServer(string folder, string address, Action<WebApplication>? more, HubRules? rules, string? records)
    {
        (Folder, Address, this.more, this.rules) = (folder, address, more, rules ?? new(ShippedRules.Book));
        this.records = records;
    }

    public string Folder { get; }

    public string Address { get; }

    public IServiceProvider Services => running!.Services;

    /// <param name="more">Further routes.</param>
    /// <param name="rules">Null: those that ship.</param>
    /// <param name="records">Where it keeps records of phones; null: it keeps none.</param>
    public static async Task<AppServer> StartAsync(
        string? folder = null,
        Action<WebApplication>? more = null,
        HubRules? rules = null,
        string? records = null
    )
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        var port = ((IPEndPoint)probe.LocalEndpoint).Port;
        probe.Stop();
        var server = new AppServer(folder ?? Published.Folder, $"http://127.0.0.1:{port}", more, rules, records);
        await server.StartAgainAsync();
        return server;
    }

    public async Task StartAgainAsync()
    {
        running = HubHost.Build(
            new HubOptions(Folder, Address, ["farhold.example"], Sync: records is null ? null : new(records, 1_000, 1_000)),
            rules,
            more
        );
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

    public async ValueTask DisposeAsync() => await StopAsync();
}
