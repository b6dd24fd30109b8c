using System.Net;
using System.Net.Sockets;

namespace Farhold.Sync.Tests.Hub;

/// <summary>A TCP relay that behaves as a poor radio link does.</summary>
internal sealed class BadLink : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource end = new();
    private readonly int target;
    private readonly List<Task> relays = [];
    private long up;
    private long down;

    /// <param name="target">Port of the hub.</param>
    public BadLink(int target)
    {
        this.target = target;
        listener.Start();
        relays.Add(AcceptAsync());
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>Bits a second, to the hub and back; 0: as fast as it goes.</summary>
    public (int Up, int Down) Rate { get; set; }

    /// <summary>Each way.</summary>
    public TimeSpan Delay { get; set; }

    /// <summary>Bytes to the hub after which connections are reset; null: none are.</summary>
    public long? CutUp { get; set; }

    /// <summary>The same for bytes from the hub.</summary>
    public long? CutDown { get; set; }

    public long Up => Interlocked.Read(ref up);

    public long Down => Interlocked.Read(ref down);

    public async ValueTask DisposeAsync()
    {
        await end.CancelAsync();
        listener.Dispose();
        await Task.WhenAll(relays).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        end.Dispose();
    }

    private async Task AcceptAsync()
    {
        while (!end.IsCancellationRequested)
        {
            var phone = await listener.AcceptTcpClientAsync(end.Token);
            relays.Add(RelayAsync(phone));
        }
    }

    private async Task RelayAsync(TcpClient phone)
    {
        using (phone)
        using (var hub = new TcpClient())
        using (var either = CancellationTokenSource.CreateLinkedTokenSource(end.Token))
        {
            phone.NoDelay = hub.NoDelay = true;
            await hub.ConnectAsync(IPAddress.Loopback, target, end.Token);
            var there = CopyAsync(phone, hub, () => (Rate.Up, CutUp), n => Interlocked.Add(ref up, n), either.Token);
            var back = CopyAsync(hub, phone, () => (Rate.Down, CutDown), n => Interlocked.Add(ref down, n), either.Token);
            await Task.WhenAny(there, back);
            if (there.IsFaulted || back.IsFaulted)
                phone.Client.LingerState = hub.Client.LingerState = new(true, 0); // a reset, not an orderly end
            else
                await Task.WhenAny(Task.WhenAll(there, back), Task.Delay(2_000, end.Token));
            await either.CancelAsync();
            await Task.WhenAll(there, back).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <summary>What comes is sent on at the rate, and arrives after the delay; reading goes on meanwhile.</summary>
    private async Task CopyAsync(
        TcpClient from,
        TcpClient to,
        Func<(int Rate, long? Cut)> limits,
        Func<int, long> count,
        CancellationToken stop
    )
    {
        var (read, buffer) = (from.GetStream(), new byte[512]);
        var write = to.GetStream();
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var free = TimeSpan.Zero;
        var (first, last) = (Delay, Task.CompletedTask);
        for (int n; (n = await read.ReadAsync(buffer, stop)) > 0; )
        {
            var (rate, cut) = limits();
            var copy = buffer.AsSpan(0, n).ToArray();
            free = (free > clock.Elapsed ? free : clock.Elapsed) + (rate == 0 ? TimeSpan.Zero : TimeSpan.FromSeconds(n * 8.0 / rate));
            last = SendAsync(last, free + first, copy);
            if (free > clock.Elapsed)
                await Task.Delay(free - clock.Elapsed, stop);
            var total = count(n);
            if (total > cut)
            {
                await last;
                throw new IOException("cut");
            }
        }

        await last;
        to.Client.Shutdown(SocketShutdown.Send);

        async Task SendAsync(Task before, TimeSpan at, byte[] bytes)
        {
            await before;
            if (at > clock.Elapsed)
                await Task.Delay(at - clock.Elapsed, stop);
            await write.WriteAsync(bytes, stop);
        }
    }
}
