using Farhold.WayOut.Chance;

namespace Farhold.Study.Tests.Uncertainty;

public class ValueOfInformationTests
{
    /// <summary>
    /// Two policies: nothing, and one whose benefit is 10 (u - 0.6) and noise that u tells nothing of. Knowing u, the second is chosen
    /// above 0.6: worth 10 times 0.4 squared over 2, 0.8; without it, nothing.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void What_one_figure_is_worth_is_found(double noise)
    {
        const int draws = 4096;
        var (points, rng) = (new SobolPoints(2, new Rng(5)), new Rng(6));
        var places = Enumerable.Range(0, draws).Select(i => points.Point((uint)i)).ToArray();
        var second = places.Select((p, i) => (10 * (p[0] - 0.6)) + (noise * NormalLaw.Quantile(rng.Uniform((ulong)i)))).ToArray();
        double[][] benefits = [new double[draws], second];
        Assert.Equal(0.8, ValueOfInformation.OfOne(benefits, [.. places.Select(p => p[0])]), 0.06);
        Assert.InRange(ValueOfInformation.OfOne(benefits, [.. places.Select(p => p[1])]), 0, 0.05);
        Assert.InRange(ValueOfInformation.OfAll(benefits), 0.79, 3);
    }
}
