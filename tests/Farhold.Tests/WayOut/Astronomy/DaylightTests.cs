using CsCheck;
using Farhold.Tests.WayOut.Ground;
using Light = Farhold.WayOut.Astronomy.Light;
using Stretches = Farhold.WayOut.Astronomy.Daylight;

namespace Farhold.Tests.WayOut.Astronomy;

public class DaylightTests
{
    private static readonly Gen<Interval> Times = Gen.Select(Gen.Long[978_307_200, 4_102_444_800], Gen.Long[1, 5 * 86_400])
        .Select((start, length) => new Interval(Instant.FromUnixTimeSeconds(start), Instant.FromUnixTimeSeconds(start + length)));

    [Fact]
    public void Stretches_follow_one_another_from_start_to_end() =>
        Gen.Select(Times, GroundGens.Place)
            .Sample(
                (time, place) =>
                {
                    var stretches = Stretches.Along(time, place);
                    Assert.Equal(time.Start, stretches[0].Start);
                    Assert.Equal(time.End, stretches[^1].End);
                    foreach (var (before, after) in stretches.Zip(stretches.Skip(1)))
                    {
                        Assert.Equal(before.End, after.Start);
                        Assert.Equal(1, Math.Abs(before.Light - after.Light));
                    }

                    Assert.All(stretches, s => Assert.True(s.Length > Duration.Zero));
                }
            );

    [Fact]
    public void Inside_a_stretch_every_look_finds_its_light() =>
        Gen.Select(Times, GroundGens.Place, Gen.Double[0.001, 0.999])
            .Sample(
                (time, place, part) =>
                {
                    foreach (var stretch in Stretches.Along(time, place))
                        if (stretch.Length > Duration.FromMinutes(1))
                            Assert.Equal(stretch.Light, Sun.LightAt(stretch.Start + (stretch.Length * part), place));
                }
            );

    [Fact]
    public void Cut_in_two_the_time_is_as_light_as_whole() =>
        Gen.Select(Times, GroundGens.Place, Gen.Double[0.01, 0.99])
            .Sample(
                (time, place, part) =>
                {
                    var middle = time.Start + (time.Duration * part);
                    var halves = Stretches
                        .Along(new Interval(time.Start, middle), place)
                        .AddRange(Stretches.Along(new Interval(middle, time.End), place));
                    foreach (var least in new[] { Light.Day, Light.CivilTwilight, Light.NauticalTwilight, Light.AstronomicalTwilight })
                        Assert.Equal(
                            Stretches.AtLeast(Stretches.Along(time, place), least).TotalSeconds,
                            Stretches.AtLeast(halves, least).TotalSeconds,
                            1.0
                        );
                }
            );

    [Fact]
    public void A_winter_day_in_the_far_north_has_no_day_but_some_twilight()
    {
        var tromso = new GeoPoint(69.6496, 18.956);
        var stretches = Stretches.Along(new Interval(Some.Time("2026-12-20T23:00:00Z"), Some.Time("2026-12-21T23:00:00Z")), tromso);
        Assert.DoesNotContain(stretches, s => s.Light == Light.Day);
        // 09:31 to 13:53 local time: PyEphem 4.1.4, in solar_checks.csv.
        var civil = Assert.Single(stretches, s => s.Light == Light.CivilTwilight);
        Assert.Equal(262, civil.Length.TotalMinutes, 2.0);
    }

    [Fact]
    public void A_polar_summer_is_one_long_day()
    {
        var time = new Interval(Some.Time("2026-06-01T00:00:00Z"), Some.Time("2026-07-01T00:00:00Z"));
        Assert.Equal(
            new LightStretch(time.Start, time.End, Light.Day),
            Assert.Single(Stretches.Along(time, new GeoPoint(78.2232, 15.6267)))
        );
    }

    [Theory]
    [InlineData(90)]
    [InlineData(-90)]
    public void At_a_pole_the_sun_rises_once_a_year(double latitude)
    {
        var year = new Interval(Some.Time("2027-01-01T00:00:00Z"), Some.Time("2028-01-01T00:00:00Z"));
        var light = Stretches.Along(year, new GeoPoint(latitude, 0)).Select(s => s.Light).ToArray();
        Assert.Equal(1, light.Zip(light.Skip(1)).Count(pair => pair is (Light.CivilTwilight, Light.Day)));
        Assert.Equal(1, light.Zip(light.Skip(1)).Count(pair => pair is (Light.Day, Light.CivilTwilight)));
    }

    [Fact]
    public void A_year_at_the_equator_is_half_day() =>
        Assert.InRange(
            Stretches
                .AtLeast(
                    Stretches.Along(new Interval(Some.Time("2027-01-01T00:00:00Z"), Some.Time("2028-01-01T00:00:00Z")), default),
                    Light.Day
                )
                .TotalDays / 365,
            0.5,
            0.51
        );

    [Fact]
    public void No_time_has_no_light()
    {
        var now = Some.At("02:00");
        Assert.Empty(Stretches.Along(new Interval(now, now), default));
    }

    [Fact]
    public void An_endless_or_overlong_time_is_a_mistake_of_the_caller()
    {
        var now = Some.At("02:00");
        Assert.Throws<ArgumentException>(() => Stretches.Along(new Interval(now, null), default));
        Assert.Throws<ArgumentException>(() => Stretches.Along(new Interval(null, now), default));
        Assert.Throws<ArgumentException>(() => Stretches.Along(new Interval(now, now + Duration.FromDays(401)), default));
    }
}
