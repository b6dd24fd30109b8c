using MathNet.Numerics.Distributions;

namespace Farhold.Tests.Signs;

/// <summary>Against MathNet.Numerics.</summary>
public class GaussTests
{
    [Fact]
    public void The_fixed_points_of_the_normal_distribution_agree_with_a_library()
    {
        Assert.Equal(Gauss.TwoSided5Percent, Normal.InvCDF(0, 1, 0.975), 1e-12);
        Assert.Equal(Gauss.TwoSided1Percent, Normal.InvCDF(0, 1, 0.995), 1e-12);
    }

    [Fact]
    public void Students_point_agrees_with_a_library()
    {
        for (var freedom = 4; freedom <= 200; freedom++)
            Assert.InRange(Gauss.Student5Percent(freedom) / StudentT.InvCDF(0, 1, freedom, 0.975), 1 - 4e-4, 1 + 4e-4);
    }
}
