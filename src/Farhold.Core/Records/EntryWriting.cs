using System.Diagnostics;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;

namespace Farhold.Records;

/// <summary>Makes new entries, as the line that goes to disk.</summary>
public static class EntryWriting
{
    /// <summary>Letters of all scripts stay readable in the file; what JSON has to escape is escaped.</summary>
    private static readonly JsonWriterOptions Plainly = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <exception cref="ArgumentException">The entry says something the record does not accept, such as a number out of range.</exception>
    public static Entry Write(EntryId id, Happened happened, Instant recorded, string by, Payload payload)
    {
        var json = Json(w =>
        {
            w.WriteString("id", id.ToString());
            Envelope(w, happened, recorded, by, payload);
        });
        return new EntryReader().Read(json, "new entry", 1) switch
        {
            Read<Entry>.Usable usable => usable.Value,
            Read<Entry>.Refused refused => throw new ArgumentException(
                string.Join("; ", refused.Refusals.Select(r => r.Reason)),
                nameof(payload)
            ),
            _ => throw new UnreachableException(),
        };
    }

    /// <summary>The entry without its id, for a store that numbers it as it writes.</summary>
    /// <param name="practice">Marks the line as belonging to a practice casualty.</param>
    /// <exception cref="ArgumentException">As for <see cref="Write(EntryId, Happened, Instant, string, Payload)"/>.</exception>
    public static string Body(Happened happened, Instant recorded, string by, bool practice, Payload payload)
    {
        _ = Write(new("check", 1), happened, recorded, by, payload);
        return Encoding.UTF8.GetString(
            Json(w =>
            {
                Envelope(w, happened, recorded, by, payload);
                if (practice)
                    w.WriteBoolean("practice", true);
            })
        );
    }

    /// <summary>Writes when something happened: an instant, or an object of earliest and latest.</summary>
    public static void Write(Utf8JsonWriter w, string name, Happened happened)
    {
        if (happened.IsInstant)
        {
            w.WriteString(name, WrittenInstant.Write(happened.Earliest));
            return;
        }

        w.WriteStartObject(name);
        w.WriteString("earliest", WrittenInstant.Write(happened.Earliest));
        w.WriteString("latest", WrittenInstant.Write(happened.Latest));
        w.WriteEndObject();
    }

    private static byte[] Json(Action<Utf8JsonWriter> members)
    {
        using var stream = new MemoryStream(256);
        using (var w = new Utf8JsonWriter(stream, Plainly))
        {
            w.WriteStartObject();
            members(w);
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Envelope(Utf8JsonWriter w, Happened happened, Instant recorded, string by, Payload payload)
    {
        Write(w, "happened", happened);
        w.WriteString("recorded", WrittenInstant.Write(recorded));
        w.WriteString("by", by);
        w.WriteString("kind", payload is Payload.OfNewerVersion other ? other.Kind : Kinds.Wire(Kinds.Of(payload)));
        Kinds.Write(payload, new FieldWriter(w));
    }
}
