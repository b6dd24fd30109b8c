using NodaTime;

namespace Farhold.WayOut.Astronomy;

/// <summary>The sun's course around one noon.</summary>
/// <param name="Noon">The passage over the meridian nearest to 12:00 of the local clock.</param>
/// <param name="NoonAltitude">Degrees, without refraction; below zero where the sun never comes up.</param>
/// <remarks>
/// Dawns are the last before that noon, dusks the first after it, both within 12.2 hours: a sunset can fall on the next
/// date of the calendar. A flat horizon at sea level is assumed: mountains take tens of minutes off both ends, and the air
/// near the horizon shifts the times by a minute, at grazing incidence by many. A dawn can be missing though its dusk is
/// not. Within some five degrees of a pole morning and evening lose their meaning: ask <see cref="Daylight.Along"/> there.
/// </remarks>
public sealed record SunDay(
    Instant Noon,
    double NoonAltitude,
    SunEvent AstronomicalDawn,
    SunEvent NauticalDawn,
    SunEvent CivilDawn,
    SunEvent Sunrise,
    SunEvent Sunset,
    SunEvent CivilDusk,
    SunEvent NauticalDusk,
    SunEvent AstronomicalDusk
)
{
    private static readonly Duration Reach = Duration.FromHours(12.2);

    public static SunDay Of(LocalDate date, DateTimeZone zone, GeoPoint place)
    {
        var clockNoon = (date + new LocalTime(12, 0)).InZoneLeniently(zone).ToInstant();
        var noon = Sun.TransitNear(clockNoon, place);
        double[] altitudes = [.. Enumerable.Range(1, 4).Select(light => LightSteps.Beginning((Light)light))];
        var before = SunCrossings.Find(noon - Reach, noon, place, altitudes);
        var after = SunCrossings.Find(noon, noon + Reach, place, altitudes);
        var altitude = Sun.Altitude(noon, place);
        return new(noon, altitude, Dawn(0), Dawn(1), Dawn(2), Dawn(3), Dusk(3), Dusk(2), Dusk(1), Dusk(0));

        SunEvent Dawn(int i) => before[i].FindLastIndex(c => c.Rising) is >= 0 and var at ? new SunEvent.At(before[i][at].At) : None(i);

        SunEvent Dusk(int i) => after[i].FindIndex(c => !c.Rising) is >= 0 and var at ? new SunEvent.At(after[i][at].At) : None(i);

        SunEvent None(int i) => altitude >= altitudes[i] ? new SunEvent.StaysAbove() : new SunEvent.StaysBelow();
    }
}
