using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;

namespace Farhold.Review;

/// <summary>A look back as JSON. What a point does not have is left out.</summary>
public static class ReviewJson
{
    public static byte[] Write(LookBack look)
    {
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream, new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            w.WriteStartObject();
            w.WriteString("until", WrittenInstant.Write(look.Until));
            w.WriteString("protocol", look.Rules.Protocol.Id);
            w.WriteString("version", look.Rules.Protocol.Version);
            w.WriteString("hash", look.Rules.Protocol.Hash);
            w.WriteStartArray("points");
            foreach (var point in look.Points)
                Write(w, point);
            w.WriteEndArray();
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Write(Utf8JsonWriter w, ReviewPoint p)
    {
        w.WriteStartObject();
        w.WriteString("kind", Wire.Word(p.Kind));
        w.WriteString("earliest", WrittenInstant.Write(p.When.Earliest));
        w.WriteString("latest", WrittenInstant.Write(p.When.Latest));
        if (p.Limb is { } limb)
            w.WriteString("limb", Wire.Word(limb));
        Texts(w, "entries", p.Entries.Select(e => e.ToString()));
        Span(w, "sinceTightened", p.SinceTightened);
        Span(w, "lasting", p.Lasting);
        Seconds(w, "askedS", p.Asked);
        Word(w, "verdict", p.Verdict);
        Word(w, "writtenVerdict", p.WrittenVerdict);
        Texts(w, "unknown", p.Unknown);
        Texts(w, "reasons", p.Reasons);
        Seconds(w, "offS", p.Off);
        Seconds(w, "scoreS", p.Score);
        if (p.Text is { } text)
            w.WriteString("text", text);
        Word(w, "fits", p.Fits);
        w.WriteString("says", ReviewWords.Of(p));
        w.WriteEndObject();
    }

    private static void Span(Utf8JsonWriter w, string name, Elapsed? elapsed)
    {
        if (elapsed is not { } known)
            return;
        w.WriteStartObject(name);
        w.WriteNumber("minS", known.Min.TotalSeconds);
        w.WriteNumber("maxS", known.Max.TotalSeconds);
        w.WriteEndObject();
    }

    private static void Seconds(Utf8JsonWriter w, string name, Duration? duration)
    {
        if (duration is { } known)
            w.WriteNumber(name, known.TotalSeconds);
    }

    private static void Word<T>(Utf8JsonWriter w, string name, T? value)
        where T : struct, Enum
    {
        if (value is { } known)
            w.WriteString(name, Wire.Word(known));
    }

    private static void Texts(Utf8JsonWriter w, string name, IEnumerable<string> texts)
    {
        var all = texts.ToArray();
        if (all.Length == 0)
            return;
        w.WriteStartArray(name);
        foreach (var text in all)
            w.WriteStringValue(text);
        w.WriteEndArray();
    }
}
