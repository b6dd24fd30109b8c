using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Threading.RateLimiting;
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

    private const string SyncRate = "sync",
        FindRate = "find";

    /// <summary>Bytes of lines in an answer; what is left comes with the next. Design: some four thousand entries.</summary>
    private const int MostInAnswer = 1 << 20;

    /// <summary>Largest body of a question which casualty it is: a root for each of all devices, generously.</summary>
    private const int MostOfFind = 64 * 1024;

    private const int BrotliQuality = 5;

    public static void AddSync(this IServiceCollection services, SyncOptions options)
    {
        services.AddSingleton(_ => RecordStores.Open(options));
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

    public static void MapSync(this WebApplication app, TimeProvider clock, SyncOptions options)
    {
        app.UseRateLimiter();
        var casualties = app.MapGroup("/hub/casualties");
        casualties
            .MapPost("/find", (HttpContext context, SyncDesk desk) => KeptAsync(() => FindAsync(context, desk, Now(clock))))
            .RequireRateLimiting(FindRate)
            .WithMetadata(new Takes(Json));
        casualties
            .MapPost(
                "/{id}/sync",
                (HttpContext context, SyncDesk desk, string id) => KeptAsync(() => SyncAsync(context, desk, id, options, clock))
            )
            .RequireRateLimiting(SyncRate)
            .WithMetadata(new Takes(Lines));
    }

    private static IResult Gone =>
        Problems.Of(
            StatusCodes.Status410Gone,
            "This record was erased at the hub. It may be deleted on the phone too, which never happens by itself."
        );

    /// <summary>Says what a store could not do.</summary>
    private static async Task<IResult> KeptAsync(Func<Task<IResult>> act)
    {
        try
        {
            return await act();
        }
        catch (ErasedException)
        {
            return Gone;
        }
        catch (StoreFullException)
        {
            return Problems.Of(
                StatusCodes.Status507InsufficientStorage,
                "The hub has no room left. Lines that it did not acknowledge are not kept."
            );
        }
        catch (StoreAwayException)
        {
            return Problems.Of(
                StatusCodes.Status503ServiceUnavailable,
                "The hub can't reach its database. Lines that it did not acknowledge may not be kept; ask again later."
            );
        }
    }

    private static async Task<IResult> SyncAsync(HttpContext context, SyncDesk desk, string id, SyncOptions options, TimeProvider clock)
    {
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
                if (await TakeAsync(context, casualty, reader, part.AsMemory(0, read), Now(clock)) is { } refusal)
                    return refusal;
        }
        catch (InvalidDataException)
        {
            return Problems.Of(StatusCodes.Status400BadRequest, "The packing broke off; lines that came whole before it were kept.");
        }

        if (reader.Head is not { } head)
            return Problems.Of(StatusCodes.Status400BadRequest, "The message has no head.");
        using var last = await casualty.TakeTurnAsync(context.RequestAborted);
        return Answer(context, Outgoing.To(head, last!.Lines, MostInAnswer, Now(clock)));
    }

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
        if (await turn!.AddAsync(reader.TakeLines(), Sender(context), now) is { } objection)
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

    private static async Task<IResult> FindAsync(HttpContext context, SyncDesk desk, Instant now)
    {
        context.Response.Headers.CacheControl = "no-store";
        context.Features.Get<IHttpMaxRequestBodySizeFeature>()!.MaxRequestBodySize = MostOfFind;
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body, context.RequestAborted);
        switch (RootsReader.Read(body.ToArray(), "body"))
        {
            case Read<Roots>.Refused(var why):
                return Problems.Of(StatusCodes.Status400BadRequest, "The roots of a casualty can't be read.", why);
            case Read<Roots>.Usable(var roots):
                var match = await desk.Store.FindAsync(roots, now, context.RequestAborted);
                if (match.Erased is not null)
                    return Gone;
                return match.Certain is { } id
                    ? Results.Json(new { id })
                    : Results.Json(new { candidates = match.Candidates }, statusCode: StatusCodes.Status409Conflict);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
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

    /// <summary>Until devices are enrolled there is nothing better to know a sender by.</summary>
    private static string Sender(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";

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

    private static Instant Now(TimeProvider clock) => Instant.FromDateTimeOffset(clock.GetUtcNow());
}
