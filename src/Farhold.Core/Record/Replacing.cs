using System.Globalization;
using System.Text.Json;

namespace Farhold;

/// <summary>What an amendment replaces, in words.</summary>
public static class Replacing
{
    /// <summary><c>heartRate is 88</c>.</summary>
    public static string InWords(JsonText replace)
    {
        using var json = JsonDocument.Parse(replace.Utf8);
        return string.Join(", ", json.RootElement.EnumerateObject().Select(m => $"{m.Name} is {Value(m.Value)}"));
    }

    /// <summary>Field by field: <c>heartRate 188 becomes 88</c>.</summary>
    public static string InWords(JsonText replace, Entry target)
    {
        using var json = JsonDocument.Parse(replace.Utf8);
        using var old = JsonDocument.Parse(target.Json.Utf8);
        return string.Join(", ", json.RootElement.EnumerateObject().Select(m =>
            $"{m.Name} {(old.RootElement.TryGetProperty(m.Name, out var was) ? Value(was) : "unknown")} becomes {Value(m.Value)}"));
    }

    private static string Value(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => WrittenInstant.TryParse(System.Text.Encoding.UTF8.GetBytes(value.GetString()!)) is { } time
            ? Say.Time(time) : value.GetString()!.Replace('-', ' '),
        JsonValueKind.Null => "unknown",
        JsonValueKind.True => "yes",
        JsonValueKind.False => "no",
        JsonValueKind.Number when value.TryGetDouble(out var number) => number.ToString(CultureInfo.InvariantCulture),
        JsonValueKind.Object when value.TryGetProperty("earliest", out var e) && value.TryGetProperty("latest", out var l) =>
            $"between {Value(e)} and {Value(l)}",
        _ => value.GetRawText(),
    };
}
