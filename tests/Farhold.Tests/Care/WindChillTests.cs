using CsCheck;
using Farhold.Tests.WayOut;

namespace Farhold.Tests.Care;

/// <summary>Every row of the table of wind chill; its source is named in each.</summary>
public class WindChillTests
{
    private const string Table = "windchill_checks.csv";

    private static readonly CheckRow[] Metric = [.. CheckRow.Of(Table).Where(IsMetric)];
    private static readonly CheckRow[] Charted = [.. CheckRow.Of(Table).Where(IsCharted)];

    public static TheoryData<int, string> MetricRows => CheckRow.Theory(Table, IsMetric, "air_temp", "wind_speed", "value_exact");

    public static TheoryData<int, string> ChartRows => CheckRow.Theory(Table, IsCharted, "air_temp", "wind_speed", "published_rounded");

    [Theory, MemberData(nameof(MetricRows))]
    public void The_metric_form_gives_the_tables_values(int row, string source)
    {
        var ours = WindChill.FeltC(Metric[row].Number("air_temp"), Metric[row].Number("wind_speed"))!.Value;
        Assert.True(Math.Abs(ours - Metric[row].Number("value_exact")) <= 0.00006, $"{ours}: {source}");
    }

    /// <summary>The chart is in whole °F, and the metric form has coefficients of its own: half a degree of rounding, and 0.3.</summary>
    [Theory, MemberData(nameof(ChartRows))]
    public void The_metric_form_agrees_with_the_published_chart(int row, string source)
    {
        var check = Charted[row];
        var ours = WindChill.FeltC((check.Number("air_temp") - 32) / 1.8, check.Number("wind_speed") * 1.609344)!.Value;
        Assert.True(Math.Abs((ours * 1.8) + 32 - check.Number("published_rounded")) <= 0.8, $"{(ours * 1.8) + 32}: {source}");
    }

    [Theory]
    [InlineData(10.1, 40)]
    [InlineData(-50.1, 40)]
    [InlineData(-5, 4.9)]
    [InlineData(-5, 100.1)]
    public void Outside_its_range_no_felt_temperature_is_given(double airC, double windKmh) => Assert.Null(WindChill.FeltC(airC, windKmh));

    /// <summary>Environment Canada's table (read in a copy); chart of the National Weather Service: from -18 °F within 30 min.</summary>
    [Theory]
    [InlineData(-27, null, null)]
    [InlineData(-27.8, 10, 30)] // -18 °F
    [InlineData(-28, 10, 30)]
    [InlineData(-39, 10, 30)]
    [InlineData(-40, 5, 10)]
    [InlineData(-47, 5, 10)]
    [InlineData(-48, 2, 5)]
    [InlineData(-54, 2, 5)]
    [InlineData(-55, 0, 2)]
    [InlineData(-80, 0, 2)]
    public void Skin_freezes_within_the_published_times(double feltC, int? from, int? to) =>
        Assert.Equal(from is null ? null : new FrostbiteTime(from.Value, to!.Value), WindChill.Frostbite(feltC));

    /// <summary>So that a slip of the wind never makes frostbite look later.</summary>
    [Fact]
    public void More_wind_and_colder_air_never_put_frostbite_off() =>
        Gen.Select(Gen.Double[-70, 60], Gen.Double[0, 250], Gen.Double[0, 20], Gen.Double[0, 50])
            .Sample(
                (air, wind, colder, windier) =>
                {
                    var milder = WindChill.ColdestC(air, wind);
                    Assert.True(milder <= air);
                    Assert.True(WindChill.ColdestC(air - colder, wind) <= milder + 1e-9, "colder air");
                    Assert.True(WindChill.ColdestC(air, wind + windier) <= milder + 1e-9, "more wind");
                    Assert.True(milder <= WindChill.ColdestC(air, null), "no wind stated");
                }
            );

    private static bool IsMetric(CheckRow row) => row["unit_system"] == "C,km/h";

    private static bool IsCharted(CheckRow row) => row["unit_system"] == "F,mph" && row["published_rounded"].Length > 0;
}
