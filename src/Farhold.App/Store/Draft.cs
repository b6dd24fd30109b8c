using System.Text.Json;
using NodaTime;

namespace Farhold.App.Store;

/// <summary>An entry before it has its id, as the JSON object that <see cref="ILogStore.AppendAsync"/> takes.</summary>
public static class Draft
{
    /// <param name="recorded">Written to the millisecond.</param>
    /// <param name="practice">Marks the line itself, so that it stays marked wherever it is copied.</param>
    public static string Of(
        string kind, Happened happened, Instant recorded, string by, bool practice, Action<Utf8JsonWriter>? fields = null) =>
        Json.Text(w =>
        {
            if (happened.IsInstant)
                w.WriteString("happened", Iso(happened.Earliest));
            else
            {
                w.WriteStartObject("happened");
                w.WriteString("earliest", Iso(happened.Earliest));
                w.WriteString("latest", Iso(happened.Latest));
                w.WriteEndObject();
            }
            w.WriteString("recorded", Iso(recorded));
            w.WriteString("by", by);
            w.WriteString("kind", kind);
            if (practice)
                w.WriteBoolean("practice", true);
            fields?.Invoke(w);
        });

    private static string Iso(Instant instant) =>
        WrittenInstant.Write(Instant.FromUnixTimeMilliseconds(instant.ToUnixTimeMilliseconds()));
}
