using CsCheck;
using MathNet.Numerics.Distributions;

namespace Farhold.Tests.Signs;

public class TapRateTests
{
    /// <summary>
    /// Simulated taps, 2,000 seeded runs each. Where every beat is as long as chance has it, the interval covers the rate
    /// about as often as it says (95 %); where beats are even and the hand is not, more often. Bounds: the figure ± four of
    /// its standard errors.
    /// </summary>
    [Theory]
    [InlineData(70, 0.05, 0.0, 10, 0.934, 0.973)] // 95.3 %
    [InlineData(70, 0.05, 0.0, 30, 0.928, 0.969)] // 94.8 %
    [InlineData(120, 0.05, 0.0, 30, 0.934, 0.973)] // 95.3 %
    [InlineData(120, 0.05, 0.02, 30, 0.986, 1.0)] // 99.4 %
    [InlineData(150, 0.0, 0.03, 40, 0.998, 1.0)] // 100.0 %
    [InlineData(70, 0.0, 0.04, 12, 0.998, 1.0)] // 100.0 %
    [InlineData(18, 0.12, 0.0, 10, 0.932, 0.971)] // 95.2 %
    [InlineData(18, 0.12, 0.1, 16, 0.949, 0.982)] // 96.5 %
    [InlineData(18, 0.2, 0.0, 10, 0.927, 0.968)] // 94.8 %
    [InlineData(30, 0.15, 0.1, 20, 0.953, 0.985)] // 96.9 %
    [InlineData(80, 0.25, 0.0, 30, 0.904, 0.951)] // 92.8 %
    public void The_interval_covers_the_rate_as_often_as_stated(
        double perMinute,
        double beatSpread,
        double handS,
        int taps,
        double least,
        double most
    )
    {
        var random = new Random(taps);
        var covered = Enumerable
            .Range(0, 2000)
            .Count(_ =>
            {
                var count = TapRate.Of(Taps(random, perMinute, beatSpread, handS, taps), TapTarget.Pulse);
                return count.LowPerMinute <= perMinute && !(count.HighPerMinute < perMinute);
            });
        TestContext.Current.TestOutputHelper?.WriteLine($"{covered / 2000.0}");
        Assert.InRange(covered / 2000.0, least, most);
    }

    [Fact]
    public void An_even_rhythm_gives_its_rate() =>
        Gen.Select(Gen.Double[6, 200], Gen.Int[2, 60])
            .Sample(
                (perMinute, taps) =>
                {
                    var even = Enumerable.Range(0, taps).Select(i => Duration.FromSeconds(i * 60 / perMinute)).ToList();
                    var count = TapRate.Of(even, TapTarget.Pulse);
                    Assert.Equal(perMinute, count.PerMinute!.Value, 1e-4);
                    Assert.Equal((taps - 1, 0, 0, false), (count.Beats, count.Missed, count.Doubled, count.Irregular));
                    Assert.Equal(taps <= TapRate.LeastIntervals, count.LowPerMinute is null);
                }
            );

    [Fact]
    public void Missed_and_doubled_taps_are_mended_in_a_steady_rhythm() =>
        Gen.Select(Gen.Int[0, 1000], Gen.Int[3, 8], Gen.Int[11, 16])
            .Sample(
                (seed, missed, doubled) =>
                {
                    var taps = Taps(new Random(seed), 90, 0.04, 0.02, 20).ToList();
                    taps.Insert(doubled + 1, taps[doubled] + Duration.FromMilliseconds(120));
                    taps.RemoveAt(missed);
                    var count = TapRate.Of(taps, TapTarget.Pulse);
                    Assert.Equal((19, 1, 1, false), (count.Beats, count.Missed, count.Doubled, count.Irregular));
                    Assert.Equal(60 / (taps[^1] - taps[0]).TotalSeconds * 19, count.PerMinute!.Value, 1e-9);
                }
            );

    [Fact]
    public void Two_beats_missed_together_are_two()
    {
        var taps = "0 1 2 3 6 7 8 9 10".Split(' ').Select(t => Duration.FromSeconds(double.Parse(t))).ToList();
        Assert.Equal((10, 2), (TapRate.Of(taps, TapTarget.Pulse).Beats, TapRate.Of(taps, TapTarget.Pulse).Missed));
    }

