using CsCheck;

namespace Farhold.Physiology.Tests.Arithmetic;

public class ExactMathTests
{
    private const double Half = 0.34657359027997265; // ln 2 / 2: where the reduction takes the next whole number

    [Fact]
    public void Exp_is_within_one_ulp() =>
        Gen.Frequency((4, Gen.Double[-30, 30]), (2, Gen.Double[-708, 709.7]), (1, Gen.Double[-1e-3, 1e-3]), (1, NearHalves()))
            .Sample(x => BigReal.UlpsFromExp(x, ExactMath.Exp(x)) < 1, iter: Cases.Of(20_000));

    [Fact]
    public void Log_is_within_one_ulp() =>
        Gen.Frequency(
                (4, Gen.Double[1e-3, 1e3]),
                (2, Gen.Double[0.5, 2]),
                (2, Gen.Double[-1e-6, 1e-6].Select(d => 1 + d)),
                (2, Gen.Double[-1074, 1023].Select(e => Math.ScaleB(1.37, (int)e)))
            )
            .Where(x => x > 0)
            .Sample(x => BigReal.UlpsFromLog(x, ExactMath.Log(x)) < 1, iter: Cases.Of(20_000));

    /// <summary>Below the smallest normal number a last place is 2^-1074 whatever the size.</summary>
    [Fact]
    public void Exp_into_the_subnormal_numbers_is_within_one_ulp() =>
        Gen.Double[-745, -708].Sample(x => BigReal.UlpsFromExp(x, ExactMath.Exp(x)) < 1, iter: Cases.Of(2_000));

    /// <summary>The powers that the model raises: compliance of the surface formula, holding pressure of clots.</summary>
    [Fact]
    public void Pow_is_as_near_as_it_says() =>
        Gen.Select(Gen.Double[1e-9, 1e9], Gen.Double[-0.5, 0.8])
            .Sample(
                (x, y) =>
                {
                    var (found, expected) = (ExactMath.Pow(x, y), Math.Pow(x, y));
                    var ulps = Math.Abs(found - expected) / (Math.BitIncrement(expected) - expected);
                    return ulps <= 3 + (2 * Math.Abs(y * Math.Log(x)));
                },
                iter: Cases.Of(20_000)
            );

    [Fact]
    public void Special_values_of_exp()
    {
        Assert.Equal(1, ExactMath.Exp(0));
        Assert.Equal(1, ExactMath.Exp(-0.0));
        Assert.Equal(0, ExactMath.Exp(double.NegativeInfinity));
        Assert.Equal(double.PositiveInfinity, ExactMath.Exp(double.PositiveInfinity));
        Assert.True(double.IsNaN(ExactMath.Exp(double.NaN)));
        Assert.Equal(double.PositiveInfinity, ExactMath.Exp(709.79));
        Assert.Equal(0, ExactMath.Exp(-745.14));
        Assert.Equal(double.Epsilon, ExactMath.Exp(-745.13));
        Assert.Equal(double.MaxValue, ExactMath.Exp(709.782712893384), 1e296);
    }

    [Fact]
    public void Special_values_of_log()
    {
        Assert.Equal(0, ExactMath.Log(1));
        Assert.Equal(double.NegativeInfinity, ExactMath.Log(0));
        Assert.Equal(double.NegativeInfinity, ExactMath.Log(-0.0));
        Assert.True(double.IsNaN(ExactMath.Log(-1)));
        Assert.True(double.IsNaN(ExactMath.Log(double.NaN)));
        Assert.True(double.IsNaN(ExactMath.Log(double.NegativeInfinity)));
        Assert.Equal(double.PositiveInfinity, ExactMath.Log(double.PositiveInfinity));
        Assert.Equal(-744.4400719213812, ExactMath.Log(double.Epsilon));
        Assert.Equal(0.6931471805599453, ExactMath.Log(2));
        Assert.Equal(2.302585092994046, ExactMath.Log(10));
    }

    /// <summary>A larger state never gets a smaller answer: what the logistic curves of the model lean on.</summary>
    [Fact]
    public void Exp_and_log_never_fall() =>
        Gen.Select(Gen.OneOf(Gen.Double[-40, 40], NearHalves()), Gen.Int[1, 1_000])
            .Sample(
                (x, steps) =>
                {
                    var y = x;
                    for (var i = 0; i < steps; i++)
                        y = Math.BitIncrement(y);
                    return ExactMath.Exp(x) <= ExactMath.Exp(y) && (x <= 0 || ExactMath.Log(x) <= ExactMath.Log(y));
                },
                iter: Cases.Of(20_000)
            );

    /// <summary>The same bits as when this was written, whatever compiles and runs it.</summary>
    [Fact]
    public void Bits_of_a_thousand_arguments_stay()
    {
        var hash = BitHash.Start;
        for (var i = 0; i < 1_000; i++)
        {
            var x = (i - 500) * 0.0731;
            hash = BitHash.Add(hash, ExactMath.Exp(x));
            hash = BitHash.Add(hash, ExactMath.Log(Math.Abs(x) + 1e-9));
        }

        Assert.Equal(15619245164921657279UL, hash);
    }

    private static Gen<double> NearHalves() =>
        Gen.Select(Gen.Int[-40, 40], Gen.Int[-50, 50], (k, ulps) => (((2 * k) + 1) * Half) + (ulps * 1e-15));
}
