using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Reads where something is: a place on the ground, and whose clocks are meant.</summary>
internal static class PlaceFields
{
    /// <summary>The member as a place: <c>lat</c> and <c>lon</c>, nothing else.</summary>
    public static PlanPlace? Place(this LocatedObject fields, string name)
    {
        if (fields.Object(name) is not { IsObject: true } place)
            return null;
        place.Required("lat", "degrees north, negative south");
        place.Required("lon", "degrees east, negative west");
        var (lat, lon) = (place.Number("lat", -90, 90, " degrees"), place.Number("lon", -180, 180, " degrees"));
        place.Done();
        return lat is { } y && lon is { } x ? new PlanPlace(y, x) : null;
    }

    public static DateTimeZone? Zone(this LocatedObject fields)
    {
        const string name = "timeZone";
        if (fields.Any(name) is not { } value || fields.Text(name, 64) is not { } text)
            return null;
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(text);
        if (zone is null)
            fields.File.RefuseValue(value, name, "a time zone, named like Europe/Zurich");
        return zone;
    }
}
