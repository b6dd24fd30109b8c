using System.Text.Encodings.Web;
using System.Text.Json;

namespace Farhold.Exchange.Advice;

/// <summary>A call for advice as JSON.</summary>
public static class CallJson
{
    public static byte[] Write(AdviceCall call)
    {
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream, new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            var form = call.Form;
            w.WriteStartObject();
            w.WriteString("at", WrittenInstant.Write(call.Facts.At));
            w.WriteString("for", Wire.Word(call.Question.For));
            if (call.Question.Limb is { } limb)
                w.WriteString("limb", Wire.Word(limb));
            w.WriteString("question", call.Question.Text);
            if (!call.Whom.IsEmpty)
                Lines(w, "whom", call.Whom);
            Lines(w, "heads", form.Heads);
            w.WriteStartArray("parts");
            foreach (var part in form.Parts)
            {
                w.WriteStartObject();
                w.WriteString("name", part.Name);
                Lines(w, "lines", part.Lines);
                w.WriteEndObject();
            }

            w.WriteEndArray();
            w.WriteString("short", call.Short);
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Lines(Utf8JsonWriter w, string name, IEnumerable<string> lines)
    {
        w.WriteStartArray(name);
        foreach (var line in lines)
            w.WriteStringValue(line);
        w.WriteEndArray();
    }
}
