using System.Globalization;
using System.Text.Json;
using NodaTime;

namespace Farhold.Records;

/// <summary>What an amendment replaces, in words.</summary>
public static class AmendmentWords
{
    /// <summary><c>heart rate is 88</c>.</summary>
    public static string InWords(JsonText replace, DateTimeZone? zone = null)
    {
        using var json = JsonDocument.Parse(replace.Utf8);
        return string.Join(
            ", ",
            json.RootElement.EnumerateObject().Select(m => RecordTexts.AmendedIs(FieldWords.Of(m.Name), Value(m.Value, zone)))
        );
    }

    /// <summary>Field by field: <c>heart rate 188 becomes 88</c>.</summary>
    public static string InWords(JsonText replace, Entry target, DateTimeZone? zone = null)
    {
        using var json = JsonDocument.Parse(replace.Utf8);
        using var old = JsonDocument.Parse(target.Json.Utf8);
        return string.Join(
            ", ",
            json.RootElement.EnumerateObject()
                .Select(m =>
                    RecordTexts.AmendedBecomes(
                        FieldWords.Of(m.Name),
                        old.RootElement.TryGetProperty(m.Name, out var was) ? Value(was, zone) : RecordTexts.Unknown,
                        Value(m.Value, zone)
                    )
                )
        );
    }

    /// <summary>The fields of an entry beside those that every entry has, as they are written.</summary>
    public static string Others(Entry entry)
    {
        using var json = JsonDocument.Parse(entry.Json.Utf8);
        return string.Join(
            ", ",
            json.RootElement.EnumerateObject()
                .Where(m => m.Name is not ("id" or "happened" or "recorded" or "by" or "kind" or "previous" or "practice"))
                .Select(m => $"{m.Name} {m.Value.GetRawText()}")
        );
    }

    private static string Value(JsonElement value, DateTimeZone? zone) =>
        value.ValueKind switch
        {
            JsonValueKind.String => WrittenInstant.TryParse(System.Text.Encoding.UTF8.GetBytes(value.GetString()!)) is { } time
                ? Say.Time(time, zone)
                : value.GetString()!.Replace('-', ' '),
            JsonValueKind.Null => RecordTexts.Unknown,
            JsonValueKind.True => RecordTexts.Yes,
            JsonValueKind.False => RecordTexts.No,
            JsonValueKind.Number when value.TryGetDouble(out var number) => number.ToString(CultureInfo.InvariantCulture),
            JsonValueKind.Object when value.TryGetProperty("earliest", out var e) && value.TryGetProperty("latest", out var l) =>
                RecordTexts.Between(Value(e, zone), Value(l, zone)),
            _ => value.GetRawText(),
        };
}
