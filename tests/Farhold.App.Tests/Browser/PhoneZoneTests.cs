using System.Globalization;
using NodaTime;

namespace Farhold.App.Tests.Browser;

/// <summary>Beside the time-zone database of NodaTime, a reference library.</summary>
public class PhoneZoneTests
{
    private static readonly Instant From = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly Instant To = Instant.FromUtc(2033, 1, 1, 0, 0);

    [Theory]
    [InlineData("Pacific/Auckland")]
    [InlineData("Europe/Oslo")]
    [InlineData("Australia/Lord_Howe")]
    [InlineData("America/St_Johns")]
    [InlineData("Asia/Kathmandu")]
    [InlineData("Pacific/Kiritimati")]
    [InlineData("Etc/UTC")]
    public void Tells_what_the_database_tells(string id)
    {
        var known = DateTimeZoneProviders.Tzdb[id];
        var zone = PhoneZone.Of(id, Told(known));
        Assert.Equal(id, zone.Id);
        for (var at = From; at < To; at += Duration.FromMinutes(1777))
            Assert.Equal(known.GetUtcOffset(at), zone.GetUtcOffset(at));
        foreach (var change in known.GetZoneIntervals(From, To).Where(i => i.HasStart && i.Start > From).Select(i => i.Start))
        foreach (var at in new[] { change - Duration.FromSeconds(1), change, change + Duration.FromSeconds(1) })
            Assert.Equal(known.GetUtcOffset(at), zone.GetUtcOffset(at));
    }

    [Fact]
    public void Times_of_a_phone_that_does_not_name_its_zone_are_called_local() => Assert.Equal("local time", PhoneZone.Of("", "43200").Id);

    [Fact]
    public void Clock_times_come_back_as_the_database_reads_them()
    {
        var known = DateTimeZoneProviders.Tzdb["Europe/Oslo"];
        var (mine, theirs) = (
            new PhoneClock(PhoneZone.Of("Europe/Oslo", Told(known)), Texts.In("en")),
            new PhoneClock(known, Texts.In("en"))
        );
        for (var hours = 0; hours < 24 * 400; hours += 7)
        {
            var now = From + Duration.FromHours(hours);
            var time = new LocalTime(hours % 24, hours % 60);
            Assert.Equal(theirs.LastBefore(time, now), mine.LastBefore(time, now));
            Assert.Equal(theirs.Show(now, From), mine.Show(now, From));
        }
    }

    [Fact]
    public void Before_and_after_what_was_told_the_nearest_holds()
    {
        var zone = PhoneZone.Of("", "43200 1727532000:46800 1743861600:43200");
        Assert.Equal(Offset.FromHours(12), zone.GetUtcOffset(Instant.FromUtc(1980, 7, 1, 0, 0)));
        Assert.Equal(Offset.FromHours(13), zone.GetUtcOffset(Instant.FromUnixTimeSeconds(1727532000)));
        Assert.Equal(Offset.FromHours(12), zone.GetUtcOffset(Instant.FromUtc(2060, 1, 1, 0, 0)));
        Assert.Equal((Offset.FromHours(12), Offset.FromHours(13)), (zone.MinOffset, zone.MaxOffset));
    }

    /// <summary>What phone.js tells of a zone.</summary>
    private static string Told(DateTimeZone zone)
    {
        var intervals = zone.GetZoneIntervals(From, To).ToArray();
        return string.Join(
            ' ',
            intervals.Select(
                (i, n) =>
                    n == 0
                        ? i.WallOffset.Seconds.ToString(CultureInfo.InvariantCulture)
                        : string.Create(CultureInfo.InvariantCulture, $"{i.Start.ToUnixTimeSeconds()}:{i.WallOffset.Seconds}")
            )
        );
    }
}
