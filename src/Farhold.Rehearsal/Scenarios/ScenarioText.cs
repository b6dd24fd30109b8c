using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>The common fields of a scenario, read from its text and written into it; every other character stays as it is.</summary>
/// <remarks>The text may be broken elsewhere, or everywhere: then nothing is read, and what can't be written is left alone.</remarks>
public static class ScenarioText
{
    /// <summary>Design: from the injury to the first tourniquet, and how far people's words lie about it, in minutes.</summary>
    private const int ToTourniquet = 2;
    private const int SaidBefore = 3;
    private const int SaidAfter = 2;

    /// <summary>One to begin with: usable, and of no casualty that is shipped.</summary>
    public const string New = """
        {
          "scenario": "our-first",
          "title": "Untitled",
          "briefing": "Where you are, who is hurt, what others did, and who is with you.",
          "model": 1,
          "seed": 1,
          "start": "2031-06-01T10:00:00Z",
          "learn": ["decide-attempt", "take-signs", "pack-tight", "press-long"],
          "casualty": {"alias": "Kim", "sex": "female", "ageYears": 30, "massKg": 70, "heightM": 1.72},
          "wounds": [
            {"wound": "w1", "limb": "left-leg", "vessel": "artery", "bleedMlPerMin": 180, "needsTourniquet": true, "difficulty": 0.45}
          ],
          "injured": "-PT22M",
          "before": [
            {"at": "-PT20M", "act": "tighten", "limb": "left-leg", "tourniquet": "t1", "make": "windlass"}
          ],
          "surroundings": {"airC": 12, "insulation": 0.35},
          "kit": [
            {"item": "haemostatic-gauze", "count": 2},
            {"item": "pressure-dressing", "count": 2},
            {"item": "tourniquet", "count": 1}
          ],
          "help": {"care": "surgery", "likely": "PT8H"},
          "end": {"at": "PT1H30M"}
        }

        """;

    public static string? Title(string text) => String(text, "title");

    public static string WithTitle(string text, string title) => With(text, Json(title), "title");

    public static string? Briefing(string text) => String(text, "briefing");

    public static string WithBriefing(string text, string briefing) => With(text, Json(briefing), "briefing");

    /// <summary>An instant, as it stands there.</summary>
    public static string? Start(string text) => String(text, "start");

    public static string WithStart(string text, string start) => With(text, Json(start), "start");

    public static double? AgeYears(string text) => Number(text, "casualty", "ageYears");

    public static string WithAgeYears(string text, double years) => With(text, Json(years), "casualty", "ageYears");

    public static double? MassKg(string text) => Number(text, "casualty", "massKg");

    public static string WithMassKg(string text, double kilograms) => With(text, Json(kilograms), "casualty", "massKg");

    /// <summary>Of the first wound; null where it is on the trunk.</summary>
    public static Limb? Place(string text) => String(text, "wounds", "0", "limb") is { } word ? Wire.Parse<Limb>(word) : null;

    /// <summary>With what others did to that limb before; what injects and expectations say of it is left to the author.</summary>
    public static string WithPlace(string text, Limb limb)
    {
        if (String(text, "wounds", "0", "limb") is not { } old)
            return text;
        text = With(text, Json(Wire.Word(limb)), "wounds", "0", "limb");
        for (var i = 0; Raw(text, "before", Index(i)) is not null; i++)
            if (String(text, "before", Index(i), "limb") == old)
                text = With(text, Json(Wire.Word(limb)), "before", Index(i), "limb");
        return text;
    }

    /// <summary>Of holding the first wound, 0 to 1; null where it is drawn.</summary>
    public static double? Difficulty(string text) => Number(text, "wounds", "0", "difficulty");

    public static string WithDifficulty(string text, double difficulty) => With(text, Json(difficulty), "wounds", "0", "difficulty");

    /// <summary>How long before the start others did their one act, in minutes; null where there were several.</summary>
    public static int? TiedMinutes(string text) =>
        Raw(text, "before", "1") is not null ? null
        : String(text, "before", "0", "at") is { } at && SpanFields.Read(at) is { } seconds ? (int)Math.Round(-seconds / 60)
        : null;

    /// <summary>The injury a little before it, and what people say about it around it.</summary>
    public static string WithTiedMinutes(string text, int minutes)
    {
        if (Raw(text, "before", "0") is null || Raw(text, "before", "1") is not null)
            return text;
        text = With(text, Before(minutes), "before", "0", "at");
        text = With(text, Before(minutes + ToTourniquet), "injured");
        if (Raw(text, "before", "0", "reported") is null)
            return text;
        text = With(text, Before(minutes + SaidBefore), "before", "0", "reported", "earliest");
        return With(text, Before(Math.Max(0, minutes - SaidAfter)), "before", "0", "reported", "latest");
    }

