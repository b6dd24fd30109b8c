namespace Farhold.Tests.Values;

public class HappenedTests
{
    [Fact]
    public void Elapsed_time_of_an_interval_is_an_interval()
    {
        var elapsed = new Happened(Some.At("01:00"), Some.At("01:18")).Until(Some.At("02:20"));
        Assert.Equal(new Elapsed(Duration.FromMinutes(62), Duration.FromMinutes(80)), elapsed);
    }

    [Fact]
    public void What_is_still_to_come_has_not_begun() => Assert.Equal(default, Happened.At(Some.At("05:00")).Until(Some.At("04:00")));

    [Fact]
    public void An_interval_that_ends_before_it_begins_is_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => new Happened(Some.At("02:00"), Some.At("01:00")));
}
