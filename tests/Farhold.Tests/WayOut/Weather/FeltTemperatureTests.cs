using Farhold.WayOut;

namespace Farhold.Tests.WayOut.Weather;

/// <summary>Every row of the table; its source is named in each.</summary>
public class FeltTemperatureTests
{
    private static readonly CheckRow[] Table = [.. CheckRow.Of("windchill_checks.csv")];

    public static TheoryData<int, string> Rows => CheckRow.Theory("windchill_checks.csv", _ => true, "index", "unit_system", "air_temp", "value_exact");

    [Theory, MemberData(nameof(Rows))]
    public void The_exact_value_is_the_tables_and_the_published_one_within_a_degree(int row, string source)
    {
        var check = Table[row];
        var ours = Of(check);
        Assert.True(Math.Abs(ours - check.Number("value_exact")) <= 0.00006, $"{ours}: {source}");
        if (check["published_rounded"].Length > 0)
            Assert.True(Math.Abs(ours - check.Number("published_rounded")) <= (check["index"] == "heat_index" ? 1 : 0.5), $"{ours}: {source}");
    }

    [Theory]
    [InlineData(12, 40)]
    [InlineData(-5, 4)]
    public void Where_the_wind_chill_does_not_hold_the_air_is_as_cold_as_it_is(double airC, double windKmh) =>
        Assert.Equal(airC, FeltTemperature.WindChillC(airC, windKmh));

    [Fact]
    public void A_humidity_that_is_none_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => FeltTemperature.HeatIndexC(30, 101));

    [Fact]
    public void Degrees_of_both_scales_agree() =>
        Assert.Equal((FeltTemperature.HeatIndexF(95, 50) - 32) / 1.8, FeltTemperature.HeatIndexC(35, 50), 9);

    private static double Of(CheckRow check) => (check["index"], check["unit_system"]) switch
    {
        ("wind_chill", "F,mph") => FeltTemperature.WindChillF(check.Number("air_temp"), check.Number("wind_speed")),
        ("wind_chill", "C,km/h") => FeltTemperature.WindChillC(check.Number("air_temp"), check.Number("wind_speed")),
        ("heat_index", "F,%") => FeltTemperature.HeatIndexF(check.Number("air_temp"), check.Number("relative_humidity_percent")),
        _ => throw new FormatException(check["index"]),
    };
}
