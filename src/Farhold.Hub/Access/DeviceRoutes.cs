using Farhold.Hub.Sync;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>For coordinators and owners: who is enrolled, who is invited, and which device may see a casualty.</summary>
internal static class DeviceRoutes
{
    /// <summary>On a screen; printed for a trip it may be longer.</summary>
    private static readonly Duration Shortest = Duration.FromMinutes(15),
        Longest = Duration.FromDays(14);

    private const int LongestName = 60,
        MostRows = 200;

    public static void MapDevices(this RouteGroupBuilder hub, TimeProvider clock)
    {
        hub.MapGet("/devices", ListAsync).WithMetadata(new Needs(Act.Invite, MayRepeat: true)).RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapPost(
                "/devices/{thumb}/confirm",
                (HttpContext c, AccessStore s, AuditTrail a, string thumb) => ConfirmAsync(c, s, a, thumb, clock.Now())
            )
            .WithMetadata(new Needs(Act.Invite), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapPost(
                "/devices/{thumb}/revoke",
                (HttpContext c, AccessStore s, AuditTrail a, string thumb) => RevokeAsync(c, s, a, thumb, clock.Now())
            )
            .WithMetadata(new Needs(Act.Revoke), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapPost("/invitations", (HttpContext c, AccessStore s, AuditTrail a) => InviteAsync(c, s, a, clock.Now()))
            .WithMetadata(new Needs(Act.Invite), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapPost(
                "/casualties/{id}/given/{thumb}",
                (HttpContext c, AccessStore s, AuditTrail a, string id, string thumb) => GiveAsync(c, s, a, id, thumb, clock.Now())
            )
            .WithMetadata(new Needs(Act.Give), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapDelete(
                "/casualties/{id}/given/{thumb}",
                (HttpContext c, AccessStore s, AuditTrail a, string id, string thumb) => TakeAwayAsync(c, s, a, id, thumb, clock.Now())
            )
            .WithMetadata(new Needs(Act.Give))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapGet("/audit", AuditAsync).WithMetadata(new Needs(Act.Audit, MayRepeat: true)).RequireRateLimiting(SyncRoutes.SyncRate);
    }

    private static async Task<IResult> ListAsync(HttpContext context, AccessStore store)
    {
        var caller = Gate.CallerOf(context);
        var all = await store.DevicesAsync(caller.Reach == Reach.All ? null : caller.Device.Team, context.RequestAborted);
        return Results.Json(all.Select(Shown));
    }

    private static async Task<IResult> ConfirmAsync(HttpContext context, AccessStore store, AuditTrail audit, string thumb, Instant now)
    {
        if (await OfTeamAsync(context, store, thumb) is not { } device)
            return NoSuchDevice();
        if (!Rights.MayInvite(Gate.CallerOf(context).Device.Role, device.Role))
            return Problems.Of(StatusCodes.Status403Forbidden, "That is not for this role.", "not-this-role");
        if (!await store.ConfirmAsync(thumb, now, context.RequestAborted))
            return Problems.Of(StatusCodes.Status409Conflict, "This device does not wait for it.", "not-waiting");
        await audit.AddAsync(Gate.CallerOf(context).Device.Thumb, "device.confirmed", thumb, now, context.RequestAborted);
        return Results.NoContent();
    }

    private static async Task<IResult> RevokeAsync(HttpContext context, AccessStore store, AuditTrail audit, string thumb, Instant now)
    {
        var caller = Gate.CallerOf(context);
        if (await OfTeamAsync(context, store, thumb) is not { } device)
            return NoSuchDevice();
        if (device.Role == HubRole.Owner && caller.Device.Role != HubRole.Owner)
            return Problems.Of(StatusCodes.Status403Forbidden, "That is not for this role.", "not-this-role");
        if (!await store.RevokeAsync(thumb, now, context.RequestAborted))
            return Problems.Of(StatusCodes.Status409Conflict, "This device is out already.", "revoked");
        await audit.AddAsync(caller.Device.Thumb, "device.revoked", thumb, now, context.RequestAborted);
        return Results.NoContent();
    }

    private static async Task<IResult> InviteAsync(HttpContext context, AccessStore store, AuditTrail audit, Instant now)
    {
        var caller = Gate.CallerOf(context);
        switch (
            new LocatedJson(Gate.BodyOf(context), "body", maxDepth: 2).Whole("an invitation", (f, r) => Compose(f, r, caller.Device, now))
        )
        {
            case Read<Invitation>.Refused(var why):
                return Problems.Of(StatusCodes.Status400BadRequest, "This is no invitation.", why);
            case Read<Invitation>.Usable(var invitation):
                if (!Rights.MayInvite(caller.Device.Role, invitation.Role))
                    return Problems.Of(StatusCodes.Status403Forbidden, "That is not for this role.", "not-this-role");
                var code = await store.InviteAsync(invitation, caller.Device.Thumb, now, context.RequestAborted);
                await audit.AddAsync(
                    caller.Device.Thumb,
                    $"invitation.{Wire.Word(invitation.Role)}",
                    invitation.Team,
                    now,
                    context.RequestAborted
                );
                return Results.Json(
                    new { code = Codes.Grouped(code), until = WrittenInstant.Write(invitation.Until) },
                    statusCode: StatusCodes.Status201Created
                );
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static Invitation? Compose(LocatedJson file, Located root, Device by, Instant now)
    {
        file.OnlyKnown(root, "role", "team", "name", "minutes", "beforehand");
        var role = file.Word<HubRole>(root, "role");
        var name = file.OptionalText(root, "name", LongestName);
        var team = root["team"] is { } other && by.Role == HubRole.Owner ? file.TextOf(other, "team", LongestName) ?? "" : by.Team;
        var minutes = root["minutes"] is { } span
            ? file.Number(span, "minutes", Shortest.TotalMinutes, Longest.TotalMinutes, whole: true)
            : Shortest.TotalMinutes;
        var beforehand = root["beforehand"] is not null && file.Flag(root, "beforehand");
        if (beforehand && role != HubRole.Carer)
            file.Refuse(root["beforehand"]!.Offset, "only a carer is confirmed beforehand");
        return minutes is { } lasting ? new(role, Plain.Line(team), name, now + Duration.FromMinutes(lasting), beforehand) : null;
    }

    private static async Task<IResult> GiveAsync(
        HttpContext context,
        AccessStore store,
        AuditTrail audit,
        string id,
        string thumb,
        Instant now
    )
    {
        if (await OfTeamAsync(context, store, thumb) is null)
            return NoSuchDevice();
        var by = Gate.CallerOf(context).Device.Thumb;
        if (await store.GiveAsync(id, thumb, by, now, context.RequestAborted))
            await audit.AddAsync(by, $"casualty.given {thumb}", id, now, context.RequestAborted);
        return Results.NoContent();
    }

    private static async Task<IResult> TakeAwayAsync(
        HttpContext context,
        AccessStore store,
        AuditTrail audit,
        string id,
        string thumb,
        Instant now
    )
    {
        if (await store.TakeAwayAsync(id, thumb, context.RequestAborted))
            await audit.AddAsync(Gate.CallerOf(context).Device.Thumb, $"casualty.taken-away {thumb}", id, now, context.RequestAborted);
        return Results.NoContent();
    }

    private static async Task<IResult> AuditAsync(HttpContext context, AccessStore store, AuditTrail audit)
    {
        var caller = Gate.CallerOf(context);
        var about = caller.Reach switch
        {
            Reach.All => null,
            Reach.Team =>
            [
                .. (await store.DevicesAsync(caller.Device.Team, context.RequestAborted)).Select(d => d.Thumb),
                .. (await store.CasualtiesAsync(context.RequestAborted)).Where(c => c.Team == caller.Device.Team).Select(c => c.Casualty),
            ],
            _ => System.Collections.Immutable.ImmutableHashSet.Create(caller.Device.Thumb),
        };
        return Results.Json(
            (await audit.LatestAsync(MostRows, about, context.RequestAborted)).Select(a => new
            {
                position = a.Position,
                at = WrittenInstant.Write(a.At),
                who = a.Who,
                what = a.What,
                about = a.About,
            })
        );
    }

    /// <summary>A device that the caller may decide on; null where there is none.</summary>
    private static async Task<Device?> OfTeamAsync(HttpContext context, AccessStore store, string thumb)
    {
        var caller = Gate.CallerOf(context);
        var device = await store.DeviceAsync(thumb, context.RequestAborted);
        return device is not null && (caller.Reach == Reach.All || device.Team == caller.Device.Team) ? device : null;
    }

    private static object Shown(Device device) =>
        new
        {
            thumb = device.Thumb,
            device = device.Id,
            name = device.Name,
            role = Wire.Word(device.Role),
            team = device.Team,
            digits = device.Digits,
            enrolled = WrittenInstant.Write(device.Enrolled),
            confirmed = device.Confirmed is not null,
            revoked = device.Revoked is not null,
        };

    private static IResult NoSuchDevice() => Problems.Of(StatusCodes.Status404NotFound, "There is no such device here.", "no-such-device");
}
