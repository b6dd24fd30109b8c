using NodaTime;

namespace Farhold.App.Tests.Services;

public class ClockDoubtTests
{
    private static readonly Instant Noon = Instant.FromUtc(2031, 5, 4, 12, 0);

    private static StoredLine Line(string device, int number, string recorded, LineState state = LineState.Kept) =>
        new(
            $"{{\"id\":\"{device}-{number}\",\"happened\":\"2031-05-04T09:00:00Z\",\"recorded\":\"{recorded}\",\"by\":\"Ane\","
                + $"\"kind\":\"note\",\"text\":\"\\\"recorded\\\":\\\"2044-01-01T00:00:00Z\\\"\"}}",
            state
        );

    private static Instant? Latest(params StoredLine[] lines) => ClockDoubt.LatestRecorded([.. lines], "aaaa");

    [Fact]
    public void The_latest_of_this_phone_s_own_lines_counts_in_any_order() =>
        Assert.Equal(
            Noon,
            Latest(
                Line("aaaa", 1, "2031-05-04T11:00:00Z"),
                Line("aaaa", 2, "2031-05-04T12:00:00Z"),
                Line("aaaa", 3, "2031-05-04T10:30:00.5Z")
            )
        );

    [Fact]
    public void Another_phone_s_clock_says_nothing_of_this_one() =>
        Assert.Equal(
            Noon,
            Latest(
                Line("aaaa", 1, "2031-05-04T12:00:00Z"),
                Line("bbbb", 1, "2033-05-04T12:00:00Z"),
                Line("aaaab", 1, "2033-05-04T12:00:00Z")
            )
        );

    [Fact]
    public void What_stands_aside_does_not_count() => Assert.Null(Latest(Line("aaaa", 1, "2031-05-04T12:00:00Z", LineState.Conflicting)));

    [Theory]
    [InlineData("soon")]
    [InlineData("9999-99-99T99:99:99Z")]
    [InlineData("")]
    public void What_is_no_time_hides_none_that_is(string broken) =>
        Assert.Equal(Noon, Latest(Line("aaaa", 1, broken), Line("aaaa", 2, "2031-05-04T12:00:00Z"), Line("aaaa", 3, broken)));

    [Fact]
    public void A_line_without_the_field_says_nothing() =>
        Assert.Null(
            ClockDoubt.LatestRecorded(
                [
                    new StoredLine("{\"id\":\"aaaa-1\",\"kind\":\"note\"}", LineState.Kept),
                    new StoredLine("{\"id\":\"aaaa-1\",\"recorded\":\"", LineState.Kept),
                ],
                "aaaa"
            )
        );

    [Fact]
    public void Only_more_than_two_minutes_behind_is_a_doubt()
    {
        Assert.Null(ClockDoubt.Behind(Noon, Noon - Duration.FromMinutes(2)));
        Assert.Equal(Duration.FromMinutes(3), ClockDoubt.Behind(Noon, Noon - Duration.FromMinutes(3)));
        Assert.Null(ClockDoubt.Behind(null, Noon));
    }
}
