using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;

namespace Farhold.Hub.Tests.Harness;

/// <summary>The real hub on a free port of this machine; can be stopped and started again at the same address.</summary>
internal sealed class AppServer : IAsyncDisposable
{
    private WebApplication? running;

    private AppServer(string folder, string address) => (Folder, Address) = (folder, address);

    public string Folder { get; }

    public string Address { get; }

    public static async Task<AppServer> StartAsync(string? folder = null)
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        var port = ((IPEndPoint)probe.LocalEndpoint).Port;
        probe.Stop();
        var server = new AppServer(folder ?? Published.Folder, $"http://127.0.0.1:{port}");
        await server.StartAgainAsync();
        return server;
    }

    public async Task StartAgainAsync()
    {
        running = HubHost.Build(new HubOptions(Folder, Address));
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
