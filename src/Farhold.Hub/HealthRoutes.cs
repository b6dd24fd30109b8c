using System.Net;
using Farhold.Hub.Access;
using Farhold.Hub.Sync;

namespace Farhold.Hub;

/// <summary>For whoever keeps the hub running: whether it lives, and whether it can do its work.</summary>
internal static class HealthRoutes
{
    /// <summary>Design: with less room a disk fills while nobody looks.</summary>
    private const double LeastFree = 0.05;

    public static void MapHealth(this RouteGroupBuilder hub, SyncOptions options)
    {
        hub.MapGet("/alive", () => Results.Text("alive\n")).WithMetadata(new OpenTo("one word"));
        hub.MapGet("/ready", (HttpContext context, AccessStore access) => ReadyAsync(context, access, options))
            .WithMetadata(new OpenTo("answered to this machine alone, without any record"));
    }

    private static async Task<IResult> ReadyAsync(HttpContext context, AccessStore access, SyncOptions options)
    {
        if (context.Connection.RemoteIpAddress is not { } from || !IPAddress.IsLoopback(from))
            return Results.NotFound();
        var wrong = new List<string>();
        try
        {
            await access.DevicesAsync(null, context.RequestAborted);
        }
        catch (Exception e) when (e is IOException or System.Data.Common.DbException)
        {
            wrong.Add("the store can't be read");
        }

        if (Free(options.Folder) is { } free && free < LeastFree)
            wrong.Add("the disk is nearly full");
        return wrong.Count == 0
            ? Results.Text("ready\n")
            : Results.Text(string.Concat(wrong.Select(w => w + "\n")), statusCode: StatusCodes.Status503ServiceUnavailable);
    }

    /// <summary>The part of the disk that is free; null where nobody tells.</summary>
    private static double? Free(string folder)
    {
        try
        {
            var drive = new DriveInfo(folder);
            return drive.TotalSize > 0 ? (double)drive.AvailableFreeSpace / drive.TotalSize : null;
        }
        catch (Exception e) when (e is IOException or ArgumentException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
