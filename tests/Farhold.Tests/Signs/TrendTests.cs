using CsCheck;
using MathNet.Numerics.Statistics;

namespace Farhold.Tests.Signs;

public class TrendTests
{
    /// <summary>Figures by scipy; the script that made them lies beside the table.</summary>
    public static TheoryData<string> Cases => [.. Rows().Select(r => r[0])];

    [Theory, MemberData(nameof(Cases))]
    public void The_line_agrees_with_scipy(string name)
    {
        var row = Rows().Single(r => r[0] == name);
        var line = Trend.Of(Readings(row))!;
        Assert.Equal(double.Parse(row[3]), line.SlopePerHour, 1e-12);
        Assert.Equal(double.Parse(row[4]), line.Intercept, 1e-10);
        Assert.Equal(double.Parse(row[5]), line.SlopeLow, 1e-12);
        Assert.Equal(double.Parse(row[6]), line.SlopeHigh, 1e-12);
        Assert.Equal(double.Parse(row[7]), line.Tau, 1e-12);
        Assert.Equal(double.Parse(row[8]), line.PValue, 1e-9);
    }

    [Fact]
    public void The_slope_is_the_median_of_all_pairs() => AnyReadings.Sample(readings =>
    {
        var slopes = readings.SelectMany(
            a => readings.Where(b => b.Hours > a.Hours).Select(b => (b.Value - a.Value) / (b.Hours - a.Hours)));
        var line = Trend.Of(readings);
        if (!slopes.Any())
        {
            Assert.Null(line);
            return;
        }

        Assert.Equal(slopes.Median(), line!.SlopePerHour, 1e-9);
        Assert.InRange(line.SlopePerHour, line.SlopeLow, line.SlopeHigh);
        Assert.InRange(line.Tau, -1 - 1e-12, 1 + 1e-12);
        Assert.InRange(line.PValue, 0, 1);
    });

    [Fact]
    public void The_order_of_the_readings_does_not_matter() => AnyReadings.Sample(readings =>
        Assert.Equal(Trend.Of(readings), Trend.Of([.. readings.Reverse()])));

    [Fact]
    public void Turning_the_values_over_turns_the_line_over() => AnyReadings.Sample(readings =>
    {
        if (Trend.Of(readings) is not { } line)
            return;
        var turned = Trend.Of([.. readings.Select(r => (r.Hours, -r.Value))])!;
        Assert.Equal(-line.SlopePerHour, turned.SlopePerHour, 1e-9);
        Assert.Equal(-line.Tau, turned.Tau, 1e-12);
    });

    [Fact]
    public void A_quarter_of_wild_readings_hardly_moves_the_line()
    {
        var readings = Enumerable.Range(0, 40).Select(i => (i * 0.5, i % 4 == 1 ? 250.0 : 80 + i)).ToList();
        var line = Trend.Of(readings)!;
        Assert.InRange(line.SlopePerHour, 1.5, 2.0); // truly 2 per hour
    }

    [Fact]
    public void One_time_or_one_reading_has_no_line()
    {
        Assert.Null(Trend.Of([]));
        Assert.Null(Trend.Of([(1, 80)]));
        Assert.Null(Trend.Of([(1, 80), (1, 90), (1, 100)]));
    }

    [Fact]
    public void What_is_no_number_is_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => Trend.Of([(0, 80), (double.NaN, 90)]));
        Assert.ThrowsAny<ArgumentException>(() => Trend.Of([(0, 80), (1, double.PositiveInfinity)]));
    }

    [Fact]
    public void Two_thousand_readings_are_thinned_and_keep_their_line()
    {
        var random = new Random(7);
        var readings = Enumerable.Range(0, 2000).Select(i => (i * 0.05, 120 - (i * 0.02) + (random.NextDouble() * 10))).ToList();
        var line = Trend.Of(readings)!;
        Assert.Equal(Trend.MostPoints, line.Points);
        Assert.Equal(1999 * 0.05, line.SpanHours, 1e-9);
        Assert.InRange(-0.4, line.SlopeLow, line.SlopeHigh);
    }

    private static readonly Gen<(double Hours, double Value)[]> AnyReadings =
        Gen.Select(Gen.Int[0, 20], Gen.Int[60, 90]).Select((quarters, value) => (quarters / 4.0, (double)value)).Array[0, 25];

    private static string[][] Rows() => [.. File
        .ReadLines(Path.Combine(AppContext.BaseDirectory, "tables", "theilslopes_checks.csv"))
        .Where(l => !l.StartsWith('#')).Skip(1).Select(l => l.Split(','))];

    private static (double Hours, double Value)[] Readings(string[] row) =>
        [.. row[1].Split(' ').Zip(row[2].Split(' '), (h, v) => (double.Parse(h), double.Parse(v)))];
}
