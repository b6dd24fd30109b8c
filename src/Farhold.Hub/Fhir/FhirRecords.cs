using System.Collections.Concurrent;
using Farhold.Documents.Fhir;
using Farhold.Hub.Shares;
using NodaTime;

namespace Farhold.Hub.Fhir;

/// <summary>Resources that were made lately: a program that reads a record asks many times in a row.</summary>
internal sealed class FhirRecords
{
    /// <summary>Design: as old as an answer may be while nothing new has come.</summary>
    private static readonly Duration Fresh = Duration.FromSeconds(30);

    private const int Most = 100;

    private readonly ConcurrentDictionary<string, (int Count, Instant Made, FhirRecord Record)> made = new(StringComparer.Ordinal);

    public FhirRecord Of(Opener.Shown shown, Instant now, CancellationToken leaving)
    {
        var casualty = shown.Share.Casualty;
        if (made.TryGetValue(casualty, out var kept) && kept.Count == shown.Record.Count && now - kept.Made < Fresh)
            return kept.Record;
        var record = FhirRecord.Of(FhirDocument.Write(shown.Record, shown.Book, shown.At, leaving));
        if (made.Count >= Most)
            made.Clear();
        made[casualty] = (shown.Record.Count, now, record);
        return record;
    }
}
