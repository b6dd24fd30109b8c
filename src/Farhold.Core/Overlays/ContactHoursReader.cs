using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Overlays;

/// <summary>Reads when a contact can be reached: hours by the clock, on days of the week, in a zone.</summary>
internal sealed class ContactHoursReader(LocatedJson json)
{
    private const int MostHours = 14;

    /// <summary>Null where the contact names no hours: at any hour; or with a refusal.</summary>
    public ContactHours? Read(Located contact)
    {
        if (contact["open"] is not { } open)
        {
            if (contact["zone"] is { } unused)
                json.Refuse(unused.Offset, "zone is for hours under open, and there are none");
            return null;
        }

        var zone = Zone(contact);
        var items = json.Items(contact, "open", required: false);
        if (open.Kind == JsonValueKind.Array && items.Length is 0 or > MostHours)
            json.RefuseValue(open, "open", $"a list of 1 to {MostHours}");
        var hours = items.Where(i => json.IsObject(i, "hours")).Select(Hours).OfType<OpenHours>().ToImmutableArray();
        return zone is null ? null : new(zone, hours);
    }

    private DateTimeZone? Zone(Located contact)
    {
        const string accepted = "a time zone, named like Europe/Oslo";
        if (json.Required(contact, "zone", accepted) is not { } given)
            return null;
        var zone = given.Kind == JsonValueKind.String ? DateTimeZoneProviders.Tzdb.GetZoneOrNull(given.Text) : null;
        if (zone is null)
            json.RefuseValue(given, "zone", accepted);
        return zone;
    }

    private OpenHours? Hours(Located item)
    {
        json.OnlyKnown(item, "days", "from", "to");
        var days = item["days"] is null ? [.. ContactWords.Week] : Days(item);
        var (from, to) = (Time(item, "from", midnightEnds: false), Time(item, "to", midnightEnds: true));
        if (from is not { } begin || to is not { } end)
            return null;
        if (begin == end && begin != LocalTime.Midnight)
            json.Refuse(item.Offset, "from and to are the same: a whole day is from 00:00 to 24:00");
        return new(days, begin, end);
    }

    private ImmutableArray<IsoDayOfWeek> Days(Located item)
    {
        var days = ImmutableSortedSet.CreateBuilder<IsoDayOfWeek>();
        var items = json.Items(item, "days");
        if (item["days"] is { Kind: JsonValueKind.Array, Items.IsEmpty: true } none)
            json.RefuseValue(none, "days", $"a list of {string.Join(", ", ContactWords.Week.Select(ContactWords.Day))}");
        foreach (var day in items)
        {
            var named = ContactWords.Week.Where(d => day.Kind == JsonValueKind.String && ContactWords.Day(d) == day.Text).ToArray();
            if (named.Length == 0)
                json.RefuseValue(day, "a day", LocatedFields.OneOf(ContactWords.Week.Select(ContactWords.Day)));
            days.UnionWith(named);
        }

        return [.. days];
    }

    private LocalTime? Time(Located item, string name, bool midnightEnds)
    {
        var accepted = midnightEnds ? "a time such as 22:30, or 24:00" : "a time such as 07:00";
        if (json.Required(item, name, accepted) is not { } given)
            return null;
        if (given.Kind == JsonValueKind.String && Clock(given.Text, midnightEnds) is { } time)
            return time;
        json.RefuseValue(given, name, accepted);
        return null;
    }

    private static LocalTime? Clock(string text, bool midnightEnds)
    {
        if (midnightEnds && text == "24:00")
            return LocalTime.Midnight;
        if (text is not [>= '0' and <= '9', >= '0' and <= '9', ':', >= '0' and <= '9', >= '0' and <= '9'])
            return null;
        var (hour, minute) = (((text[0] - '0') * 10) + text[1] - '0', ((text[3] - '0') * 10) + text[4] - '0');
        return hour < 24 && minute < 60 && !(midnightEnds && hour + minute == 0) ? new LocalTime(hour, minute) : null;
    }
}
