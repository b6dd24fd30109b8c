using System.Text;
using Farhold.Documents.Card;
using Farhold.Documents.Fhir;
using Farhold.Exchange.Card;
using NodaTime;

namespace Farhold.Hub;

/// <summary>Documents made from a record that is sent here, and a record read back from one. Nothing is kept.</summary>
/// <remarks>What can't be used is answered with 400 and a line for each reason: file, line, column.</remarks>
internal static class Documents
{
    /// <summary>Largest body, in bytes; a record of 500 entries is about 130,000.</summary>
    private const long LargestBytes = 64 << 20;

    public static void MapDocuments(this WebApplication app, TimeProvider clock)
    {
        app.MapPost("/documents/fhir", async Task<IResult> (HttpContext context) =>
            Answer(await RecordOf(context), record => Results.Bytes(FhirDocument.Write(record, Now(clock)), "application/fhir+json")));
        app.MapPost("/documents/record", async Task<IResult> (HttpContext context) =>
            Answer(FhirReader.Read(await BodyOf(context), "document"), read => Results.Bytes(Lines(read.Record), "application/jsonl")));
        app.MapPost("/documents/card", async Task<IResult> (HttpContext context, string? paper, string? zone) =>
            Answer(await RecordOf(context), record => Card(record, paper ?? "a4", zone, Now(clock))));
    }

    private static IResult Answer<T>(Read<T> read, Func<T, IResult> made) => read switch
    {
        Read<T>.Usable(var value) => made(value),
        Read<T>.Refused(var why) => Refused(why),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static IResult Card(CareRecord record, string paper, string? zone, Instant now)
    {
        if (paper is not ("a4" or "a5") || DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone ?? "UTC") is not { } known)
            return Results.Text("paper is a4 or a5, zone a time zone such as Europe/Oslo\n", statusCode: StatusCodes.Status400BadRequest);
        var at = record.LastRecorded is { } newest && newest > now ? newest : now; // as on the command line: a clock that shows less is wrong
        var nights = zone is null ? Rhythm.None : Rhythm.ByClock(known, Rhythm.UsualFrom, Rhythm.UsualTo, at);
        var sheet = CardSheet.Of(record, ShippedProtocol.Protocol, at, known, nights);
        return Results.Bytes(CardPdf.Write(sheet, paper == "a5" ? Paper.A5 : Paper.A4, at), "application/pdf");
    }

    private static async Task<Read<CareRecord>> RecordOf(HttpContext context) => RecordReader.Read(await BodyOf(context), "record") switch
    {
        Read<RecordFile>.Usable(var file) => new Read<CareRecord>.Usable(CareRecord.Of(file)),
        Read<RecordFile>.Refused(var why) => new Read<CareRecord>.Refused(why),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static async Task<ReadOnlyMemory<byte>> BodyOf(HttpContext context)
    {
        if (context.Features.Get<Microsoft.AspNetCore.Http.Features.IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = LargestBytes;
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body, context.RequestAborted);
        return body.ToArray();
    }

    private static byte[] Lines(CareRecord record)
    {
        using var lines = new MemoryStream();
        RecordReader.Write(lines, record.Entries, record.Damaged);
        return lines.ToArray();
    }

    private static IResult Refused(IEnumerable<Refusal> why) => Results.Text(
        string.Concat(why.Select(r => $"{r.File}:{r.Line}:{r.Column}: {r.Reason}\n")), "text/plain", Encoding.UTF8, StatusCodes.Status400BadRequest);

    private static Instant Now(TimeProvider clock) => Instant.FromDateTimeOffset(clock.GetUtcNow());
}
