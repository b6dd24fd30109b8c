namespace Farhold.Physiology.Tests.Rehearsal;

public class NamedDrawsTests
{
    private static readonly NamedDraws Draws = new(71);

    [Fact]
    public void A_name_draws_the_same_whatever_was_drawn_before()
    {
        var fresh = new NamedDraws(71);
        _ = Draws.Uniform("wound:w1/pack:1/time");
        Assert.Equal(fresh.Uniform("wound:w1/attempt:2/hold"), Draws.Uniform("wound:w1/attempt:2/hold"));
    }

    [Fact]
    public void Another_seed_or_another_name_draws_something_else()
    {
        Assert.NotEqual(Draws.Uniform("a"), Draws.Uniform("b"));
        Assert.NotEqual(Draws.Uniform("a"), new NamedDraws(72).Uniform("a"));
    }

    /// <summary>The same digits as when this was written: recordings of a seed stay what they were.</summary>
    [Fact]
    public void A_seed_keeps_what_it_drew() => Assert.Equal(0.67422966692164887, Draws.Uniform("casualty:c1/wound:w1/attempt:1/hold"));

    /// <summary>Names alike but for a number, as they are in use: 20,000 of them, ten classes, each within five standard errors.</summary>
    [Fact]
    public void Draws_are_even()
    {
        var counts = new int[10];
        for (var i = 0; i < 20_000; i++)
            counts[(int)(10 * Draws.Uniform($"casualty:c{i}/wound:w1/attempt:1/hold"))]++;
        Assert.All(counts, c => Assert.InRange(c, 2_000 - 212, 2_000 + 212));
    }

    /// <summary>Wichura 1988 prints these as checks of PPND16.</summary>
    [Theory]
    [InlineData(0.25, -0.6744897501960817)]
    [InlineData(0.001, -3.090232306167814)]
    [InlineData(1e-20, -9.262340089798408)]
    public void Quantiles_of_the_normal_distribution_are_those_published(double p, double expected) =>
        Assert.Equal(expected, NamedDraws.Normal(p), 1e-14 * Math.Abs(expected) * 2);

    [Fact]
    public void Quantiles_mirror_at_the_middle_and_rise()
    {
        Assert.Equal(0, NamedDraws.Normal(0.5));
        Assert.Equal(-NamedDraws.Normal(0.125), NamedDraws.Normal(0.875));
        for (var i = 1; i < 9_999; i++)
            Assert.True(NamedDraws.Normal(i / 10_000.0) < NamedDraws.Normal((i + 1) / 10_000.0));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void There_is_no_quantile_of_what_is_certain(double p) => Assert.Throws<ArgumentOutOfRangeException>(() => NamedDraws.Normal(p));
}