    /// <summary>When higher care is likely, in minutes from the start.</summary>
    public static int? HelpMinutes(string text) =>
        String(text, "help", "likely") is { } likely && SpanFields.Read(likely) is { } seconds ? (int)Math.Round(seconds / 60) : null;

    /// <summary>Two thirds of it at the earliest, and half as much again at the latest, where the text says so at all.</summary>
    public static string WithHelpMinutes(string text, int minutes)
    {
        if (Raw(text, "help") is null)
            return With(text, $$"""{"care": "surgery", "likely": {{Span(minutes)}}}""", "help");
        text = With(text, Span(minutes), "help", "likely");
        if (Raw(text, "help", "earliest") is not null)
            text = With(text, Span(minutes * 2 / 3), "help", "earliest");
        return Raw(text, "help", "latest") is null ? text : With(text, Span(minutes * 3 / 2), "help", "latest");
    }

    /// <summary>The scenario's short name.</summary>
    public static string? Id(string text) => String(text, "scenario");

    public static string WithId(string text, string id) => With(text, Json(id), "scenario");

    private static string Index(int i) => i.ToString(CultureInfo.InvariantCulture);

    private static string Before(int minutes) => minutes == 0 ? Json("PT0S") : Json("-" + SpanFields.Write(60 * minutes));

    private static string Span(int minutes) => Json(SpanFields.Write(60 * minutes));

    private static string Json(string value) => $"\"{JavaScriptEncoder.UnsafeRelaxedJsonEscaping.Encode(value)}\"";

    private static string Json(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string? String(string text, params ReadOnlySpan<string> path)
    {
        if (Raw(text, path) is not ['"', ..] raw)
            return null;
        try
        {
            using var json = JsonDocument.Parse(raw);
            return json.RootElement.GetString();
        }
        catch (InvalidOperationException)
        {
            return null; // an escape that stands for no character
        }
    }

    private static double? Number(string text, params ReadOnlySpan<string> path) =>
        double.TryParse(Raw(text, path), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>The JSON of a value as it stands there; null where there is none.</summary>
    private static string? Raw(string text, params ReadOnlySpan<string> path)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        return Find(utf8, path) is { IsThere: true } place ? Encoding.UTF8.GetString(utf8[place.From..place.To]) : null;
    }

    /// <summary>The text with another value there; the same text where there is no such place.</summary>
    private static string With(string text, string json, params ReadOnlySpan<string> path)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        if (Find(utf8, path) is not { } place)
            return text;
        var value = place.IsThere ? json : $"{Json(path[^1])}: {json}{(place.IsFirst ? "" : ", ")}";
        return Encoding.UTF8.GetString(utf8[..place.From]) + value + Encoding.UTF8.GetString(utf8[place.To..]);
    }

    /// <summary>Where a value stands, or, in an object that lacks it, where it can be put in.</summary>
    private static Spot? Find(byte[] utf8, ReadOnlySpan<string> path)
    {
        var reader = new Utf8JsonReader(utf8);
        try
        {
            reader.Read();
            for (var i = 0; i < path.Length; i++)
            {
                if (reader.TokenType == JsonTokenType.StartObject)
                {
                    var inside = (int)reader.BytesConsumed;
                    var first = true;
                    while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName && !reader.ValueTextEquals(path[i]))
                    {
                        reader.Skip();
                        first = false;
                    }

                    if (reader.TokenType == JsonTokenType.EndObject)
                        return i == path.Length - 1 ? new(inside, inside, IsThere: false, first) : null;
                    reader.Read();
                }
                else if (reader.TokenType == JsonTokenType.StartArray && int.TryParse(path[i], out var index))
                {
                    for (var at = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray && at < index; at++)
                        reader.Skip();
                    if (reader.TokenType == JsonTokenType.EndArray)
                        return null;
                }
                else
                {
                    return null;
                }
            }

            var from = (int)reader.TokenStartIndex;
            reader.Skip();
            return new(from, (int)reader.BytesConsumed, IsThere: true, IsFirst: false);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <param name="IsFirst">The object is empty.</param>
    private sealed record Spot(int From, int To, bool IsThere, bool IsFirst);
}
