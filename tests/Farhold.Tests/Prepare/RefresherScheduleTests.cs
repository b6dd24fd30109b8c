using Farhold.Prepare;

namespace Farhold.Tests.Prepare;

/// <summary>
/// Spacing by design, after published studies of spaced practice and decay (their figures in the reference; the schedule is our own).
/// </summary>
public class RefresherScheduleTests
{
    private static readonly Instant Day = Instant.FromUtc(2031, 5, 4, 10, 0);

    [Fact]
    public void Nothing_rehearsed_is_due_now() => Assert.Null(RefresherSchedule.Next([]));

    /// <summary>Days 0, 2, 9 and 30, whatever came of them; then by what the last ones came to.</summary>
    [Theory]
    [InlineData("0", 2)]
    [InlineData("1", 2)]
    [InlineData("11", 7)]
    [InlineData("111", 21)]
    [InlineData("1110", 30)]
    [InlineData("1111", 60)]
    [InlineData("0001", 60)]
    [InlineData("11111", 90)]
    [InlineData("11101", 60)]
    [InlineData("11110", 30)]
    [InlineData("1111111111", 90)]
    public void The_next_is_so_many_days_after_the_last(string mastered, int days) =>
        Assert.Equal(
            Day + Duration.FromDays(mastered.Length - 1 + days),
            RefresherSchedule.Next([.. mastered.Select((m, i) => (Day + Duration.FromDays(i), m == '1'))])
        );
}
