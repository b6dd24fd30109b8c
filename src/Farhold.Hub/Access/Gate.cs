using System.Diagnostics.CodeAnalysis;
using Farhold.Hub.Storage;
using Farhold.Hub.Sync;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>A route asks for a device that may do this; where it has an <c>id</c>, with this casualty.</summary>
/// <param name="MayRepeat">Asking twice does the same as asking once, so that a repeated request need not be refused.</param>
internal sealed record Needs(Act Act, bool MayRepeat = false);

/// <summary>A route is open to everybody.</summary>
/// <param name="Why">What makes that safe.</param>
internal sealed record OpenTo(string Why)
{
    /// <summary>Its addresses have a query, which holds nothing that must not be in a log.</summary>
    public bool HasQuery { get; init; }
}

/// <summary>Whose request this is.</summary>
/// <param name="Base">What was signed.</param>
internal sealed record Caller(Device Device, Reach Reach, RequestSignature Signature, string Base);

/// <summary>
/// Every request for the hub's own routes passes here: who signed it, and whether that device may do this with this casualty.
/// A route that says neither what it needs nor why it is open is refused.
/// </summary>
internal sealed class Gate(AccessStore store, Nonces nonces, TimeProvider clock)
{
    /// <summary>Largest body that is read whole to check its digest.</summary>
    public const int MostBody = 256 * 1024;

    public static string Prefix => "/hub";

    /// <summary>Who asks, once the gate has let the request pass.</summary>
    public static Caller CallerOf(HttpContext context) => (Caller)context.Items[typeof(Caller)]!;

    /// <summary>The body as it was signed.</summary>
    public static ReadOnlyMemory<byte> BodyOf(HttpContext context) => (ReadOnlyMemory<byte>)context.Items[typeof(byte[])]!;

    public async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        if (context.GetEndpoint() is not { } endpoint || !context.Request.Path.StartsWithSegments(Prefix, StringComparison.Ordinal))
        {
            await next(context);
            return;
        }

        context.Response.Headers.CacheControl = "no-store";
        if (context.Request.QueryString.HasValue && endpoint.Metadata.GetMetadata<OpenTo>() is not { HasQuery: true })
        {
            await Problems.Of(StatusCodes.Status400BadRequest, "An address here has no query.").ExecuteAsync(context);
            return;
        }

        try
        {
            await LetInAsync(context, endpoint, next);
        }
        catch (Exception e) when (Outage.IsOne(e) && !context.Response.HasStarted)
        {
            await Problems.Away.ExecuteAsync(context);
        }
    }

    private async Task LetInAsync(HttpContext context, Endpoint endpoint, RequestDelegate next)
    {
        var refusal =
            endpoint.Metadata.GetMetadata<OpenTo>() is not null ? await ReadAsync(context)
            : endpoint.Metadata.GetMetadata<Needs>() is { } needs ? await RefusalAsync(context, needs)
            : Problems.Of(StatusCodes.Status403Forbidden, "Nobody has said who may ask this.", "no-rule");
        if (refusal is null)
            await next(context);
        else
            await refusal.ExecuteAsync(context);
    }

    private async Task<IResult?> RefusalAsync(HttpContext context, Needs needs)
    {
        var request = context.Request;
        if (RequestSignature.Of(request) is not { } signature)
            return Unsigned("Asked without a signature that can be read.", "signature");
        var now = clock.Now();
        if (BodyHeader(context) is var header && !signature.Covered.SequenceEqual(RequestSignature.Expected(header)))
            return Unsigned("The signature does not cover what it has to.", "signature");
        if (await store.DeviceAsync(signature.Thumb, context.RequestAborted) is not { } device)
            return Unsigned("This key is not enrolled here.", "unknown-device");
        var signed = signature.Base(request);
        if (!signature.IsBy(device.Key, signed))
            return Unsigned("The signature does not fit.", "signature");
        if (signature.Created < now - Nonces.Window || signature.Created > now + Nonces.Window)
            return Problems.Of(StatusCodes.Status401Unauthorized, "The device's clock is not the hub's.", "clock", now);
        if (device.Revoked is not null)
            return Problems.Of(StatusCodes.Status403Forbidden, "This device was let out.", "revoked");
        if (device.Confirmed is null && needs.Act != Act.KnowOneself)
            return Problems.Of(StatusCodes.Status403Forbidden, "Nobody has compared the six digits yet.", "unconfirmed");
        if (!needs.MayRepeat && !nonces.Use(signature, now))
            return Unsigned("This request was answered before.", "repeated");
        if (header == RequestSignature.DigestHeader && await ReadAsync(context) is { } unread)
            return unread;
        if (header == RequestSignature.DigestHeader && !HasDigest(context))
            return Unsigned("The body is not the one that was signed.", "signature");
        var reach = Rights.Of(device.Role, needs.Act);
        if (reach == Reach.None)
            return Problems.Of(StatusCodes.Status403Forbidden, "That is not for this role.", "not-this-role");
        if (
            request.RouteValues.TryGetValue("id", out var id)
            && id is string casualty
            && !await store.MaySeeAsync(device, reach, casualty, context.RequestAborted)
        )
            return await store.WasErasedAsync(casualty, context.RequestAborted)
                ? Problems.Erased
                : Problems.Of(StatusCodes.Status404NotFound, "There is no such casualty here for this device.", "not-yours");
        context.Items[typeof(Caller)] = new Caller(device, reach, signature, signed);
        return null;
    }

    /// <summary>The header that stands for the body of a request; null where it has none.</summary>
    private static string? BodyHeader(HttpContext context) =>
        HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsDelete(context.Request.Method) ? null
        : context.GetEndpoint()!.Metadata.GetMetadata<Takes>()?.MediaType == SyncRoutes.Lines ? RequestSignature.HeadHeader
        : RequestSignature.DigestHeader;

    private static bool HasDigest(HttpContext context) =>
        context.Request.Headers[RequestSignature.DigestHeader].ToString().Trim() == RequestSignature.Digest(BodyOf(context).Span);

    /// <summary>Reads the body whole, as far as one may be.</summary>
    private static async Task<IResult?> ReadAsync(HttpContext context)
    {
        using var body = new MemoryStream();
        var part = new byte[1 << 14];
        for (int read; (read = await context.Request.Body.ReadAsync(part, context.RequestAborted)) > 0; )
        {
            if (body.Length + read > MostBody)
                return Problems.Of(StatusCodes.Status413PayloadTooLarge, $"At most {MostBody} bytes.");
            body.Write(part, 0, read);
        }

        Keep(context, body.ToArray());
        return null;
    }

    [SuppressMessage("Performance", "CA1859", Justification = "kept as what is read from it")]
    private static void Keep(HttpContext context, ReadOnlyMemory<byte> body) => context.Items[typeof(byte[])] = body;

    private static IResult Unsigned(string title, string code) => Problems.Of(StatusCodes.Status401Unauthorized, title, code);
}
