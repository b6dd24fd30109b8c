using MathNet.Numerics.Distributions;

namespace Farhold.Study.Tests.Chance;

/// <summary>Beside MathNet.Numerics 5, a library of its own.</summary>
public class FigureTests
{
    private static readonly double[] Shares = [0.001, 0.05, 0.3, 0.5, 0.77, 0.95, 0.999];

    [Theory]
    [InlineData(10, 2)]
    [InlineData(5, 15)]
    [InlineData(60, 2)]
    [InlineData(14, 7)]
    public void A_beta_quantile_is_the_librarys(double a, double b)
    {
        var (ours, theirs) = (new Figure.Beta(a, b), new Beta(a, b));
        Assert.All(Shares, p => Assert.Equal(p, theirs.CumulativeDistribution(ours.Quantile(p)), 1e-9));
        Assert.Equal(theirs.Mean, ours.Mean, 1e-12);
    }

    [Fact]
    public void A_log_normal_quantile_is_the_librarys()
    {
        var (ours, theirs) = (new Figure.LogNormal(250, 0.7), new LogNormal(Math.Log(250), 0.7));
        Assert.All(Shares, p => Assert.Equal(p, theirs.CumulativeDistribution(ours.Quantile(p)), 1e-9));
        Assert.Equal(theirs.Mean, ours.Mean, 1e-9);
    }

    /// <summary>To 1e-8: the library's own e^x − 1 is no better.</summary>
    [Theory]
    [InlineData(3.8, 9)]
    [InlineData(2.8, 11.5)]
    public void Limb_loss_is_the_librarys_weibull(double shape, double scale)
    {
        var theirs = new Weibull(shape, scale);
        Assert.All(
            new[] { 0.5, 1.5, 4, 6, 8, 12, 24 },
            hours => Assert.Equal(theirs.CumulativeDistribution(hours), Rates.LimbLost(hours, shape, scale), 1e-8)
        );
    }

    /// <summary>The reference's table of the central fit (k 4.4, eta 8.35 h), section 1.4.</summary>
    [Theory]
    [InlineData(1.5, 0.0005, 0.00005)]
    [InlineData(2, 0.002, 0.0003)]
    [InlineData(3, 0.011, 0.0006)]
    [InlineData(4, 0.038, 0.001)]
    [InlineData(6, 0.21, 0.006)]
    [InlineData(8, 0.56, 0.006)]
    [InlineData(10, 0.89, 0.006)]
    public void Limb_loss_is_as_printed(double hours, double share, double within) =>
        Assert.Equal(share, Rates.LimbLost(hours, 4.4, 8.35), within);

    /// <summary>Horlocker 2006 by the reference: 2.4 % at 110 min, 3.4 % at 120, 22 % at 180; no further than 300.</summary>
    [Fact]
    public void Palsy_is_as_printed()
    {
        Assert.Equal(0.024, Rates.Palsy(110.0 / 60, 1), 0.001);
        Assert.Equal(0.034, Rates.Palsy(2, 1), 0.001);
        Assert.Equal(0.22, Rates.Palsy(3, 1), 0.005);
        Assert.Equal(Rates.Palsy(5, 1), Rates.Palsy(24, 1));
    }

    /// <summary>None to 2 h, then by the square of what is above it over 6 h (reference, 1.5).</summary>
    [Fact]
    public void Death_at_release_grows_by_the_square()
    {
        Assert.Equal(0, Rates.ReleaseDeath(2, 0.3));
        Assert.Equal(0.3, Rates.ReleaseDeath(8, 0.3), 1e-12);
        Assert.Equal(0.075, Rates.ReleaseDeath(5, 0.3), 1e-12);
        Assert.Equal(1, Rates.ReleaseDeath(24, 0.3));
    }
}
