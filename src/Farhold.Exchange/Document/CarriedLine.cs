using System.Globalization;

namespace Farhold.Exchange.Document;

/// <summary>
/// A line of a record, as a FHIR document of Farhold carries it: whole, in an extension of the resource that says where it is from.
/// </summary>
/// <param name="Utf8">Its bytes, without the line feed.</param>
/// <param name="Number">Its number in the record's file, from 1; 1 where the document does not say.</param>
/// <param name="Damaged">The document says that it could not be read.</param>
/// <param name="Offset">Where it stands in the document, in bytes.</param>
public sealed record CarriedLine(byte[] Utf8, int Number, bool Damaged, int Offset)
{
    /// <summary>Largest document, in bytes.</summary>
    public const int MaxFile = 128 * 1024 * 1024;

    /// <summary>The extension that holds the line, in base64.</summary>
    public const string Extension = "https://farhold.example/fhir/StructureDefinition/record-line";

    /// <summary>The system of the identifier that holds the number of a line that could not be read.</summary>
    public const string Numbers = "https://farhold.example/fhir/line-number";

    /// <summary>All that a document carries. What stands in it besides, and whether somebody changed that, is not looked at.</summary>
    /// <param name="json">The document; what is wrong with it is refused there.</param>
    /// <param name="leaving">Asked at every resource: whoever wanted the record may have left.</param>
    /// <exception cref="OperationCanceledException"><paramref name="leaving"/> was cancelled.</exception>
    public static List<CarriedLine> Of(Located bundle, LocatedJson json, CancellationToken leaving = default)
    {
        var lines = new List<CarriedLine>();
        foreach (var resource in Resources(bundle, json))
        {
            leaving.ThrowIfCancellationRequested();
            lines.AddRange(Of(resource, json));
        }

        return lines;
    }

    /// <summary>Whether a file may be a FHIR document rather than a record: it says so near its beginning.</summary>
    public static bool MayBeIn(ReadOnlySpan<byte> utf8) => utf8[..Math.Min(utf8.Length, 4096)].IndexOf("\"resourceType\""u8) >= 0;

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

    private static IEnumerable<CarriedLine> Of(Located resource, LocatedJson json)
    {
        var type = resource["resourceType"]?.Text;
        foreach (var extension in resource["extension"]?.Items ?? [])
        {
            if (extension["url"]?.Text != Extension)
                continue;
            if (
                type is not ("Provenance" or "DetectedIssue")
                || extension["valueBase64Binary"] is not { } value
                || Decoded(value.Text) is not { } line
            )
            {
                json.Refuse(
                    extension.Offset,
                    "a line of the record is to be carried here, in base64, by a Provenance or a DetectedIssue; it is not"
                );
                continue;
            }

            var number = resource["identifier"]?.Items.FirstOrDefault(i => i["system"]?.Text == Numbers)?["value"]?.Text;
            _ = int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var at);
            yield return new(line, Math.Max(1, at), type == "DetectedIssue", value.Offset);
        }
    }

    /// <summary>The bytes of one line, or null.</summary>
    private static byte[]? Decoded(string base64)
    {
        var bytes = new byte[(base64.Length / 4 * 3) + 3];
        return Convert.TryFromBase64String(base64, bytes, out var length) && length > 0 && !bytes.AsSpan(0, length).Contains((byte)'\n')
            ? bytes[..length]
            : null;
    }
}
