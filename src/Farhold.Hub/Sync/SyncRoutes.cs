using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Threading.RateLimiting;
using Farhold.Hub.Access;
using Farhold.Hub.Board;
using Farhold.Hub.Storage;
using Farhold.Sync;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;
using NodaTime;

namespace Farhold.Hub.Sync;

/// <summary>The record leaves the phone: one request that may be asked as often as it takes (docs/decisions/sync-by-vectors.md).</summary>
internal static class SyncRoutes
{
    public const string Lines = "application/jsonl",
        Json = "application/json";

    /// <summary>How often a device, or before it is known an address, may ask.</summary>
    public const string SyncRate = "sync",
        FindRate = "find";

    /// <summary>Bytes of lines in an answer; what is left comes with the next. Design: some four thousand entries.</summary>
    private const int MostInAnswer = 1 << 20;

    private const int BrotliQuality = 5;

    public static void AddSync(this IServiceCollection services, SyncOptions options)
    {
        services.AddSingleton<SyncDesk>();
        services.AddRateLimiter(limiter =>
        {
            limiter.OnRejected = RejectAsync;
            limiter.AddPolicy(
                SyncRate,
                context =>
                    RateLimitPartition.GetTokenBucketLimiter(
                        Sender(context),
                        _ =>
                            new()
                            {
                                TokenLimit = 10 * options.MostPerSecond,
                                TokensPerPeriod = options.MostPerSecond,
                                ReplenishmentPeriod = TimeSpan.FromSeconds(1),
                            }
                    )
            );
            limiter.AddPolicy(
                FindRate,
                context =>
                    RateLimitPartition.GetFixedWindowLimiter(
                        Sender(context),
                        _ => new() { PermitLimit = options.MostFindsPerMinute, Window = TimeSpan.FromMinutes(1) }
                    )
            );
        });
    }

    public static void MapSync(this RouteGroupBuilder hub, TimeProvider clock, SyncOptions options)
    {
        var casualties = hub.MapGroup("/casualties");
        casualties
            .MapPost(
                "/find",
                (HttpContext context, SyncDesk desk, AccessStore access, AuditTrail audit) =>
                    KeptAsync(() => FindAsync(context, desk, access, audit, clock.Now()))
            )
            .RequireRateLimiting(FindRate)
            .WithMetadata(new Needs(Act.FindCasualty, MayRepeat: true), new Takes(Json));
        casualties
            .MapPost(
                "/{id}/sync",
                (HttpContext context, SyncDesk desk, WatchBoard board, string id) =>
                    KeptAsync(() => SyncAsync(context, desk, board, id, options, clock))
            )
            .RequireRateLimiting(SyncRate)
            .WithMetadata(new Needs(Act.Sync, MayRepeat: true), new Takes(Lines));
    }

    /// <summary>Says what a store could not do.</summary>
    private static async Task<IResult> KeptAsync(Func<Task<IResult>> act)
    {
        try
        {
            return await act();
        }
        catch (ErasedException)
        {
            return Problems.Erased;
        }
        catch (StoreFullException)
        {
            return Problems.Of(
                StatusCodes.Status507InsufficientStorage,
                "The hub has no room left. Lines that it did not acknowledge are not kept."
            );
        }
    }

