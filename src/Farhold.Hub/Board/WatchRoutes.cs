using System.Globalization;
using System.Text;
using Farhold.Hub.Access;
using Farhold.Hub.Sync;
using Microsoft.AspNetCore.Http.Features;
using NodaTime;

namespace Farhold.Hub.Board;

/// <summary>The board: all casualties that a device may see, and what changes, as server-sent events.</summary>
internal static class WatchRoutes
{
    /// <summary>Between two signs of life; proxies end a stream that is still for a minute.</summary>
    private static readonly TimeSpan Alive = TimeSpan.FromSeconds(20);

    public static void MapWatch(this RouteGroupBuilder hub, TimeProvider clock)
    {
        hub.MapGet("/casualties", ListAsync).WithMetadata(new Needs(Act.Watch, MayRepeat: true)).RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapGet("/watch", (HttpContext context, WatchBoard board, AccessStore access) => WatchAsync(context, board, access, clock))
            .WithMetadata(new Needs(Act.Watch, MayRepeat: true))
            .RequireRateLimiting(SyncRoutes.SyncRate)
            .DisableRequestTimeout();
    }

    private static async Task<IResult> ListAsync(HttpContext context, WatchBoard board)
    {
        var caller = Gate.CallerOf(context);
        var all = await board.AllAsync(caller.Device, caller.Reach, context.RequestAborted);
        return Results.Text($"[{string.Join(',', all.Select(s => s.Json))}]", SyncRoutes.Json, Encoding.UTF8);
    }

    /// <summary>First every casualty, then each that changes. Who is let out sees nothing more from the next event on.</summary>
    private static async Task WatchAsync(HttpContext context, WatchBoard board, AccessStore access, TimeProvider clock)
    {
        var (caller, leaving) = (Gate.CallerOf(context), context.RequestAborted);
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers["X-Accel-Buffering"] = "no";
        context.Features.Get<IHttpResponseBodyFeature>()?.DisableBuffering();
        if (context.Features.Get<Microsoft.AspNetCore.Server.Kestrel.Core.Features.IHttpMinResponseDataRateFeature>() is { } rate)
            rate.MinDataRate = null;
        using var gone = CancellationTokenSource.CreateLinkedTokenSource(leaving);
        try
        {
            var changes = board.Watch(gone.Token); // before the first picture, so that nothing falls between
            foreach (var one in await board.AllAsync(caller.Device, caller.Reach, leaving))
                await SendAsync(context, "standing", one.Json);
            await SendAsync(context, "all", Now(clock));
            var more = changes.WaitToReadAsync(leaving).AsTask();
            while (true)
            {
                var first = await Task.WhenAny(more, Task.Delay(Alive, clock, leaving));
                leaving.ThrowIfCancellationRequested();
                if (await access.DeviceAsync(caller.Device.Thumb, leaving) is not { Revoked: null })
                    return;
                if (first != more)
                {
                    await SendAsync(context, "alive", Now(clock));
                    continue;
                }

                if (!await more)
                    return;
                while (changes.TryRead(out var changed))
                    if (await access.MaySeeAsync(caller.Device, caller.Reach, changed.Id, leaving))
                        await SendAsync(context, "standing", changed.Json);
                more = changes.WaitToReadAsync(leaving).AsTask();
            }
        }
        finally
        {
            await gone.CancelAsync();
        }
    }

    private static async Task SendAsync(HttpContext context, string name, string data)
    {
        await context.Response.WriteAsync(
            string.Create(CultureInfo.InvariantCulture, $"event: {name}\ndata: {data}\n\n"),
            context.RequestAborted
        );
        await context.Response.Body.FlushAsync(context.RequestAborted);
    }

    private static string Now(TimeProvider clock) => $"\"{WrittenInstant.Write(clock.Now())}\"";
}
