namespace Farhold.Tests.Text;

public class IsoSpanTests
{
    [Theory]
    [InlineData("PT15M", 15)]
    [InlineData("PT1H30M", 90)]
    [InlineData("P1D", 1440)]
    [InlineData("P1DT60S", 1441)]
    [InlineData("P30D", 43200)]
    public void A_span_reads_as_minutes(string text, int minutes) => Assert.Equal(Duration.FromMinutes(minutes), IsoSpan.TryParse(text));

    [Theory]
    [InlineData("")]
    [InlineData("15 min")]
    [InlineData("PT0S")]
    [InlineData("PT-5M")]
    [InlineData("P1M")]
    [InlineData("P1Y")]
    [InlineData("P30DT1S")]
    [InlineData("PT9223372036854775807H")]
    [InlineData("P9223372036854775807W")]
    [InlineData("PT99999999999999999999999999H")]
    public void What_is_no_span_of_up_to_thirty_days_is_none(string text) => Assert.Null(IsoSpan.TryParse(text));

    [Theory]
    [InlineData(0, "PT0S")]
    [InlineData(59, "PT59S")]
    [InlineData(3720, "PT1H2M")]
    [InlineData(90061, "PT25H1M1S")]
    public void A_span_is_written_in_hours_minutes_and_seconds(int seconds, string text) => Assert.Equal(text, IsoSpan.Write(Duration.FromSeconds(seconds)));
}
