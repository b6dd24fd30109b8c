using CsCheck;
using NodaTime;

namespace Farhold.Tests.WayOut;

public class DarkNightsTests
{
    private static readonly DateTimeZone Oslo = DateTimeZoneProviders.Tzdb["Europe/Oslo"];
    private static readonly GeoPoint South = new(59.9, 10.7);
    private static readonly GeoPoint North = new(69.6, 19);

    [Fact]
    public void A_night_is_from_the_end_of_dusk_to_the_dawn_after_it()
    {
        var day = new LocalDate(2031, 5, 4);
        var dusk = Assert.IsType<SunEvent.At>(SunDay.Of(day, Oslo, South).CivilDusk).Instant;
        var dawn = Assert.IsType<SunEvent.At>(SunDay.Of(day.PlusDays(1), Oslo, South).CivilDawn).Instant;
        var night = DarkNights.Around(Noon(day), South).Single(n => n.Span.From > Noon(day) && n.Span.From < Noon(day.PlusDays(1)));
        Assert.Equal(0, (night.Span.From - dusk).TotalSeconds, tolerance: 1);
        Assert.Equal(0, (night.Span.To - dawn).TotalSeconds, tolerance: 1);
        Assert.False(night.Cut);
    }

    [Fact]
    public void Where_it_does_not_get_dark_there_is_no_night() => Assert.Empty(DarkNights.Around(Noon(new(2031, 6, 21)), North));

    [Fact]
    public void Of_a_dark_that_does_not_end_only_the_middle_of_each_day_counts()
    {
        var nights = DarkNights.Around(Noon(new(2031, 12, 21)), new(84, 19));
        Assert.Equal(7, nights.Length);
        Assert.All(nights, n => Assert.Equal((true, Rhythm.LongestNight), (n.Cut, n.Span.To - n.Span.From)));
    }

    [Fact]
    public void Anywhere_and_any_day_a_night_is_dark_not_too_wide_and_apart_from_the_next() =>
        Gen.Select(Gen.Double[-85, 85], Gen.Double[-180, 180], Gen.Int[0, 4000])
            .Sample(
                (lat, lon, days) =>
                {
                    var place = new GeoPoint(lat, lon);
                    var nights = DarkNights.Around(Noon(new LocalDate(2028, 1, 1).PlusDays(days)), place);
                    var moment = Duration.FromSeconds(1);
                    return nights.All(n =>
                            n.Span.To - n.Span.From <= Rhythm.LongestNight
                            && Sun.LightAt(n.Span.From + ((n.Span.To - n.Span.From) / 2), place) < Light.CivilTwilight
                            && (
                                n.Span.To - n.Span.From <= moment * 2
                                || (
                                    Sun.LightAt(n.Span.From + moment, place) < Light.CivilTwilight
                                    && Sun.LightAt(n.Span.To - moment, place) < Light.CivilTwilight
                                )
                            )
                        ) && nights.Zip(nights.Skip(1)).All(p => p.First.Span.To < p.Second.Span.From);
                },
                iter: 200
            );

    private static Instant Noon(LocalDate day) => (day + new LocalTime(12, 0)).InUtc().ToInstant();
}
