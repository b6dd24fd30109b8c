using System.Text.Encodings.Web;
using System.Text.Json;

namespace Farhold;

/// <summary>Applies an amendment to the entry it targets.</summary>
public static class Amending
{
    private static readonly JsonWriterOptions Plainly = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The entry as if written right at first: its fields, with those of the amendment in their place.</summary>
    /// <remarks>
    /// A field replaced by <c>null</c> becomes unknown. What an entry is (<c>id</c>, <c>kind</c>, <c>recorded</c>) can't be
    /// amended: withdraw it and enter the right one.
    /// </remarks>
    public static Read<Entry> Apply(Entry target, Payload.EntryAmended amendment)
    {
        using var replace = JsonDocument.Parse(amendment.Replace.Utf8);
        foreach (var fixedField in (string[])["id", "kind", "recorded"])
            if (replace.RootElement.TryGetProperty(fixedField, out _))
                return new Read<Entry>.Refused([new("amendment", 1, 1, $"{fixedField} can't be amended")]);

        using var old = JsonDocument.Parse(target.Json.Utf8);
        using var merged = new MemoryStream(target.Json.Utf8.Length + amendment.Replace.Utf8.Length);
        using (var w = new Utf8JsonWriter(merged, Plainly))
        {
            w.WriteStartObject();
            foreach (var member in old.RootElement.EnumerateObject())
                if (!replace.RootElement.TryGetProperty(member.Name, out _))
                    member.WriteTo(w);
            foreach (var member in replace.RootElement.EnumerateObject())
                member.WriteTo(w);
            w.WriteEndObject();
        }

        return new EntryReader().Read(merged.ToArray(), "amendment", 1);
    }

    public static bool ReplacesTime(Payload.EntryAmended amendment)
    {
        using var replace = JsonDocument.Parse(amendment.Replace.Utf8);
        return replace.RootElement.TryGetProperty("happened", out _);
    }
}
