using System.Collections.Immutable;
using System.Text;

namespace Farhold.Documents.Fhir;

/// <summary>A record read back from a document, and where the document says something else than the record does.</summary>
/// <param name="Differences">What was changed, added or left out since the document was written. The record is as first written.</param>
public sealed record FhirRecord(CareRecord Record, ImmutableArray<string> Differences);

/// <summary>Reads back the documents of <see cref="FhirDocument"/>. Those of other systems are refused: nothing is guessed.</summary>
public static class FhirReader
{
    /// <summary>Largest document, in bytes.</summary>
    public const int MaxFile = 128 * 1024 * 1024;

    /// <param name="leaving">Asked at every resource: whoever wanted the record may have left.</param>
    /// <exception cref="OperationCanceledException"><paramref name="leaving"/> was cancelled.</exception>
    public static Read<FhirRecord> Read(ReadOnlyMemory<byte> utf8, string file, CancellationToken leaving = default)
    {
        var json = new LocatedJson(utf8, file, MaxFile);
        if (json.Parse() is not { } bundle)
            return new Read<FhirRecord>.Refused([.. json.Refusals]);
        var resources = Resources(bundle, json);
        var lines = resources.SelectMany(r =>
        {
            leaving.ThrowIfCancellationRequested();
            return Lines(r, json, file);
        }).ToArray();
        if (json.Refusals.Count == 0 && lines.All(l => l.Entry is null))
            json.Refuse(bundle.Offset, "no entry of a record is carried here: this document was not written by Farhold, and only such documents are read back");
        if (json.Refusals.Count > 0)
            return new Read<FhirRecord>.Refused([.. json.Refusals]);
        var record = new CareRecord(lines.Select(l => l.Entry).OfType<Entry>(), lines.Select(l => l.Damaged).OfType<DamagedLine>());
        var at = WrittenInstant.TryParse(Encoding.UTF8.GetBytes(bundle["timestamp"]?.Text ?? ""));
        return new Read<FhirRecord>.Usable(new(record, at is { } made
            ? FhirDifferences.Of(record, made, utf8, leaving)
            : ["the document has no time at which it was made, so it can't be compared with its record"]));
    }

    private static List<Located> Resources(Located bundle, LocatedJson json)
    {
        var found = new List<Located>();
        if (bundle["resourceType"]?.Text != "Bundle" || bundle["type"]?.Text != "document")
        {
            json.Refuse(bundle.Offset, "this is no FHIR document: a Bundle of the type document is expected");
            return found;
        }

        foreach (var entry in bundle["entry"]?.Items ?? [])
            if (entry["resource"] is { } resource)
                found.Add(resource);
        if (found.Count == 0)
            json.Refuse(bundle.Offset, "the document holds no resource");
        else if (found[0]["resourceType"]?.Text != "Composition")
            json.Refuse(found[0].Offset, "a document begins with a Composition; another resource stands in its place");
        return found;
    }

    private static IEnumerable<(Entry? Entry, DamagedLine? Damaged)> Lines(Located resource, LocatedJson json, string file)
    {
        var type = resource["resourceType"]?.Text;
        foreach (var extension in resource["extension"]?.Items ?? [])
        {
            if (extension["url"]?.Text != Codes.LineExtension)
                continue;
            if (type is not ("Provenance" or "DetectedIssue") || extension["valueBase64Binary"] is not { } value || Decoded(value.Text) is not { } line)
            {
                json.Refuse(extension.Offset, "a line of the record is to be carried here, in base64, by a Provenance or a DetectedIssue; it is not");
                continue;
            }

            var number = resource["identifier"]?.Items.FirstOrDefault(i => i["system"]?.Text == Codes.LineNumbers)?["value"]?.Text;
            _ = int.TryParse(number, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var at);
            switch (new EntryReader().Read(line, file, Math.Max(1, at)))
            {
                case Read<Entry>.Usable usable:
                    yield return (usable.Value, null);
                    break;
                case Read<Entry>.Refused refused when type == "DetectedIssue":
                    yield return (null, new(Math.Max(1, at), new(line), refused.Refusals));
                    break;
                case Read<Entry>.Refused refused:
                    json.Refuse(value.Offset, $"the entry carried here can't be read: {refused.Refusals[0].Reason}");
                    break;
            }
        }
    }

    /// <summary>The bytes of one line, or null.</summary>
    private static byte[]? Decoded(string base64)
    {
        var bytes = new byte[(base64.Length / 4 * 3) + 3];
        return Convert.TryFromBase64String(base64, bytes, out var length) && length > 0 && !bytes.AsSpan(0, length).Contains((byte)'\n')
            ? bytes[..length] : null;
    }
}
