using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace Farhold.WayOut.Plans;

/// <summary>Reads the fields of one JSON object, once each, and complains where they stand.</summary>
internal sealed class PlacedFields
{
    private static readonly Duration longest = Duration.FromDays(30);

    private readonly Located json;
    private readonly Complaints complaints;
    private readonly Dictionary<string, Located> fields = [];
    private readonly HashSet<string> known = [];

    public PlacedFields(Located json, Complaints complaints, string what)
    {
        (this.json, this.complaints) = (json, complaints);
        if (json.Kind != JsonValueKind.Object)
            complaints.Add(json.Offset, $"{what} is written as an object in braces.");
        foreach (var (at, name, value) in json.Members)
            if (!fields.TryAdd(name, value))
                complaints.Add(at, $"'{name}' is given twice.");
    }

    public bool IsObject => json.Kind == JsonValueKind.Object;

    public bool Has(string name) => fields.ContainsKey(name);

    public int At(string name) => fields.TryGetValue(name, out var value) ? value.Offset : json.Offset;

    public void Refuse(string name, string reason) => complaints.Add(At(name), reason);

    public void Missing(string name, string why)
    {
        if (IsObject && !Has(name))
            complaints.Add(json.Offset, $"'{name}' is missing: {why}");
    }

    /// <summary>Complains about fields nobody asked for; ask for all first.</summary>
    public void Done(string what)
    {
        foreach (var (at, name, _) in json.Members)
            if (!known.Contains(name))
                complaints.Add(at, $"'{name}' is not a field of {what}{Nearest(name)}.");
    }

    public Located? Any(string name)
    {
        known.Add(name);
        return fields.GetValueOrDefault(name);
    }

    public string? Text(string name, int longest = 2000)
    {
        if (Any(name) is not { } value)
            return null;
        if (value.Kind == JsonValueKind.String && value.Text.Length > 0 && value.Text.EnumerateRunes().Count() <= longest)
            return value.Text;
        complaints.Add(value.Offset, $"'{name}' is text of 1 to {longest} characters in quotes.");
        return null;
    }

    public bool? Flag(string name)
    {
        if (Any(name) is not { } value)
            return null;
        if (value.Kind is JsonValueKind.True or JsonValueKind.False)
            return value.Kind == JsonValueKind.True;
        complaints.Add(value.Offset, $"'{name}' is true or false.");
        return null;
    }

    public double? Number(string name, double low, double high, string unit)
    {
        if (Any(name) is not { } value)
            return null;
        if (value.Kind == JsonValueKind.Number && NumberOf(value) >= low && NumberOf(value) <= high)
            return NumberOf(value);
        complaints.Add(value.Offset, string.Create(CultureInfo.InvariantCulture, $"'{name}' is a number from {low} to {high}{unit}."));
        return null;
    }

    public int? Whole(string name, int low, int high, string unit)
    {
        if (Number(name, low, high, unit) is not { } value)
            return null;
        if (value == Math.Floor(value))
            return (int)value;
        complaints.Add(At(name), $"'{name}' is a whole number.");
        return null;
    }

    /// <summary>One of some words, and what it stands for.</summary>
    public T? Word<T>(string name, IEnumerable<(string Word, T Meaning)> words)
        where T : class
    {
        if (Any(name) is not { } value)
            return null;
        if (value.Kind == JsonValueKind.String)
            foreach (var (word, meaning) in words)
                if (word == value.Text)
                    return meaning;
        complaints.Add(value.Offset, $"'{name}' is one of {string.Join(", ", words.Select(w => w.Word))}.");
        return null;
    }

    /// <summary>An ISO 8601 duration, or a number of minutes; from 0 to 30 days.</summary>
    public Duration? Time(string name)
    {
        if (Any(name) is not { } value)
            return null;
        var time = value.Kind switch
        {
            JsonValueKind.String => DurationText.Read(value.Text),
            JsonValueKind.Number when Math.Abs(NumberOf(value)) <= 1e6 => Duration.FromMinutes(NumberOf(value)),
            _ => null,
        };
        if (time is null && value.Kind == JsonValueKind.String && value.Text.StartsWith('-') && DurationText.Read(value.Text[1..]) is not null)
            time = Duration.MinValue;
        if (time is null)
            complaints.Add(value.Offset, $"'{name}' is a duration such as \"PT1H20M\", or a number of minutes.");
        else if (time < Duration.Zero)
            complaints.Add(value.Offset, $"'{name}' is negative; a leg takes no time at least.");
        else if (time > longest)
            complaints.Add(value.Offset, $"'{name}' is longer than 30 days.");
        else
            return time;
        return null;
    }

    /// <summary>An instant with its offset from UTC, of years that leave room for any journey.</summary>
    public Instant? Moment(string name)
    {
        if (Text(name, 64) is not { } text)
            return null;
        if (WrittenInstant.TryParse(text) is { } read)
            return read;
        Refuse(name, $"'{name}' is an instant of the years 1900 to 2500, such as \"2031-05-04T02:10:00Z\".");
        return null;
    }

    public DateTimeZone? Zone(string name = "timeZone")
    {
        if (Text(name, 64) is not { } text)
            return null;
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(text);
        if (zone is null)
            Refuse(name, $"'{text}' is no time zone; one is named like \"Europe/Zurich\".");
        return zone;
    }

    /// <summary>This object as a place: <c>lat</c> and <c>lon</c>, nothing else.</summary>
    public PlanPlace? Place(string what)
    {
        if (!IsObject)
            return null;
        Missing("lat", "degrees north, negative south.");
        Missing("lon", "degrees east, negative west.");
        var (lat, lon) = (Number("lat", -90, 90, " degrees"), Number("lon", -180, 180, " degrees"));
        Done(what);
        return lat is { } y && lon is { } x ? new PlanPlace(y, x) : null;
    }

    private static double NumberOf(Located value) =>
        double.TryParse(value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;

    private string Nearest(string name)
    {
        var nearest = known.Where(k => EditDistance.Between(k.ToUpperInvariant(), name.ToUpperInvariant()) <= 2)
            .MinBy(k => EditDistance.Between(k.ToUpperInvariant(), name.ToUpperInvariant()));
        return nearest is null ? "" : $"; is '{nearest}' meant?";
    }
}
