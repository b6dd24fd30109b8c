using CsCheck;
using Farhold.Tests.WayOut.Ground;

namespace Farhold.Tests.WayOut.Astronomy;

public class SunDayTests
{
    private static readonly CheckTable Table = CheckTable.Of("solar_checks.csv");

    public static TheoryData<int, string, string> Events =>
        Table.Rows((t, row) => $"{t.Text(row, "place")} {t.Text(row, "local_date")} {t.Text(row, "event")}");

    [Theory, MemberData(nameof(Events))]
    public void A_checked_event_happens_when_it_should(int row, string label, string source)
    {
        var date = NodaTime.Text.LocalDatePattern.Iso.Parse(Table.Text(row, "local_date")).GetValueOrThrow();
        var day = SunDay.Of(date, Zone(row), Place(row));
        var found = Named(day, Table.Text(row, "event"));
        var why = $"{label}: {found} ({source})";
        switch (Table.Text(row, "status"))
        {
            case "always_above":
                Assert.True(found is SunEvent.StaysAbove, why);
                break;
            case "always_below":
                Assert.True(found is SunEvent.StaysBelow, why);
                break;
            default:
                var expected = Some.Time(Table.Text(row, "event_utc"));
                Assert.True(found is SunEvent.At, why);
                Assert.True(Math.Abs((((SunEvent.At)found).Instant - expected).TotalSeconds) <= Table.Number(row, "tolerance_s"), why);
                break;
        }

        if (Table.Text(row, "event") == "solar_noon")
            Assert.True(Math.Abs(day.NoonAltitude - Table.Number(row, "altitude_deg")) <= 0.02, $"{day.NoonAltitude} {why}");
    }

    [Fact]
    public void Away_from_the_polar_circles_the_events_come_in_order() =>
        Gen.Select(Gen.Double[-48, 48], Gen.Double[-180, 180], Gen.Int[0, 36500])
            .Sample(
                (latitude, longitude, dayNumber) =>
                {
                    var day = SunDay.Of(new LocalDate(2001, 1, 1).PlusDays(dayNumber), Near(longitude), new GeoPoint(latitude, longitude));
                    var events = new[]
                    {
                        day.AstronomicalDawn,
                        day.NauticalDawn,
                        day.CivilDawn,
                        day.Sunrise,
                        new SunEvent.At(day.Noon),
                        day.Sunset,
                        day.CivilDusk,
                        day.NauticalDusk,
                        day.AstronomicalDusk,
                    }
                        .Select(e => Assert.IsType<SunEvent.At>(e).Instant)
                        .ToArray();
                    Assert.Equal(events.Order(), events);
                    Assert.True(events[^1] - events[0] < Duration.FromHours(24.4));
                }
            );

    [Fact]
    public void At_every_event_the_sun_stands_at_its_altitude() =>
        Gen.Select(GroundGens.Place, Gen.Int[0, 36500])
            .Sample(
                (place, dayNumber) =>
                {
                    var day = SunDay.Of(new LocalDate(2001, 1, 1).PlusDays(dayNumber), Near(place.Longitude), place);
                    foreach (
                        var (found, altitude) in new[]
                        {
                            (day.AstronomicalDawn, -18),
                            (day.NauticalDawn, -12),
                            (day.CivilDawn, -6),
                            (day.Sunrise, -50 / 60.0),
                            (day.Sunset, -50 / 60.0),
                            (day.CivilDusk, -6),
                            (day.NauticalDusk, -12),
                            (day.AstronomicalDusk, -18),
                        }
                    )
                        if (found is SunEvent.At at)
                            Assert.Equal(altitude, Sun.At(at.Instant, place).Altitude, 3e-4);
                }
            );

    [Fact]
    public void No_event_means_that_every_look_finds_the_sun_on_the_same_side() =>
        Gen.Select(Gen.Double[60, 85], Gen.Bool, Gen.Double[-180, 180], Gen.Int[0, 36500])
            .Sample(
                (size, north, longitude, dayNumber) =>
                {
                    var place = new GeoPoint(north ? size : -size, longitude);
                    var day = SunDay.Of(new LocalDate(2001, 1, 1).PlusDays(dayNumber), Near(longitude), place);
                    for (var minutes = 0; minutes < 720; minutes += 7)
                    {
                        if (day.Sunrise is not SunEvent.At)
                            Assert.Equal(
                                day.Sunrise is SunEvent.StaysAbove,
                                Sun.LightAt(day.Noon - Duration.FromMinutes(minutes), place) == Light.Day
                            );
                        if (day.Sunset is not SunEvent.At)
                            Assert.Equal(
                                day.Sunset is SunEvent.StaysAbove,
                                Sun.LightAt(day.Noon + Duration.FromMinutes(minutes), place) == Light.Day
                            );
                    }
                }
            );

    // The longest day of the north is in June, so there the day grows with the latitude.
    [Fact]
    public void In_June_the_day_grows_towards_the_north() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[0.5, 5], Gen.Double[-180, 180])
            .Sample(
                (latitude, step, longitude) => Assert.True(Length(latitude) < Length(latitude + step), $"{latitude} {step} {longitude}")
            );

    private static Duration Length(double latitude)
    {
        var day = SunDay.Of(new LocalDate(2026, 6, 21), DateTimeZone.Utc, new GeoPoint(latitude, 0));
        return Assert.IsType<SunEvent.At>(day.Sunset).Instant - Assert.IsType<SunEvent.At>(day.Sunrise).Instant;
    }

    private static DateTimeZone Near(double longitude) => DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(longitude / 15)));

    private static GeoPoint Place(int row) => new(Table.Number(row, "lat_deg"), Table.Number(row, "lon_deg"));

    private static DateTimeZone Zone(int row) =>
        Table.Text(row, "utc_offset_h") is { Length: > 0 }
            ? DateTimeZone.ForOffset(Offset.FromSeconds((int)Math.Round(Table.Number(row, "utc_offset_h") * 3600)))
            : DateTimeZone.Utc;

    private static SunEvent Named(SunDay day, string name) =>
        name switch
        {
            "astronomical_dawn" => day.AstronomicalDawn,
            "nautical_dawn" => day.NauticalDawn,
            "civil_dawn" => day.CivilDawn,
            "sunrise" => day.Sunrise,
            "solar_noon" => new SunEvent.At(day.Noon),
            "sunset" => day.Sunset,
            "civil_dusk" => day.CivilDusk,
            "nautical_dusk" => day.NauticalDusk,
            "astronomical_dusk" => day.AstronomicalDusk,
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Not an event."),
        };
}
