namespace Farhold.Tests.Text;

public class IsoSpanTests
{
    [Theory]
    [InlineData("PT15M", 15 * 60)]
    [InlineData("PT1H30M", 90 * 60)]
    [InlineData("PT90M", 5400)]
    [InlineData("P1D", 86_400)]
    [InlineData("P1DT60S", 86_460)]
    [InlineData("P2W", 14 * 86_400)]
    [InlineData("PT0.5S", 0.5)]
    [InlineData("PT0S", 0)]
    [InlineData("PT-5M", -300)]
    public void A_span_reads(string text, double seconds) => Assert.Equal(Duration.FromSeconds(seconds), IsoSpan.Read(text));

    [Theory]
    [InlineData("")]
    [InlineData("15 min")]
    [InlineData("P")]
    [InlineData("PT")]
    [InlineData("P1H")]
    [InlineData("PT1M1H")]
    [InlineData("PT1.5H")]
    [InlineData("PT1.S")]
    [InlineData("PT1M ")]
    [InlineData("1H")]
    [InlineData("-PT5M")]
    [InlineData("P1M")]
    [InlineData("P1Y")]
    [InlineData("PT9223372036854775807H")]
    [InlineData("P9223372036854775807W")]
    [InlineData("PT99999999999999999999999999H")]
    public void What_is_no_span_does_not(string text) => Assert.Null(IsoSpan.Read(text));

    [Theory]
    [InlineData(0, "PT0S")]
    [InlineData(59, "PT59S")]
    [InlineData(59.9, "PT59S")]
    [InlineData(3720, "PT1H2M")]
    [InlineData(90061, "PT25H1M1S")]
    [InlineData(-90, "-PT1M30S")]
    public void A_span_is_written_in_hours_minutes_and_seconds(double seconds, string text) =>
        Assert.Equal(text, IsoSpan.Write(Duration.FromSeconds(seconds)));

    [Theory]
    [InlineData(59.9, "PT1M")]
    [InlineData(0.4, "PT0S")]
    [InlineData(-59.9, "-PT1M")]
    public void Or_to_the_nearest_second(double seconds, string text) =>
        Assert.Equal(text, IsoSpan.WriteNearest(Duration.FromSeconds(seconds)));

    [Fact]
    public void What_is_written_reads_back()
    {
        for (var seconds = 0; seconds < 200_000; seconds += 977)
            Assert.Equal(Duration.FromSeconds(seconds), IsoSpan.Read(IsoSpan.Write(Duration.FromSeconds(seconds))));
    }
}
