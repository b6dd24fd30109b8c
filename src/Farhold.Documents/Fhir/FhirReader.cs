using System.Collections.Immutable;
using System.Text;
using Farhold.Exchange.Document;

namespace Farhold.Documents.Fhir;

/// <summary>A record read back from a document, and where the document says something else than the record does.</summary>
/// <param name="Differences">What was changed, added or left out since the document was written. The record is as first written.</param>
public sealed record FhirRecord(CareRecord Record, ImmutableArray<string> Differences);

/// <summary>Reads back the documents of <see cref="FhirDocument"/>. Those of other systems are refused: nothing is guessed.</summary>
public static class FhirReader
{
    /// <param name="rules">Those here: what is needed and recommended is compared by them. Null: nothing is compared.</param>
    /// <param name="leaving">Asked at every resource: whoever wanted the record may have left.</param>
    /// <exception cref="OperationCanceledException"><paramref name="leaving"/> was cancelled.</exception>
    public static Read<FhirRecord> Read(ReadOnlyMemory<byte> utf8, string file, Rulebook? rules, CancellationToken leaving = default)
    {
        var json = new LocatedJson(utf8, file, CarriedLine.MaxFile);
        if (json.Parse() is not { } bundle)
            return new Read<FhirRecord>.Refused([.. json.Refusals]);
        var lines = CarriedLine.Of(bundle, json, leaving).Select(l => Read(l, json, file)).ToArray();
        if (json.Refusals.Count == 0 && lines.All(l => l.Entry is null))
            json.Refuse(
                bundle.Offset,
                "no entry of a record is carried here: this document was not written by Farhold, and only such documents are read back"
            );
        if (json.Refusals.Count > 0)
            return new Read<FhirRecord>.Refused([.. json.Refusals]);
        var record = new CareRecord(lines.Select(l => l.Entry).OfType<Entry>(), lines.Select(l => l.Damaged).OfType<DamagedLine>());
        return new Read<FhirRecord>.Usable(new(record, rules is null ? [] : Compared(record, rules, bundle, utf8, leaving)));
    }

    private static ImmutableArray<string> Compared(
        CareRecord record,
        Rulebook rules,
        Located bundle,
        ReadOnlyMemory<byte> utf8,
        CancellationToken leaving
    ) =>
        WrittenInstant.TryParse(Encoding.UTF8.GetBytes(bundle["timestamp"]?.Text ?? "")) is { } made
            ? FhirDifferences.Of(record, rules, made, utf8, leaving)
            : ["the document has no time at which it was made, so it can't be compared with its record"];

    private static (Entry? Entry, DamagedLine? Damaged) Read(CarriedLine line, LocatedJson json, string file)
    {
        switch (new EntryReader().Read(line.Utf8, file, line.Number))
        {
            case Read<Entry>.Usable usable:
                return (usable.Value, null);
            case Read<Entry>.Refused refused when line.Damaged:
                return (null, new(line.Number, new(line.Utf8), refused.Refusals));
            case Read<Entry>.Refused refused:
                json.Refuse(line.Offset, $"the entry carried here can't be read: {refused.Refusals[0].Reason}");
                return default;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }
}
