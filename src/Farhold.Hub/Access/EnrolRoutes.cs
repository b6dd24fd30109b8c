using System.Collections.Immutable;
using Farhold.Hub.Sync;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>Devices let in, and what the hub knows of the one that asks.</summary>
internal static class EnrolRoutes
{
    private const int LongestName = 60;

    public static void MapEnrolment(this RouteGroupBuilder hub, TimeProvider clock)
    {
        hub.MapPost(
                "/devices",
                (HttpContext context, AccessStore store, AuditTrail audit) => EnrolAsync(context, store, audit, clock.Now())
            )
            .WithMetadata(new OpenTo("whoever has a code that can still be used, once"), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.FindRate);
        hub.MapGet("/me", (HttpContext context) => Results.Json(Shown(Gate.CallerOf(context).Device, clock.Now())))
            .WithMetadata(new Needs(Act.KnowOneself, MayRepeat: true))
            .RequireRateLimiting(SyncRoutes.SyncRate);
    }

    private static async Task<IResult> EnrolAsync(HttpContext context, AccessStore store, AuditTrail audit, Instant now)
    {
        var body = Gate.BodyOf(context);
        var read = new LocatedJson(body, "body", maxDepth: 2).Whole("a device", Compose);
        if (read is Read<Asked>.Refused(var why))
            return Problems.Of(StatusCodes.Status400BadRequest, "This is no device that can be enrolled.", why);
        var asked = ((Read<Asked>.Usable)read).Value;
        // Signed by the very key: nobody enrols a key that is not theirs.
        if (
            RequestSignature.Of(context.Request) is not { } signature
            || signature.Thumb != Codes.Thumb(asked.Key)
            || !signature.Covered.SequenceEqual(RequestSignature.Expected(RequestSignature.DigestHeader))
            || context.Request.Headers[RequestSignature.DigestHeader].ToString().Trim() != RequestSignature.Digest(body.Span)
            || !signature.IsBy(asked.Key, signature.Base(context.Request))
        )
            return Problems.Of(StatusCodes.Status401Unauthorized, "It is not signed by the key that it brings.", "signature");
        switch (await store.EnrolAsync(asked.Code, asked.Key, asked.Id, asked.Name, now, context.RequestAborted))
        {
            case Enrolment.Done(var device):
                await audit.AddAsync(device.Thumb, "device.enrolled", device.Thumb, now, context.RequestAborted);
                return Results.Json(Shown(device, now), statusCode: StatusCodes.Status201Created);
            case Enrolment.IdTaken:
                return Problems.Of(StatusCodes.Status409Conflict, "Another device has this id.", "id-taken");
            case Enrolment.WasRevoked:
                return Problems.Of(StatusCodes.Status403Forbidden, "This device was let out.", "revoked");
            default:
                return Problems.Of(StatusCodes.Status404NotFound, "No invitation that can still be used has this code.", "no-such-code");
        }
    }

    private static Asked? Compose(LocatedJson file, Located root)
    {
        file.OnlyKnown(root, "code", "key", "device", "name");
        var (code, key) = (file.Text(root, "code"), file.Text(root, "key"));
        var (id, name) = (file.Text(root, "device"), file.OptionalText(root, "name", LongestName));
        var bytes = new byte[65];
        if (!Convert.TryFromBase64String(key, bytes, out var length) || length != 65 || RequestSignature.ImportOf(bytes) is not { } point)
            file.Refuse(root["key"]?.Offset ?? root.Offset, "key is no point of P-256: 65 bytes in base64, uncompressed");
        else
            point.Dispose();
        if (EntryId.TryParse(id + "-1") is not { } entry || entry.Device != id)
            file.Refuse(root["device"]?.Offset ?? root.Offset, "device is no id of a device");
        return new(code, bytes, id, name);
    }

    /// <summary>What a device is told of itself.</summary>
    private static object Shown(Device device, Instant now) =>
        new
        {
            thumb = device.Thumb,
            role = Wire.Word(device.Role),
            team = device.Team,
            name = device.Name,
            digits = device.Digits,
            confirmed = device.Confirmed is not null,
            now = WrittenInstant.Write(now),
        };

    private sealed record Asked(string Code, byte[] Key, string Id, string Name);
}