    [Fact]
    public void A_gap_of_two_beats_may_be_off_by_more_than_a_gap_of_one()
    {
        // Gaps 1.0 1.1 0.9 2.2 1.0 0.9: seven beats of 7.1/7 s; squares over beats, Student's point by a library.
        var taps = "0 1.0 2.1 3.0 5.2 6.2 7.1".Split(' ').Select(t => Duration.FromSeconds(double.Parse(t))).ToList();
        const double beat = 7.1 / 7;
        var squares = "1.0 1.1 0.9 1.0 0.9".Split(' ').Sum(g => Math.Pow(double.Parse(g) - beat, 2)) + (Math.Pow(2.2 - (2 * beat), 2) / 2);
        var reach = StudentT.InvCDF(0, 1, 5, 0.975) * Math.Sqrt(squares / 5 / 7);
        var count = TapRate.Of(taps, TapTarget.Pulse);
        Assert.Equal(60 / (beat + reach), count.LowPerMinute!.Value, 0.005);
        Assert.Equal(60 / (beat - reach), count.HighPerMinute!.Value, 0.005);
    }

    [Fact]
    public void An_uneven_rhythm_is_left_as_it_was_tapped_and_said_to_be_so()
    {
        var taps = "0 0.5 1.6 2.0 3.3 3.8 4.9 5.5 6.9 7.4".Split(' ').Select(t => Duration.FromSeconds(double.Parse(t))).ToList();
        var count = TapRate.Of(taps, TapTarget.Pulse);
        Assert.Equal((9, 0, 0, true, false), (count.Beats, count.Missed, count.Doubled, count.Irregular, count.Enough));
    }

    [Fact]
    public void A_pause_of_half_a_beat_is_neither_mended_nor_hidden()
    {
        var even = Enumerable.Range(0, 20).Select(i => Duration.FromSeconds(i)).ToList();
        var paused = Enumerable.Range(0, 20).Select(i => Duration.FromSeconds(i < 10 ? i : i + 0.5)).ToList();
        var count = TapRate.Of(paused, TapTarget.Pulse);
        Assert.Equal((19, 0), (count.Beats, count.Missed));
        Assert.True(count.HighPerMinute - count.LowPerMinute > 2 * Width(TapRate.Of(even, TapTarget.Pulse)));

        static double? Width(TapCount c) => c.HighPerMinute - c.LowPerMinute;
    }

    [Theory]
    [InlineData(80, 20, false)] // 14.3 s
    [InlineData(80, 21, true)] // 15 s
    [InlineData(15, 8, false)] // 28 s of breaths
    [InlineData(15, 9, true)] // 32 s
    [InlineData(6, 4, false)] // 30 s, but too few to give an interval
    public void Enough_needs_the_time_as_well(double perMinute, int taps, bool enough)
    {
        var even = Enumerable.Range(0, taps).Select(i => Duration.FromSeconds(i * 60 / perMinute)).ToList();
        Assert.Equal(enough, TapRate.Of(even, perMinute > 40 ? TapTarget.Pulse : TapTarget.Breaths).Enough);
    }

    [Fact]
    public void Enough_means_both_ends_are_within_the_target() =>
        Gen.Select(Gen.Int[0, 10000], Gen.Double[0, 0.4], Gen.Int[2, 60])
            .Sample(
                (seed, spread, taps) =>
                {
                    var count = TapRate.Of(Taps(new Random(seed), 18, spread, 0.1, taps), TapTarget.Breaths);
                    if (!count.Enough)
                        return;
                    Assert.InRange(count.HighPerMinute!.Value - count.PerMinute!.Value, 0, 2);
                    Assert.InRange(count.PerMinute.Value - count.LowPerMinute!.Value, 0, 2);
                }
            );

    [Fact]
    public void One_tap_has_no_rate()
    {
        Assert.Null(TapRate.Of([], TapTarget.Pulse).PerMinute);
        Assert.Null(TapRate.Of([Duration.Zero], TapTarget.Pulse).PerMinute);
        Assert.Null(TapRate.Of([.. Enumerable.Repeat(Duration.Zero, 9)], TapTarget.Pulse).PerMinute);
    }

    [Fact]
    public void Taps_out_of_order_are_refused() =>
        Assert.ThrowsAny<ArgumentException>(() => TapRate.Of([Duration.FromSeconds(2), Duration.FromSeconds(1)], TapTarget.Pulse));

    // Beats of a length spread by a share of it, tapped by a hand off by so many seconds (standard deviations).
    private static Duration[] Taps(Random random, double perMinute, double beatSpread, double handS, int taps)
    {
        var beat = 60 / perMinute;
        var at = 10.0;
        var seconds = new List<double>();
        for (var i = 0; i < taps; i++)
        {
            seconds.Add(at + (handS * Normal(random)));
            at += beat * Math.Max(0.3, 1 + (beatSpread * Normal(random)));
        }

        return [.. seconds.Order().Select(Duration.FromSeconds)];
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
