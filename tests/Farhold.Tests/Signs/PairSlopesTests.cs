using CsCheck;
using MathNet.Numerics.Statistics;

namespace Farhold.Tests.Signs;

public class PairSlopesTests
{
    /// <summary>Figures by scipy; the script that made them lies beside the table.</summary>
    public static TheoryData<string> Cases => [.. Rows().Select(r => r[0])];

    [Theory, MemberData(nameof(Cases))]
    public void The_slope_agrees_with_scipy(string name)
    {
        var row = Rows().Single(r => r[0] == name);
        Assert.Equal(double.Parse(row[3]), PairSlopes.Of(Readings(row))!.Median, 1e-12);
    }

    /// <summary>A slope taken off every reading moves the interval by as much, so zero can be put on either side of its ends.</summary>
    [Theory, MemberData(nameof(Cases))]
    public void The_interval_ends_where_scipys_does(string name)
    {
        var row = Rows().Single(r => r[0] == name);
        var (low, high) = (double.Parse(row[4]), double.Parse(row[5]));
        var pairs = PairSlopes.Of(Readings(row))!;
        var reach = Gauss.TwoSided1Percent * Math.Sqrt(pairs.Ties.SlopeVariance);
        bool LeavesOut(double slope) =>
            PairSlopes.Of([.. Readings(row).Select(r => (r.Hours, r.Value - (slope * r.Hours)))])!.LeavesOutZero(reach);
        var ends = LeavesOut(pairs.Sorted[0] - 1);
        if (!ends)
            Assert.True(Math.Abs(low - pairs.Sorted[0]) < 1e-12 || Math.Abs(high - pairs.Sorted[^1]) < 1e-12);
        Assert.Equal((ends, ends), (LeavesOut(low - 1e-6), LeavesOut(high + 1e-6)));
        if (high - low > 1e-5)
            Assert.False(LeavesOut(low + 1e-6) || LeavesOut(high - 1e-6));
    }

    [Fact]
    public void The_slope_is_the_median_of_all_pairs() =>
        AnyReadings.Sample(readings =>
        {
            var slopes = readings.SelectMany(a =>
                readings.Where(b => b.Hours > a.Hours).Select(b => (b.Value - a.Value) / (b.Hours - a.Hours))
            );
            var pairs = PairSlopes.Of(readings);
            if (!slopes.Any())
                Assert.Null(pairs);
            else
                Assert.Equal(slopes.Median(), pairs!.Median, 1e-9);
        });

    [Fact]
    public void The_order_of_the_readings_does_not_matter() =>
        AnyReadings.Sample(readings => Assert.Equal(PairSlopes.Of(readings)?.Sorted, PairSlopes.Of([.. readings.Reverse()])?.Sorted));

    [Fact]
    public void Turning_the_values_over_turns_the_slope_over() =>
        AnyReadings.Sample(readings =>
        {
            if (PairSlopes.Of(readings) is { } pairs)
                Assert.Equal(-pairs.Median, PairSlopes.Of([.. readings.Select(r => (r.Hours, -r.Value))])!.Median, 1e-9);
        });

    [Fact]
    public void A_quarter_of_wild_readings_hardly_moves_the_slope()
    {
        var readings = Enumerable.Range(0, 40).Select(i => (i * 0.5, i % 4 == 1 ? 250.0 : 80 + i)).ToList();
        Assert.InRange(PairSlopes.Of(readings)!.Median, 1.5, 2.0); // truly 2 per hour
    }

    [Fact]
    public void One_time_or_one_reading_has_no_slope()
    {
        Assert.Null(PairSlopes.Of([]));
        Assert.Null(PairSlopes.Of([(1, 80)]));
        Assert.Null(PairSlopes.Of([(1, 80), (1, 90), (1, 100)]));
    }

    [Fact]
    public void What_is_no_number_is_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => PairSlopes.Of([(0, 80), (double.NaN, 90)]));
        Assert.ThrowsAny<ArgumentException>(() => PairSlopes.Of([(0, 80), (1, double.PositiveInfinity)]));
    }

    [Fact]
    public void Two_thousand_readings_are_thinned_and_keep_their_slope()
    {
        var random = new Random(7);
        var readings = Enumerable.Range(0, 2000).Select(i => (i * 0.05, 120 - (i * 0.02) + (random.NextDouble() * 10))).ToList();
        var pairs = PairSlopes.Of(readings)!;
        Assert.Equal(PairSlopes.MostPoints, pairs.Points.Length);
        Assert.Equal(1999 * 0.05, pairs.Hours[^1] - pairs.Hours[0], 1e-9);
        Assert.InRange(pairs.Median, -0.42, -0.38);
    }

    private static readonly Gen<(double Hours, double Value)[]> AnyReadings = Gen.Select(Gen.Int[0, 20], Gen.Int[60, 90])
        .Select((quarters, value) => (quarters / 4.0, (double)value))
        .Array[0, 25];

    private static string[][] Rows() =>
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "tables", "theilslopes_checks.csv"))
                .Where(l => !l.StartsWith('#'))
                .Skip(1)
                .Select(l => l.Split(',')),
        ];

    private static (double Hours, double Value)[] Readings(string[] row) =>
        [.. row[1].Split(' ').Zip(row[2].Split(' '), (h, v) => (double.Parse(h), double.Parse(v)))];
}
