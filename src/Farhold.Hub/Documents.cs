using System.Text;
using Farhold.Documents.Card;
using Farhold.Documents.Fhir;
using Farhold.Exchange.Card;
using Microsoft.AspNetCore.Http.Timeouts;
using NodaTime;

namespace Farhold.Hub;

/// <summary>Documents made from a record that is sent here, and a record read back from one. Nothing is kept.</summary>
/// <remarks>What can't be used is answered with 400 and a line for each reason: file, line, column.</remarks>
internal static class Documents
{
    /// <summary>Largest body; a record of 500 entries is about 130,000 bytes.</summary>
    public const int LargestBytes = 4 << 20;

    /// <summary>
    /// Up to here a body that is too large is still read, and thrown away, so that its sender gets to the refusal. Design.
    /// </summary>
    public const int MostSentBytes = 4 * LargestBytes;

    /// <summary>Most entries of a record. Design: several times the longest care we know of, and still made within the time.</summary>
    public const int MostEntries = 5_000;

    private const string Record = "application/jsonl",
        Fhir = "application/fhir+json";

    private static readonly RequestTimeoutPolicy Longest = new()
    {
        Timeout = TimeSpan.FromMinutes(2),
        TimeoutStatusCode = StatusCodes.Status503ServiceUnavailable,
        WriteTimeoutResponse = context =>
            OneLine.WriteAsync(context, StatusCodes.Status503ServiceUnavailable, "This took too long here; the command line makes it too."),
    };

    public static void MapDocuments(this WebApplication app, TimeProvider clock, HubRules rules)
    {
        var documents = app.MapGroup("/documents");
        documents.WithRequestTimeout(Longest);
        documents
            .MapPost(
                "/fhir",
                (HttpContext context, DocumentDesk desk) =>
                    desk.MakeAsync(context, (body, leaving) => Answer(FileOf(body), file => Document(file, rules, clock.Now(), leaving)))
            )
            .WithMetadata(new Takes(Record));
        documents
            .MapPost(
                "/record",
                (HttpContext context, DocumentDesk desk) =>
                    desk.MakeAsync(
                        context,
                        (body, leaving) =>
                            Answer(FhirReader.Read(body, "document", null, leaving), read => Results.Bytes(Lines(read.Record), Record))
                    )
            )
            .WithMetadata(new Takes(Fhir));
        documents
            .MapPost(
                "/card",
                (HttpContext context, DocumentDesk desk, string? paper, string? zone) =>
                    desk.MakeAsync(
                        context,
                        (body, leaving) => Answer(FileOf(body), file => Card(file, rules, paper ?? "a4", zone, clock.Now(), leaving))
                    )
            )
            .WithMetadata(new Takes(Record));
    }

    private static IResult Answer<T>(Read<T> read, Func<T, IResult> made) =>
        read switch
        {
            Read<T>.Usable(var value) => made(value),
            Read<T>.Refused(var why) => Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static IResult Document(RecordFile file, HubRules rules, Instant now, CancellationToken leaving) =>
        Answer(rules.At(now), book => Results.Bytes(FhirDocument.Write(CareRecord.Of(file), book, now, leaving), Fhir));

    private static IResult Card(RecordFile file, HubRules rules, string paper, string? zone, Instant now, CancellationToken leaving)
    {
        if (paper is not ("a4" or "a5") || DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone ?? "UTC") is not { } known)
            return OneLine.Of(StatusCodes.Status400BadRequest, "paper is a4 or a5, zone a time zone such as Europe/Oslo");
        var (record, at) = CareRecord.In(file, now);
        var nights = zone is null ? Rhythm.None : Rhythm.ByClock(known, Rhythm.UsualFrom, Rhythm.UsualTo, at);
        leaving.ThrowIfCancellationRequested();
        return Answer(
            rules.At(at),
            book =>
                Results.Bytes(
                    CardPdf.Write(CardSheet.Of(record, book, at, known, nights), paper == "a5" ? Paper.A5 : Paper.A4, at, leaving),
                    "application/pdf"
                )
        );
    }

    private static Read<RecordFile> FileOf(ReadOnlyMemory<byte> body)
    {
        if (body.Span.Count((byte)'\n') is var lines && lines > MostEntries)
            return new Read<RecordFile>.Refused([
                new("record", MostEntries + 1, 1, $"a record of {lines} lines; documents are made of at most {MostEntries}"),
            ]);
        return RecordReader.Read(body, "record");
    }

    private static byte[] Lines(CareRecord record)
    {
        using var lines = new MemoryStream();
        RecordReader.Write(lines, record.Entries, record.Damaged);
        return lines.ToArray();
    }

    private static IResult Refused(IEnumerable<Refusal> why) =>
        Results.Text(
            string.Concat(why.Select(r => Plain.Line($"{r.File}:{r.Line}:{r.Column}: {r.Reason}") + "\n")),
            "text/plain",
            Encoding.UTF8,
            StatusCodes.Status400BadRequest
        );
}
