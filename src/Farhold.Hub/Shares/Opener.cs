using System.Globalization;
using Farhold.Documents.Card;
using Farhold.Documents.Fhir;
using Farhold.Exchange.Card;
using Farhold.Exchange.HandOver;
using Farhold.Hub.Access;
using Farhold.Hub.Sync;
using Farhold.Sync;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using NodaTime;

namespace Farhold.Hub.Shares;

/// <summary>Shows one casualty to whoever has followed a link: a page, a card to print, FHIR.</summary>
internal sealed class Opener(
    ShareStore shares,
    SyncDesk desk,
    HubRules rules,
    AuditTrail audit,
    DocumentDesk documents,
    IServiceProvider services,
    ILoggerFactory logging
)
{
    private const double LanesWidth = 760;

    /// <summary>The page as HTML, in JSON with how long it lasts.</summary>
    public Task<IResult> PageAsync(HttpContext context, string id, Instant now) =>
        WithAsync(
            context,
            id,
            counts: true,
            now,
            async (shown, zone) =>
            {
                await audit.AddAsync($"link {id}", "share.opened", shown.Share.Casualty, now, context.RequestAborted);
                return Results.Json(new { html = await DrawnAsync(shown, zone, now), until = WrittenInstant.Write(shown.Share.Until) });
            }
        );

    public Task<IResult> CardAsync(HttpContext context, string id, Instant now) =>
        WithAsync(
            context,
            id,
            counts: false,
            now,
            (shown, zone) =>
                documents.MakeAsync(
                    context,
                    (_, leaving) =>
                        Results.Bytes(
                            CardPdf.Write(CardSheet.Of(shown.Record, shown.Book, shown.At, zone), Paper.A4, shown.At, leaving),
                            "application/pdf"
                        )
                )
        );

    public Task<IResult> FhirAsync(HttpContext context, string id, Instant now) =>
        WithAsync(
            context,
            id,
            counts: false,
            now,
            (shown, _) =>
                documents.MakeAsync(
                    context,
                    (_, leaving) => Results.Bytes(FhirDocument.Write(shown.Record, shown.Book, shown.At, leaving), "application/fhir+json")
                )
        );

    /// <summary>What a secret shows; null with the refusal where it shows nothing.</summary>
    public async Task<(Shown? Shown, IResult? Refusal)> ShownAsync(
        string id,
        string secret,
        string? spoken,
        bool counts,
        Instant now,
        CancellationToken cancel
    )
    {
        var (answer, share) = await shares.AskAsync(id, secret, spoken, counts, now, cancel);
        if (answer == ShareAnswer.CodeWanted)
            return (
                null,
                Problems.Of(StatusCodes.Status401Unauthorized, "Four digits are asked for, told by whoever sent the link.", "code")
            );
        if (share is null)
            return (null, Problems.Of(StatusCodes.Status404NotFound, "This link shows nothing, or nothing any more.", "no-such-link"));
        using var turn = await desk.Casualty(share.Casualty).TakeTurnAsync(cancel);
        if (turn is null)
            return (null, Problems.Of(StatusCodes.Status404NotFound, "This link shows nothing, or nothing any more.", "no-such-link"));
        var (record, at) = turn.Record(now);
        if (rules.At(at) is not Read<Rulebook>.Usable(var book))
            return (null, Problems.Of(StatusCodes.Status503ServiceUnavailable, "The hub's local protocol can't be used now.", "rules"));
        var missing = Board.Standing.Missing(turn.Lines, record.Elsewhere);
        return (new(share, record, book, at, turn.Heard, missing), null);
    }

    private async Task<IResult> WithAsync(
        HttpContext context,
        string id,
        bool counts,
        Instant now,
        Func<Shown, DateTimeZone, Task<IResult>> show
    )
    {
        if (new LocatedJson(Gate.BodyOf(context), "body", maxDepth: 2).Whole("a secret", Compose) is not Read<Brought>.Usable(var brought))
            return Problems.Of(StatusCodes.Status400BadRequest, "A secret, a code where one is asked for, and a time zone.", "body");
        var (shown, refusal) = await ShownAsync(id, brought.Secret, brought.Code, counts, now, context.RequestAborted);
        return refusal ?? await show(shown!, DateTimeZoneProviders.Tzdb.GetZoneOrNull(brought.Zone) ?? DateTimeZone.Utc);
    }

    private async Task<string> DrawnAsync(Shown shown, DateTimeZone zone, Instant now)
    {
        var facts = CareFacts.Of(shown.Record, shown.Book, shown.At);
        var words = new FactWords(facts, zone);
        var state = shown.Record.Readings[0];
        var pictures = Enum.GetValues<Limb>()
            .Select(l => LimbPicture.Of(l, state, shown.Book.Protocol, shown.At, zone))
            .OfType<LimbPicture>()
            .ToArray();
        await using var renderer = new HtmlRenderer(services, logging);
        return await renderer.Dispatcher.InvokeAsync(async () =>
        {
            var page = await renderer.RenderComponentAsync<ClinicianPage>(
                ParameterView.FromDictionary(
                    new Dictionary<string, object?>
                    {
                        ["Alias"] = facts.Person.Aliases is [{ Length: > 0 } alias, ..] ? Plain.Line(alias) : "the casualty",
                        ["Until"] = Lasts(shown.Share, now),
                        ["Sheet"] = CardSheet.Of(shown.Record, shown.Book, shown.At, zone),
                        ["Needs"] = words.NeedsSaid,
                        ["Recommendations"] = words.Recommendations,
                        ["Reach"] = Reaches(shown, zone),
                        ["Missing"] = shown.Missing,
                        ["Doubts"] = facts.Doubts,
                        ["Lanes"] = pictures.Length == 0 ? null : LimbLanes.Draw([.. pictures], LanesWidth, "lanes"),
                    }
                )
            );
            return page.ToHtmlString();
        });
    }

    private static string Lasts(Share share, Instant now) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Ends in {Say.Duration(share.Until - now)}. Opened {(share.Opened == 1 ? "once" : $"{share.Opened} times")}."
        );

    private static string Reaches(Shown shown, DateTimeZone zone)
    {
        var written = shown.Record.LastRecorded is { } last ? $"Last entry written {Say.Time(last, zone)}" : "No entry has come";
        var heard = shown.Heard is { } at ? $"; the hub last heard from a phone {Say.Time(at, zone)}" : "";
        return $"{written}{heard}. {(shown.Record.Count == 1 ? "1 entry is" : $"{shown.Record.Count} entries are")} here.";
    }

    private static Brought? Compose(LocatedJson file, Located root)
    {
        file.OnlyKnown(root, "secret", "code", "zone");
        return new(file.Text(root, "secret"), file.OptionalText(root, "code", 16), file.OptionalText(root, "zone", 64));
    }

    /// <param name="At">When it is judged; not before what every device has written.</param>
    internal sealed record Shown(Share Share, CareRecord Record, Rulebook Book, Instant At, Instant? Heard, int? Missing);

    private sealed record Brought(string Secret, string? Code, string Zone);
}
