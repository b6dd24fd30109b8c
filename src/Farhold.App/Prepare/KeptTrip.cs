using System.Collections.Immutable;
using System.Text.Json;
using Farhold.App.Phone;

namespace Farhold.App.Prepare;

/// <summary>The trip being prepared, as this phone keeps it.</summary>
public sealed class KeptTrip(IPhone phone)
{
    private const string Key = "trip";

    private TripPlan? plan;

    public TripPlan Plan => plan ??= Read(phone.Get(Key));

    /// <summary>False if the phone did not take it.</summary>
    public bool IsKept { get; private set; } = true;

    public void Use(TripPlan next)
    {
        plan = next;
        IsKept = phone.Set(Key, Write(next));
    }

    private static string Write(TripPlan plan) => Json.Text(w =>
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

    /// <summary>Empty where nothing was kept, or nothing that can be read.</summary>
    private static TripPlan Read(string text)
    {
        if (text.Length == 0)
            return TripPlan.Empty;
        try
        {
            using var json = JsonDocument.Parse(text);
            var root = json.RootElement;
            return new(
                root.GetProperty("route").GetString(),
                root.TryGetProperty("days", out var days) ? Math.Clamp(days.GetInt32(), 1, TripPlan.MostDays) : null,
                root.TryGetProperty("hours", out var hours) ? Math.Clamp(hours.GetDouble(), 0, TripPlan.MostHours) : null,
                root.GetProperty("alarm").GetString(),
                [.. root.GetProperty("party").EnumerateArray().Select(p => new PartyMember(p.Text("name"), p.Text("role"), p.GetProperty("practised").GetBoolean()))],
                [.. root.GetProperty("contacts").EnumerateArray().Select(c => c.GetString()!)],
                root.GetProperty("packed").EnumerateObject().ToImmutableSortedDictionary(p => p.Name, p => Math.Max(0, p.Value.GetInt32()), StringComparer.Ordinal));
        }
        catch (Exception spoilt) when (spoilt is JsonException or InvalidOperationException or KeyNotFoundException or FormatException or ArgumentException)
        {
            return TripPlan.Empty;
        }
    }
}
