using CsCheck;
using Independent = MathNet.Numerics.Distributions;

namespace Farhold.Tests.WayOut;

public class DistributionTests
{
    private static readonly Gen<Distribution> Laws = Gen.OneOf<Distribution>(
        Gen.Select(Gen.Double[0, 50], Gen.Double[0, 50], Gen.Double[0.1, 50], Gen.Double[0.1, 12])
            .Select((low, up, more, lambda) => (Distribution)new Pert(low, low + up, low + up + more, lambda)),
        Gen.Select(Gen.Double[1, 50], Gen.Double[0.1, 1.5]).Select((median, sigma) => (Distribution)LogNormal.FromMedian(median, sigma))
    );

    [Fact]
    public void The_normal_law_agrees_with_an_independent_library()
    {
        for (var z = -8.0; z <= 8; z += 0.01)
        {
            var tail = Independent.Normal.CDF(0, 1, -Math.Abs(z));
            Assert.Equal(1, NormalLaw.Cdf(-Math.Abs(z)) / tail, 1e-7);
            Assert.Equal(Independent.Normal.CDF(0, 1, z), NormalLaw.Cdf(z), 1e-14);
        }
    }

    [Fact]
    public void The_normal_quantile_undoes_the_normal_law()
    {
        for (var z = -7.0; z <= 0; z += 0.003)
            Assert.Equal(z, NormalLaw.Quantile(NormalLaw.Cdf(z)), 1e-9);
        Assert.Equal(NormalLaw.Z90, NormalLaw.Quantile(0.9), 1e-14);
        Assert.Equal(double.NegativeInfinity, NormalLaw.Quantile(0));
        Assert.Equal(double.PositiveInfinity, NormalLaw.Quantile(1));
    }

    [Fact]
    public void A_drawn_score_is_the_normal_quantile_to_a_hundred_millionth()
    {
        for (var i = 0; i < 50_000; i++)
        {
            var rng = new Rng(9);
            Assert.Equal(NormalLaw.Quantile(rng.Uniform((ulong)i)), NormalScores.Of(rng.Bits((ulong)i)), 1e-8);
        }
    }

    [Fact]
    public void A_drawn_score_is_good_out_to_the_last_bit_and_mirrors_at_the_middle()
    {
        for (var halving = 1; halving < 63; halving++)
        for (var i = 0; i < 200; i++)
        {
            var bits = (1UL << (63 - halving)) | (new Rng(3).Bits((ulong)i) >> (halving + 1));
            Assert.Equal(NormalLaw.Quantile(Rng.Uniformly(bits)), NormalScores.Of(bits), 1e-8);
            Assert.Equal(-NormalScores.Of(bits), NormalScores.Of(~bits), 1e-9);
        }

        Assert.True(double.IsFinite(NormalScores.Of(0)) && double.IsFinite(NormalScores.Of(ulong.MaxValue)));
    }

    [Fact]
    public void Scores_drawn_in_a_row_are_those_drawn_one_by_one()
    {
        var rng = new Rng(11, 5);
        foreach (var count in (int[])[1, 3, 4, 5, 1023, 1024])
        {
            var scores = new double[count];
            NormalScores.Fill(rng, 4096, new ulong[count], scores);
            Assert.Equal(Enumerable.Range(0, count).Select(k => NormalScores.Of(rng.Bits((ulong)k * 4096))), scores);
        }
    }

    [Fact]
    public void The_beta_law_agrees_with_an_independent_library() =>
        Gen.Select(Gen.Double[1, 25], Gen.Double[1, 25], Gen.Double[0.001, 0.999])
            .Sample(
                (a, b, x) =>
                {
                    var p = BetaLaw.Cdf(x, a, b);
                    Assert.Equal(Independent.Beta.CDF(a, b, x), p, 1e-11);
                    if (p is > 1e-9 and < 1 - 1e-9)
                        Assert.Equal(x, BetaLaw.Quantile(p, a, b), 1e-6);
                }
            );

