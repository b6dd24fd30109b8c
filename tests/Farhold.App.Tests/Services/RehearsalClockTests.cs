using Microsoft.Extensions.Time.Testing;

namespace Farhold.App.Tests.Services;

public class RehearsalClockTests
{
    private static readonly DateTimeOffset Today = new(2026, 12, 1, 9, 0, 0, TimeSpan.Zero);
    private static readonly Instant Scene = Instant.FromUtc(2031, 5, 4, 2, 0);

    private readonly FakeTimeProvider wall = new(Today);
    private readonly RehearsalClock clock;

    public RehearsalClockTests()
    {
        clock = new(wall);
        clock.Begin(Scene);
    }

    private Instant Now => Instant.FromDateTimeOffset(clock.GetUtcNow());

    [Fact]
    public void It_stands_until_it_is_let_run()
    {
        wall.Advance(TimeSpan.FromMinutes(5));
        Assert.Equal(Scene, Now);
    }

    [Theory]
    [InlineData(1, 10)]
    [InlineData(15, 150)]
    [InlineData(60, 600)]
    public void It_runs_as_fast_as_it_is_told(double rate, int seconds)
    {
        clock.Run(rate);
        wall.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal(Scene + Duration.FromSeconds(seconds), Now);
    }

    [Fact]
    public void Another_rate_begins_where_it_is()
    {
        clock.Run(60);
        wall.Advance(TimeSpan.FromSeconds(10));
        clock.Run(0);
        wall.Advance(TimeSpan.FromHours(1));
        clock.Run(1);
        wall.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(Scene + Duration.FromSeconds(601), Now);
    }

    [Fact]
    public void It_is_put_on_and_never_back()
    {
        clock.PutOn(Scene + Duration.FromHours(1));
        Assert.Equal(Scene + Duration.FromHours(1), Now);
        clock.PutOn(Scene);
        Assert.Equal(Scene + Duration.FromHours(1), Now);
        Assert.Throws<ArgumentOutOfRangeException>(() => clock.Run(-1));
    }
}