    private static async Task<IResult> SyncAsync(
        HttpContext context,
        SyncDesk desk,
        WatchBoard board,
        string id,
        SyncOptions options,
        TimeProvider clock
    )
    {
        var caller = Gate.CallerOf(context);
        BeGenerous(context);
        if (BodyOf(context.Request) is not { } body)
            return Problems.Of(StatusCodes.Status415UnsupportedMediaType, "A message comes as it is or packed with gzip.");
        var casualty = desk.Casualty(id);
        MessageReader reader;
        using (var turn = await casualty.TakeTurnAsync(context.RequestAborted))
        {
            if (turn is null)
            {
                desk.Forget(id);
                return Problems.Of(StatusCodes.Status404NotFound, "There is no such casualty here; /hub/casualties/find names one.");
            }

            reader = new(turn.Lines, "message");
        }

        var part = new byte[1 << 15];
        try
        {
            while (await ReadAsync(body, part, options.Patience, context) is > 0 and var read)
                if (await TakeAsync(context, casualty, reader, part.AsMemory(0, read), clock.Now()) is { } refusal)
                    return refusal;
        }
        catch (InvalidDataException)
        {
            return Problems.Of(StatusCodes.Status400BadRequest, "The packing broke off; lines that came whole before it were kept.");
        }
        finally
        {
            // Also where it broke off: what the sender holds and has not sent is known to exist from now on.
            if (reader.Head is { } said && IsSigned(context, reader))
                await EndAsync(casualty, caller.Device, said, clock.Now());
            board.Changed(id);
        }

        if (reader.Head is not { } head)
            return Problems.Of(StatusCodes.Status400BadRequest, "The message has no head.");
        if (!IsSigned(context, reader))
            return Problems.Of(StatusCodes.Status401Unauthorized, "The head is not the one that was signed.", "signature");
        using var last = await casualty.TakeTurnAsync(context.RequestAborted);
        await last!.SealAsync(caller.Device, head, reader.HeadLine, caller, clock.Now());
        var known = KnownMissing.ToTell(last.Lines, last.Said);
        return Answer(context, Outgoing.To(head, last.Lines, MostInAnswer, clock.Now(), known));
    }

    private static async Task EndAsync(HeldCasualty casualty, Device device, Head said, Instant now)
    {
        using var turn = await casualty.TakeTurnAsync(CancellationToken.None);
        if (turn is not null)
            await turn.EndAsync(device, said, now);
    }

    private static bool IsSigned(HttpContext context, MessageReader reader) =>
        context.Request.Headers[RequestSignature.HeadHeader].ToString().Trim() == RequestSignature.Digest(reader.HeadLine.Span);

    /// <summary>Takes in some bytes: what of lines is whole by then is in the store when this returns.</summary>
    private static async Task<IResult?> TakeAsync(
        HttpContext context,
        HeldCasualty casualty,
        MessageReader reader,
        ReadOnlyMemory<byte> bytes,
        Instant now
    )
    {
        using var turn = await casualty.TakeTurnAsync(context.RequestAborted);
        var goesOn = reader.Push(bytes.Span);
        if (reader.Head is not null && !IsSigned(context, reader))
            return Problems.Of(StatusCodes.Status401Unauthorized, "The head is not the one that was signed.", "signature");
        if (await turn!.AddAsync(reader.TakeLines(), Gate.CallerOf(context).Device.Thumb, now) is { } objection)
            return Problems.Of(StatusCodes.Status413PayloadTooLarge, Explained(objection));
        return goesOn
            ? null
            : Problems.Of(
                reader.IsTooLarge ? StatusCodes.Status413PayloadTooLarge : StatusCodes.Status400BadRequest,
                "The message can't be used from here on; lines before were kept.",
                reader.Refusals
            );
    }

