using Farhold.Tests.WayOut.Ground;

namespace Farhold.Tests.WayOut.Astronomy;

public class SunTests
{
    private static readonly CheckTable Table = CheckTable.Of("solar_position_checks.csv");

    public static TheoryData<int, string, string> Positions => Table.Rows((t, row) => $"{t.Text(row, "place")} {t.Text(row, "time_utc")}");

    [Theory, MemberData(nameof(Positions))]
    public void The_sun_stands_where_it_was_checked_to_stand(int row, string label, string source)
    {
        var place = new GeoPoint(Table.Number(row, "lat_deg"), Table.Number(row, "lon_deg"));
        var sun = Sun.At(Some.Time(Table.Text(row, "time_utc")), place);
        var altitude = source.Contains("with refraction", StringComparison.Ordinal) ? sun.ApparentAltitude : sun.Altitude;
        var (off, why) = (Table.Number(row, "tolerance_deg"), $"{label}: {sun} ({source})");
        Assert.True(Math.Abs(altitude - Table.Number(row, "altitude_deg")) <= off, why);
        // Near the zenith a small step on the sky is a large one in azimuth.
        var turn = Math.IEEERemainder(sun.Azimuth - Table.Number(row, "azimuth_deg_from_north"), 360);
        Assert.True(Math.Abs(turn) * Math.Cos(altitude * Math.PI / 180) <= off, why);
        Assert.Equal(Table.Text(row, "light"), Name(sun.Light));
    }

    [Theory]
    [InlineData(-0.83, Light.Day)]
    [InlineData(-0.84, Light.CivilTwilight)]
    [InlineData(-6.01, Light.NauticalTwilight)]
    [InlineData(-12.01, Light.AstronomicalTwilight)]
    [InlineData(-18.01, Light.Night)]
    public void Light_goes_by_the_altitude_of_the_sun(double altitude, Light light) =>
        Assert.Equal(light, new SunPosition(altitude, 0).Light);

    // At the horizon the air lifts the sun by about 34 minutes of arc: US Naval Observatory, definitions of rise and set.
    [Fact]
    public void Air_lifts_the_setting_sun_by_about_its_own_width() =>
        Assert.InRange(new SunPosition(-34 / 60.0, 0).ApparentAltitude, -0.06, 0.06);

    private static string Name(Light light) =>
        light switch
        {
            Light.Day => "day",
            Light.CivilTwilight => "civil twilight",
            Light.NauticalTwilight => "nautical twilight",
            Light.AstronomicalTwilight => "astronomical twilight",
            _ => "night",
        };
}
