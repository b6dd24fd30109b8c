using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Farhold.Records;

/// <summary>Applies an amendment to the entry it targets.</summary>
public static class Amendments
{
    private static readonly JsonWriterOptions Plainly = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The entry as if written right at first: its fields, with those of the amendment in their place.</summary>
    /// <remarks>
    /// A field replaced by <c>null</c> becomes unknown; so one that is not understood can be taken back. What an entry is (<c>id</c>,
    /// <c>kind</c>, <c>recorded</c>) can't be
    /// amended: withdraw it and enter the right one.
    /// </remarks>
    public static Read<Entry> Apply(Entry target, Payload.EntryAmended amendment)
    {
        using var replace = JsonDocument.Parse(amendment.Replace.Utf8);
        foreach (var fixedField in (string[])["id", "kind", "recorded"])
            if (replace.RootElement.TryGetProperty(fixedField, out _))
                return new Read<Entry>.Refused([new("amendment", 1, 1, RecordTexts.CantBeAmended(fixedField))]);

        using var old = JsonDocument.Parse(target.Json.Utf8);
        using var merged = new MemoryStream(target.Json.Utf8.Length + amendment.Replace.Utf8.Length);
        using (var w = new Utf8JsonWriter(merged, Plainly))
        {
            w.WriteStartObject();
            foreach (var member in old.RootElement.EnumerateObject())
                if (member.Value.ValueKind != JsonValueKind.Null && !replace.RootElement.TryGetProperty(member.Name, out _))
                    member.WriteTo(w);
            foreach (var member in replace.RootElement.EnumerateObject())
                if (member.Value.ValueKind != JsonValueKind.Null || !old.RootElement.TryGetProperty(member.Name, out _))
                    member.WriteTo(w);
            w.WriteEndObject();
        }

        // A null that takes nothing back was meant for another field.
        return new EntryReader().Read(merged.ToArray(), "amendment", 1, nulls: true);
    }

    /// <summary>
    /// The fields that an amendment replaces by something this version can't make anything of, where they stand in its line.
    /// </summary>
    public static ImmutableArray<NotUnderstood> NotUnderstood(Entry target, Entry amendment)
    {
        if (
            Apply(target, (Payload.EntryAmended)amendment.Payload)
            is not Read<Entry>.Usable { Value.NotUnderstood: { IsEmpty: false } rest }
        )
            return [];
        var places = Replaced(amendment.Json.Utf8.Span);
        return
        [
            .. rest.Where(r => places.ContainsKey(Whole(r.Name)))
                .Select(r => r with { Offset = places[Whole(r.Name)] })
                .OrderBy(r => r.Offset),
        ];
    }

    private static string Whole(string name)
    {
        var dot = name.IndexOf('.', StringComparison.Ordinal);
        return dot < 0 ? name : name[..dot];
    }

    /// <summary>Names of the fields that a line replaces, and where each begins.</summary>
    private static Dictionary<string, int> Replaced(ReadOnlySpan<byte> line)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var inside = false;
        var reader = new Utf8JsonReader(line);
        while (reader.Read())
        {
            if (reader.TokenType != JsonTokenType.PropertyName)
                continue;
            if (reader.CurrentDepth == 1)
                inside = reader.ValueTextEquals("replace"u8);
            else if (inside && reader.CurrentDepth == 2)
                places[Farhold.Records.NotUnderstood.Cut(reader.GetString()!)] = (int)reader.TokenStartIndex;
        }

        return places;
    }

    public static bool ReplacesTime(Payload.EntryAmended amendment)
    {
        using var replace = JsonDocument.Parse(amendment.Replace.Utf8);
        return replace.RootElement.TryGetProperty("happened", out _);
    }
}
