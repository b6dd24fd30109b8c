using System.Collections.Concurrent;
using Farhold.Hub.Board;
using Farhold.Hub.Storage;
using Farhold.Hub.Sync;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>A casualty erased at the hub: asked for by one person and done by another, one of them an owner.</summary>
internal static class ErasureRoutes
{
    private const int LongestReason = 300;

    public static void MapErasure(this RouteGroupBuilder hub, TimeProvider clock) =>
        hub.MapPost(
                "/casualties/{id}/erase",
                (HttpContext context, Erasures erasures, string id) => erasures.AskAsync(context, id, clock.Now())
            )
            .WithMetadata(new Needs(Act.Erase), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.SyncRate);

    /// <summary>Null where none is given.</summary>
    public static string? Reason(ReadOnlyMemory<byte> body) =>
        new LocatedJson(body, "body", maxDepth: 2).Whole("an erasure", (file, root) => file.OptionalText(root, "reason", LongestReason))
            is Read<string>.Usable { Value: { Length: > 0 } reason }
            ? reason
            : null;
}

/// <summary>Erasures that one person has asked for. Kept in memory: after a start they are asked for anew.</summary>
internal sealed class Erasures(IRecordStore store, SyncDesk desk, WatchBoard board, AuditTrail audit)
{
    /// <summary>Design: the second person has a day.</summary>
    private static readonly Duration Lasts = Duration.FromHours(24);

    private readonly ConcurrentDictionary<string, (Device By, Instant At)> asked = new(StringComparer.Ordinal);

    public async Task<IResult> AskAsync(HttpContext context, string id, Instant now)
    {
        var by = Gate.CallerOf(context).Device;
        if (ErasureRoutes.Reason(Gate.BodyOf(context)) is not { } reason)
            return Problems.Of(StatusCodes.Status400BadRequest, "Why it is erased has to be said.", "reason");
        if (!asked.TryGetValue(id, out var first) || now - first.At > Lasts || first.By.Thumb == by.Thumb)
        {
            asked[id] = (by, now);
            await audit.AddAsync(by.Thumb, "erasure.asked", id, now, context.RequestAborted);
            return Results.Json(new { erased = false, waits = "a second person" }, statusCode: StatusCodes.Status202Accepted);
        }

        if (first.By.Role != HubRole.Owner && by.Role != HubRole.Owner)
            return Problems.Of(StatusCodes.Status403Forbidden, "One of the two has to be an owner.", "not-this-role");
        if (!asked.TryRemove(new(id, first)))
            return Problems.Of(StatusCodes.Status409Conflict, "Somebody else has just done it.", "erased");
        await store.EraseAsync(id, by.Thumb, reason, now, CancellationToken.None);
        desk.Forget(id);
        board.Changed(id);
        await audit.AddAsync(by.Thumb, "casualty.erased", id, now, CancellationToken.None);
        return Results.Json(new { erased = true });
    }
}
