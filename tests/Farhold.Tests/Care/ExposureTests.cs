namespace Farhold.Tests.Care;

public class ExposureTests
{
    [Fact]
    public void Without_weather_nothing_is_said() => Assert.Null(Case.Well.Judgement.Exposure);

    [Fact]
    public void The_weather_stated_last_counts() =>
        Assert.Equal(
            new Payload.WeatherStated(-5, 30),
            Case.Well.And("02:00", new Payload.WeatherStated(-20, 60))
                .And("00:30", new Payload.WeatherStated(-5, 30))
                .Judgement.Exposure!.Weather
        );

    [Fact]
    public void Of_two_that_may_both_be_the_last_the_colder_counts() =>
        Assert.Equal(
            -20,
            Case.Well.And(new Happened(Case.Ago("01:00"), Case.Ago("00:20")), new Payload.WeatherStated(-20, 60))
                .And("00:30", new Payload.WeatherStated(-5, 30))
                .Judgement.Exposure!.Weather.AirC
        );

    /// <summary>-5 °C at 30 km/h feels like -13 °C: table of wind chill, metric form; the coldest two are those at 100 km/h.</summary>
    [Theory]
    [InlineData(-5, 30.0, "Feels like -13 °C", null)]
    [InlineData(-25, 30.0, "Feels like -39 °C", "in 5 to 10 minutes:")]
    [InlineData(-25, 60.0, "Feels like -43 °C", "in 5 to 10 minutes, sooner in strong wind:")]
    [InlineData(-30, null, "the wind is not stated", "in 10 to 30 minutes, sooner in strong wind:")]
    [InlineData(-30, 2.0, "does not hold under 5 km/h", "in 10 to 30 minutes:")]
    [InlineData(12, 30.0, "does not hold above 10 °C", null)]
    [InlineData(-52, 110.0, "colder than -86 °C", "in less than 2 minutes, sooner")]
    [InlineData(2, 120.0, "colder than -7 °C", null)]
    public void It_says_how_cold_it_feels_or_that_the_index_does_not_hold(double airC, double? windKmh, string felt, string? freezes)
    {
        var lines = Stated("00:30", airC, windKmh);
        Assert.Contains(felt, lines[1], StringComparison.Ordinal);
        var warning = lines.SingleOrDefault(l => l.StartsWith("Bare skin can freeze", StringComparison.Ordinal));
        Assert.Equal(freezes is null, warning is null);
        Assert.Contains(freezes ?? "", warning ?? "", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("02:59", false)]
    [InlineData("03:01", true)]
    public void Old_weather_is_asked_for_again(string ago, bool asked) =>
        Assert.Equal(asked, Stated(ago, -5, 30)[0].EndsWith("state it again.", StringComparison.Ordinal));

    private static string[] Stated(string ago, double airC, double? windKmh) =>
        [.. Case.Well.And(ago, new Payload.WeatherStated(airC, windKmh)).Judgement.Exposure!.Lines(Case.Now)];
}
