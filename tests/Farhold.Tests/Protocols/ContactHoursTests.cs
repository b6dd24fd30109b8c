using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.Protocols;

/// <summary>Whether somebody can be reached now, against a table of the minutes of a week and a clock read minute by minute.</summary>
public class ContactHoursTests
{
    private const int Day = 24 * 60;
    private const int Week = 7 * Day;

    /// <summary>Weeks around each change of clocks, and one far from any.</summary>
    private static readonly (string Zone, Instant From)[] Weeks =
    [
        ("Europe/Oslo", Instant.FromUtc(2031, 3, 26, 0, 0)),
        ("Europe/Oslo", Instant.FromUtc(2031, 10, 22, 0, 0)),
        ("Europe/Oslo", Instant.FromUtc(2031, 7, 2, 0, 0)),
        ("Australia/Lord_Howe", Instant.FromUtc(2031, 4, 1, 0, 0)),
        ("Australia/Lord_Howe", Instant.FromUtc(2031, 10, 1, 0, 0)),
        ("America/St_Johns", Instant.FromUtc(2031, 10, 29, 0, 0)),
        ("Asia/Kathmandu", Instant.FromUtc(2031, 5, 4, 0, 0)),
    ];

    private static readonly Gen<OpenHours> Hours = Gen.Select(
        Gen.Int[1, 127],
        Gen.Int[0, Day - 1],
        Gen.Int[0, Day - 1],
        (days, from, to) =>
            new OpenHours(
                [.. ContactWords.Week.Where((_, i) => (days & (1 << i)) != 0)],
                Clock(from),
                from == to ? Clock((to + 1) % Day) : Clock(to)
            )
    );

    [Fact]
    public void It_opens_and_closes_when_the_clock_on_the_wall_says_so()
    {
        var changes = 0;
        Gen.Select(Gen.OneOf(Weeks), Hours.Array[1, 4], Gen.Int[0, Week])
            .Sample(
                (week, open, minute) =>
                {
                    var zone = DateTimeZoneProviders.Tzdb[week.Zone];
                    var table = Table(open);
                    var now = week.From + Duration.FromMinutes(minute);
                    var state = new ContactHours(zone, [.. open]).At(now);
                    Assert.Equal(table[OfWeek(now, zone)], state.Open);
                    var next = Enumerable
                        .Range(1, Week + Day)
                        .Select(m => (Instant?)(now + Duration.FromMinutes(m)))
                        .FirstOrDefault(at => table[OfWeek(at!.Value, zone)] != state.Open);
                    if (next is not null)
                        Interlocked.Increment(ref changes);
                    else
                        Assert.True(state.Changes is null || state.Changes > now + Duration.FromMinutes(Week + Day));
                    Assert.True(next is null || next == state.Changes, $"{next} by the clock, {state.Changes}");
                },
                iter: Gens.Cases(400)
            );
        Assert.True(changes >= Gens.Cases(300), $"{changes} changes");
    }

    [Theory]
    [InlineData("2031-05-04T20:59:00Z", true, "2031-05-04T21:00:00Z")] // Sunday, 22:59 in Oslo
    [InlineData("2031-05-04T21:00:00Z", false, "2031-05-05T05:00:00Z")]
    [InlineData("2031-03-29T22:00:00Z", true, "2031-03-30T00:30:00Z")] // Saturday night, open on to 01:30, before the clocks go on
    [InlineData("2031-03-30T00:30:00Z", false, "2031-03-30T05:00:00Z")] // and it opens an hour sooner than on other days
    public void At_an_hour_of_its_own_zone(string now, bool open, string changes)
    {
        var hours = new ContactHours(
            DateTimeZoneProviders.Tzdb["Europe/Oslo"],
            [new([.. ContactWords.Week], new(7, 0), new(23, 0)), new([IsoDayOfWeek.Saturday], new(22, 0), new(1, 30))]
        );
        Assert.Equal(new(open, Some.Time(changes)), hours.At(Some.Time(now)));
    }

    [Fact]
    public void What_never_closes_has_no_end_and_a_whole_day_is_a_day()
    {
        var oslo = DateTimeZoneProviders.Tzdb["Europe/Oslo"];
        var always = new ContactHours(oslo, [new([.. ContactWords.Week], LocalTime.Midnight, LocalTime.Midnight)]);
        Assert.Equal(new(true, null), always.At(Some.Time("2031-10-26T00:30:00Z")));
        var sundays = new ContactHours(oslo, [new([IsoDayOfWeek.Sunday], LocalTime.Midnight, LocalTime.Midnight)]);
        Assert.Equal(new(true, Some.Time("2031-05-04T22:00:00Z")), sundays.At(Some.Time("2031-05-04T09:00:00Z")));
        Assert.Equal(new(false, Some.Time("2031-05-10T22:00:00Z")), sundays.At(Some.Time("2031-05-04T22:00:00Z")));
    }

    /// <summary>Which minutes of a week from Monday 00:00 on are open.</summary>
    private static bool[] Table(IEnumerable<OpenHours> hours)
    {
        var table = new bool[Week];
        foreach (var open in hours)
        foreach (var day in open.Days)
        {
            var from = ((int)day - 1) * Day + Minutes(open.From);
            var length = (Minutes(open.To) - Minutes(open.From) + Day) % Day;
            for (var m = 0; m < (length == 0 ? Day : length); m++)
                table[(from + m) % Week] = true;
        }

        return table;
    }

    private static int OfWeek(Instant at, DateTimeZone zone)
    {
        var clock = at.InZone(zone).LocalDateTime;
        return ((int)clock.DayOfWeek - 1) * Day + Minutes(clock.TimeOfDay);
    }

    private static int Minutes(LocalTime time) => (time.Hour * 60) + time.Minute;

    private static LocalTime Clock(int minute) => new(minute / 60, minute % 60);
}
