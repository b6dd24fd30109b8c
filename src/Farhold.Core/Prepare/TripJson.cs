using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Farhold.Prepare;

/// <summary>A trip and its check as JSON; what nobody said is null.</summary>
public static class TripJson
{
    private static readonly JsonWriterOptions Plain = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>In the form that <see cref="TripReader"/> reads.</summary>
    public static byte[] Write(TripPlan plan) =>
        Written(w =>
        {
            w.WriteString("route", plan.Route);
            if (plan.Days is { } days)
                w.WriteNumber("days", days);
            if (plan.HoursToHelp is { } hours)
                w.WriteNumber("hours", hours);
            w.WriteString("alarm", plan.Alarm);
            w.WriteStartArray("party");
            foreach (var one in plan.Party)
            {
                w.WriteStartObject();
                w.WriteString("name", one.Name);
                w.WriteString("role", one.Role);
                w.WriteBoolean("practised", one.Practised);
                w.WriteEndObject();
            }

            w.WriteEndArray();
            w.WriteStartArray("contacts");
            foreach (var contact in plan.Contacts)
                w.WriteStringValue(contact);
            w.WriteEndArray();
            w.WriteStartObject("packed");
            foreach (var (item, count) in plan.Packed)
                w.WriteNumber(item, count);
            w.WriteEndObject();
        });

    public static byte[] Write(ImmutableArray<TripCheckLine> lines) =>
        Written(w =>
        {
            foreach (var state in Enum.GetValues<Truth>())
                w.WriteNumber(Wire.Word(state), lines.Count(l => l.State == state));
            w.WriteStartArray("lines");
            foreach (var line in lines)
            {
                w.WriteStartObject();
                w.WriteString("id", line.Id);
                w.WriteString("state", Wire.Word(line.State));
                w.WriteString("text", line.Text);
                w.WriteStartArray("sources");
                foreach (var source in line.Sources)
                    w.WriteStringValue(source);
                w.WriteEndArray();
                w.WriteEndObject();
            }

            w.WriteEndArray();
        });

    private static byte[] Written(Action<Utf8JsonWriter> fields)
    {
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream, Plain))
        {
            w.WriteStartObject();
            fields(w);
            w.WriteEndObject();
        }

        return stream.ToArray();
    }
}
