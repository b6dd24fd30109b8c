using NodaTime;

namespace Farhold.Tests.Care;

public class NightTests
{
    [Fact]
    public void No_night_is_wider_than_the_longest_that_shipped_comfort_waits() =>
        Assert.Equal(Rhythm.LongestNight, ShippedProtocol.Protocol.Tasks.Max(t => t.Night));

    [Theory]
    [InlineData(22, 6, true)]
    [InlineData(18, 6, true)]
    [InlineData(0, 12, true)]
    [InlineData(18, 7, false)]
    [InlineData(6, 22, false)]
    [InlineData(22, 22, false)]
    public void Hours_of_the_clock_make_a_night_or_none(int from, int to, bool makes)
    {
        var (begins, ends) = (new LocalTime(from, 0), new LocalTime(to, 0));
        Assert.Equal(makes, Rhythm.CanBeANight(begins, ends));
        if (!makes)
            Assert.Throws<ArgumentException>(() => Rhythm.ByClock(DateTimeZone.Utc, begins, ends, NodaConstants.UnixEpoch));
    }
}
