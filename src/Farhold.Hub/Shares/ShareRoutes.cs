using Farhold.Hub.Access;
using Farhold.Hub.Sync;
using NodaTime;

namespace Farhold.Hub.Shares;

/// <summary>Links for a receiving clinician: made and ended by whoever may, opened by whoever has the secret.</summary>
/// <remarks>The secret stands behind the # of the address, which no browser sends and no log holds; the page posts it.</remarks>
internal static class ShareRoutes
{
    private static readonly Duration Usual = Duration.FromHours(24),
        Longest = Duration.FromDays(7);

    public static void MapShares(this RouteGroupBuilder hub, TimeProvider clock)
    {
        hub.MapPost(
                "/casualties/{id}/shares",
                (HttpContext context, ShareStore shares, AuditTrail audit, string id) => MakeAsync(context, shares, audit, id, clock.Now())
            )
            .WithMetadata(new Needs(Act.Share), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapGet("/casualties/{id}/shares", ListAsync)
            .WithMetadata(new Needs(Act.Share, MayRepeat: true))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapDelete(
                "/casualties/{id}/shares/{share}",
                (HttpContext context, ShareStore shares, AuditTrail audit, string id, string share) =>
                    EndAsync(context, shares, audit, id, share, clock.Now())
            )
            .WithMetadata(new Needs(Act.Share))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        hub.MapGet("/link", () => Results.Stream(LinkFiles.Open("link.html"), "text/html; charset=utf-8"))
            .WithMetadata(new OpenTo("a page without any record; the secret stays in the browser"));
        hub.MapGet("/link.css", () => Results.Stream(LinkFiles.Open("link.css"), "text/css")).WithMetadata(new OpenTo("a style sheet"));
        hub.MapGet("/link.js", () => Results.Stream(LinkFiles.Open("link.js"), "text/javascript")).WithMetadata(new OpenTo("a script"));
        hub.MapPost(
                "/shares/{share}/open",
                (HttpContext context, Opener opener, string share) => opener.PageAsync(context, share, clock.Now())
            )
            .WithMetadata(new OpenTo("whoever has the link's secret, while it lasts"), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.FindRate);
        hub.MapPost(
                "/shares/{share}/card",
                (HttpContext context, Opener opener, string share) => opener.CardAsync(context, share, clock.Now())
            )
            .WithMetadata(new OpenTo("whoever has the link's secret, while it lasts"), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.FindRate);
        hub.MapPost(
                "/shares/{share}/fhir",
                (HttpContext context, Opener opener, string share) => opener.FhirAsync(context, share, clock.Now())
            )
            .WithMetadata(new OpenTo("whoever has the link's secret, while it lasts"), new Takes(SyncRoutes.Json))
            .RequireRateLimiting(SyncRoutes.FindRate);
    }

    private static async Task<IResult> MakeAsync(HttpContext context, ShareStore shares, AuditTrail audit, string id, Instant now)
    {
        var caller = Gate.CallerOf(context);
        switch (new LocatedJson(Gate.BodyOf(context), "body", maxDepth: 2).Whole("a link", Compose))
        {
            case Read<Wanted>.Refused(var why):
                return Problems.Of(StatusCodes.Status400BadRequest, "This is no link that can be made.", why);
            case Read<Wanted>.Usable(var wanted):
                var (share, secret, spoken) = await shares.MakeAsync(
                    id,
                    caller.Device.Thumb,
                    now + wanted.For,
                    wanted.WithCode,
                    now,
                    context.RequestAborted
                );
                await audit.AddAsync(caller.Device.Thumb, $"share.made {share.Id}", id, now, context.RequestAborted);
                return Results.Json(
                    new
                    {
                        id = share.Id,
                        link = $"/hub/link#{share.Id}.{secret}",
                        code = spoken,
                        until = WrittenInstant.Write(share.Until),
                    },
                    statusCode: StatusCodes.Status201Created
                );
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static async Task<IResult> ListAsync(HttpContext context, ShareStore shares, string id) =>
        Results.Json(
            (await shares.OfAsync(id, context.RequestAborted)).Select(s => new
            {
                id = s.Id,
                made = WrittenInstant.Write(s.Made),
                until = WrittenInstant.Write(s.Until),
                ended = s.Ended is { } ended ? WrittenInstant.Write(ended) : null,
                opened = s.Opened,
                lastOpened = s.LastOpened is { } last ? WrittenInstant.Write(last) : null,
                code = s.HasCode,
            })
        );

    private static async Task<IResult> EndAsync(
        HttpContext context,
        ShareStore shares,
        AuditTrail audit,
        string id,
        string share,
        Instant now
    )
    {
        if (!await shares.EndAsync(share, id, now, context.RequestAborted))
            return Problems.Of(StatusCodes.Status404NotFound, "No link of this casualty that still lasts has this id.", "no-such-link");
        await audit.AddAsync(Gate.CallerOf(context).Device.Thumb, $"share.ended {share}", id, now, context.RequestAborted);
        return Results.NoContent();
    }

    private static Wanted? Compose(LocatedJson file, Located root)
    {
        file.OnlyKnown(root, "hours", "code");
        var hours = root["hours"] is { } span ? file.Number(span, "hours", 1, Longest.TotalHours, whole: true) : Usual.TotalHours;
        var code = root["code"] is not null && file.Flag(root, "code");
        return hours is { } lasting ? new(Duration.FromHours(lasting), code) : null;
    }

    private sealed record Wanted(Duration For, bool WithCode);
}

/// <summary>The page of a link, without any record in it.</summary>
internal static class LinkFiles
{
    public static Stream Open(string name) => typeof(LinkFiles).Assembly.GetManifestResourceStream("link/" + name)!;
}