    private static IResult Answer(HttpContext context, Outgoing message)
    {
        using var plain = new MemoryStream();
        message.Write(plain);
        context.Response.Headers.CacheControl = "no-store";
        context.Response.Headers.Vary = "Accept-Encoding";
        var accepted = context.Request.GetTypedHeaders().AcceptEncoding.Where(a => a.Quality is not 0).Select(a => a.Value.Value).ToArray();
        var encoding =
            accepted.Contains("br") ? "br"
            : accepted.Contains("gzip") ? "gzip"
            : null;
        if (encoding is null)
            return Results.Bytes(plain.ToArray(), Lines);
        context.Response.Headers.ContentEncoding = encoding;
        using var packed = new MemoryStream();
        using (
            Stream packing =
                encoding == "br"
                    ? new BrotliStream(packed, new BrotliCompressionOptions { Quality = BrotliQuality }, leaveOpen: true)
                    : new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true)
        )
            packing.Write(plain.GetBuffer(), 0, (int)plain.Length);
        return Results.Bytes(packed.ToArray(), Lines);
    }

    private static async Task<IResult> FindAsync(HttpContext context, SyncDesk desk, AccessStore access, AuditTrail audit, Instant now)
    {
        switch (RootsReader.Read(Gate.BodyOf(context), "body"))
        {
            case Read<Roots>.Refused(var why):
                return Problems.Of(StatusCodes.Status400BadRequest, "The roots of a casualty can't be read.", why);
            case Read<Roots>.Usable(var roots):
                var match = await desk.Store.FindAsync(roots, now, context.RequestAborted);
                if (match.Erased is not null)
                    return Problems.Erased;
                return match.Certain is { } id
                    ? await GiveAsync(context, access, audit, id, now)
                    : Results.Json(new { candidates = match.Candidates }, statusCode: StatusCodes.Status409Conflict);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>Whoever knows a root holds a copy already, so within its team it may see the rest.</summary>
    private static async Task<IResult> GiveAsync(HttpContext context, AccessStore access, AuditTrail audit, string id, Instant now)
    {
        var device = Gate.CallerOf(context).Device;
        var (team, isNew) = await access.BelongsAsync(id, device.Team, context.RequestAborted);
        if (team != device.Team)
            return Problems.Of(
                StatusCodes.Status403Forbidden,
                "This casualty is another team's; its coordinator may give it.",
                "other-team"
            );
        if (await access.GiveAsync(id, device.Thumb, device.Thumb, now, context.RequestAborted))
            await audit.AddAsync(device.Thumb, isNew ? "casualty.opened" : "casualty.joined", id, now, context.RequestAborted);
        return Results.Json(new { id, opened = isNew });
    }

    /// <summary>A radio link may be slower than Kestrel's least rates, which are off here; waiting has its own end.</summary>
    private static void BeGenerous(HttpContext context)
    {
        if (context.Features.Get<IHttpMinRequestBodyDataRateFeature>() is { } up)
            up.MinDataRate = null;
        if (context.Features.Get<IHttpMinResponseDataRateFeature>() is { } down)
            down.MinDataRate = null;
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = SyncLimits.MaxText;
    }

    private static Stream? BodyOf(HttpRequest request) =>
        request.Headers.ContentEncoding.ToString() switch
        {
            "" or "identity" => request.Body,
            "gzip" => new GZipStream(request.Body, CompressionMode.Decompress),
            _ => null,
        };

    /// <summary>The next bytes; a sender of whom nothing comes for too long is let go, with what came whole kept.</summary>
    private static async Task<int> ReadAsync(Stream body, Memory<byte> part, TimeSpan patience, HttpContext context)
    {
        using var end = new CancellationTokenSource(patience);
        await using var letGo = end.Token.Register(context.Abort);
        return await body.ReadAsync(part, context.RequestAborted);
    }

    private static ValueTask RejectAsync(OnRejectedContext rejected, CancellationToken leaving)
    {
        var context = rejected.HttpContext;
        var wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromSeconds(1);
        context.Response.Headers.RetryAfter = Math.Max(1, Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        return new(
            Problems.Of(StatusCodes.Status429TooManyRequests, "Asked too often; wait as long as Retry-After says.").ExecuteAsync(context)
        );
    }

    /// <summary>A device by its key; before it is known, by its address.</summary>
    private static string Sender(HttpContext context) =>
        context.Items.TryGetValue(typeof(Caller), out var caller)
            ? ((Caller)caller!).Device.Thumb
            : context.Connection.RemoteIpAddress?.ToString() ?? "";

    private static string Explained(Addition objection) =>
        objection switch
        {
            Addition.TooManyDevices => string.Create(
                CultureInfo.InvariantCulture,
                $"A record has at most {SyncLimits.MaxDevices} devices."
            ),
            Addition.TooManyOdd => string.Create(
                CultureInfo.InvariantCulture,
                $"A record has at most {SyncLimits.MaxOdd} lines that are out of order, in conflict or unreadable."
            ),
            _ => string.Create(CultureInfo.InvariantCulture, $"A line has at most {SyncLimits.MaxLine} bytes."),
        };
}
