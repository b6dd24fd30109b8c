using CsCheck;

namespace Farhold.Tests.Drawing;

public class ChartAxisTests
{
    private static readonly DateTimeZone Berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    private static string[] Written(string from, string to, DateTimeZone zone, double room) =>
        [
            .. ChartAxis
                .Times(Some.Time(from), Some.Time(to), zone, 1, room)
                .Select(t => $"{t.Text} {(t.At - Some.Time(from)).TotalMinutes}"),
        ];

    /// <summary>19 h at a pixel a minute, and 200 px for each label: every 6 h, and the day at midnight.</summary>
    [Fact]
    public void Times_are_whole_steps_of_the_clock_and_midnight_is_the_day() =>
        Assert.Equal(
            ["12:00 60", "18:00 420", "5 May 780", "06:00 1140"],
            Written("2031-05-04T11:00:00Z", "2031-05-05T06:00:00Z", DateTimeZone.Utc, 200)
        );

    /// <summary>The clock goes from 02:00 to 03:00 on 30 March 2031 at 01:00 UTC, and back on 26 October.</summary>
    [Theory]
    [InlineData("2031-03-29T23:00:00Z", "30 Mar 0,06:00 300,12:00 660,18:00 1020,31 Mar 1380")]
    [InlineData("2031-10-25T22:00:00Z", "26 Oct 0,06:00 420,12:00 780,18:00 1140,27 Oct 1500")]
    public void On_the_days_the_clock_changes_they_stay_by_the_clock(string midnight, string expected) =>
        Assert.Equal(expected.Split(','), Written(midnight, (Some.Time(midnight) + Duration.FromHours(25)).ToString(), Berlin, 200));

    [Fact]
    public void An_hour_that_is_skipped_has_no_tick_and_one_that_comes_twice_has_one()
    {
        Assert.Equal(["01:00 60", "03:00 120", "04:00 180"], Written("2031-03-29T23:00:00Z", "2031-03-30T02:00:00Z", Berlin, 60).Skip(1));
        Assert.Equal(["01:00 60", "02:00 120", "03:00 240"], Written("2031-10-25T22:00:00Z", "2031-10-26T02:00:00Z", Berlin, 60).Skip(1));
    }

    /// <summary>Beirut skips the first hour of a day: the day begins at 01:00 by the clock.</summary>
    [Fact]
    public void A_day_that_has_no_midnight_begins_where_it_begins()
    {
        var beirut = DateTimeZoneProviders.Tzdb["Asia/Beirut"];
        var day = beirut.AtStartOfDay(new LocalDate(2025, 3, 30));
        Assert.Equal(1, day.Hour);
        var times = ChartAxis.Times(day.ToInstant() - Duration.FromHours(3), day.ToInstant() + Duration.FromHours(3), beirut, 1, 60);
        Assert.Equal(["21:00", "22:00", "23:00", "30 Mar", "02:00", "03:00", "04:00"], times.Select(t => t.Text));
    }

    [Fact]
    public void Over_weeks_only_some_days_are_named_and_the_same_ones_wherever_it_begins()
    {
        var all = ChartAxis.Times(Some.Time("2031-12-20T05:00:00Z"), Some.Time("2032-01-20T05:00:00Z"), DateTimeZone.Utc, 0.005, 60);
        var later = ChartAxis.Times(Some.Time("2031-12-31T05:00:00Z"), Some.Time("2032-01-20T05:00:00Z"), DateTimeZone.Utc, 0.005, 60);
        Assert.All(all, t => Assert.True(t.Midnight));
        Assert.All(all.Zip(all.Skip(1)), p => Assert.Equal(Duration.FromDays(10), p.Second.At - p.First.At));
        Assert.Equal(later, all.Where(t => t.At >= Some.Time("2031-12-31T05:00:00Z")));
    }

    [Fact]
    public void Times_rise_lie_within_and_are_round_in_every_zone() =>
        Gen.Select(
                Gen.Int[0, 500_000],
                Gen.Int[30, 20_000],
                Gen.OneOf("Europe/Berlin", "Asia/Kathmandu", "Australia/Lord_Howe", "Asia/Beirut")
            )
            .Sample(
                (start, length, name) =>
                {
                    var zone = DateTimeZoneProviders.Tzdb[name];
                    var from = Some.Time("2031-01-01T00:00:00Z") + Duration.FromMinutes(start);
                    var to = from + Duration.FromMinutes(length);
                    var times = ChartAxis.Times(from, to, zone, 212.0 / length, 54);
                    Assert.All(times, t => Assert.InRange(t.At, from, to));
                    Assert.All(times.Zip(times.Skip(1)), p => Assert.True(p.First.At < p.Second.At));
                    Assert.All(times, t => Assert.Equal(t.Local, t.At.InZone(zone).LocalDateTime));
                    Assert.All(times.Where(t => !t.Midnight), t => Assert.Equal(0, t.Local.Minute % 5));
                    Assert.All(times.Where(t => t.Midnight), t => Assert.Equal(zone.AtStartOfDay(t.Local.Date).ToInstant(), t.At));
                    var hours = times.Where(t => !t.Midnight).ToArray();
                    if (hours.Length > 0)
                    {
                        var nights = Enumerable
                            .Range(0, (int)(to - from).TotalDays + 2)
                            .Select(d => zone.AtStartOfDay(from.InZone(zone).Date.PlusDays(d)).ToInstant())
                            .Where(m => m >= from && m <= to);
                        Assert.Equal(nights, times.Where(t => t.Midnight).Select(t => t.At));
                    }
                },
                iter: Gens.Cases(500),
                threads: 1
            );
}