    [Fact]
    public void A_quantile_is_where_the_law_reaches_it() =>
        Gen.Select(Laws, Gen.Double[1e-6, 1 - 1e-6]).Sample((law, p) => Assert.Equal(p, law.Cdf(law.Quantile(p)), 1e-9));

    [Fact]
    public void A_score_is_its_quantile_and_never_turns_back() =>
        Gen.Select(Laws, Gen.Double[-5, 5], Gen.Double[0, 0.5])
            .Sample(
                (law, z, more) =>
                {
                    var spread = law.Quantile(0.999) - law.Quantile(0.001);
                    Assert.Equal(law.Quantile(NormalLaw.Cdf(z)), law.AtScore(z), 2e-6 * (spread + Math.Abs(law.AtScore(z))));
                    Assert.True(law.AtScore(z + more) >= law.AtScore(z) - (1e-12 * (spread + law.AtScore(z))));
                }
            );

    [Fact]
    public void Scores_in_bulk_are_scores_one_by_one() =>
        Gen.Select(Laws, Gen.Double[-9, 9].Array[20])
            .Sample(
                (law, scores) =>
                {
                    var bulk = scores.ToArray();
                    law.AtScores(bulk);
                    Assert.Equal(scores.Select(law.AtScore), bulk);
                }
            );

    [Fact]
    public void The_pert_table_is_good_to_two_millionths_of_the_width() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.5, 20], Gen.Double[-5.4, 5.4])
            .Sample(
                (mode, lambda, z) =>
                {
                    var pert = new Pert(0, mode, 1, lambda);
                    var exact =
                        z <= 0
                            ? BetaLaw.Quantile(NormalLaw.Cdf(z), pert.Alpha, pert.Beta)
                            : 1 - BetaLaw.Quantile(NormalLaw.Cdf(-z), pert.Beta, pert.Alpha);
                    Assert.Equal(exact, pert.AtScore(z), 2e-6);
                }
            );

    [Fact]
    public void Moments_are_those_of_the_law() =>
        Laws.Sample(
            law =>
            {
                Assert.Equal(law.Mean, Expect(law, x => x), 1e-4 * (1 + law.Mean));
                var variance = Expect(law, x => (x - law.Mean) * (x - law.Mean));
                Assert.Equal(1, variance / Math.Max(law.Variance, 1e-12), law.Variance < 1e-9 ? 2 : 2e-3);
            },
            iter: 50
        );

    [Fact]
    public void Three_equal_figures_are_a_constant()
    {
        var always = new Pert(45, 45, 45);
        Assert.Equal([45, 45, 45, 0], [always.Quantile(0.01), always.AtScore(3), always.Mean, always.Variance]);
        Assert.Equal((0.0, 1.0), (always.Cdf(44.9), always.Cdf(45)));
    }

    [Fact]
    public void Figures_out_of_order_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Pert(60, 30, 90));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Pert(30, 60, 50));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Pert(30, 60, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => LogNormal.FromQuantiles(0, 10));
    }

    [Fact]
    public void A_lognormal_through_three_points_passes_them_where_a_shift_fits()
    {
        var shifted = LogNormal.FromQuantiles(110, 165, 260);
        Assert.Equal((110, 165, 260), (Rounded(shifted, 0.1), Rounded(shifted, 0.5), Rounded(shifted, 0.9)));
        // The middle above the mean of the ends: no shift does it, the ends hold.
        var leftward = LogNormal.FromQuantiles(10, 50, 60);
        Assert.Equal((10, 60), (Rounded(leftward, 0.1), Rounded(leftward, 0.9)));

        static double Rounded(Distribution law, double p) => Math.Round(law.Quantile(p), 6);
    }

    /// <summary>A moment over the normal score against its density, by the trapezium rule.</summary>
    private static double Expect(Distribution law, Func<double, double> of)
    {
        const double last = 8,
            step = 2 * last / 6000;
        return Enumerable.Range(0, 6001).Select(i => -last + (i * step)).Sum(z => NormalLaw.Density(z) * of(law.AtScore(z)) * step);
    }
}
