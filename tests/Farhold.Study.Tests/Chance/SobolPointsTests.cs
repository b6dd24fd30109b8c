using Farhold.WayOut.Chance;

namespace Farhold.Study.Tests.Chance;

public class SobolPointsTests
{
    /// <summary>
    /// The first ten points in three dimensions, as printed in S. Joe and F. Y. Kuo, "Notes on generating Sobol' sequences" (2008), from
    /// memory.
    /// </summary>
    private static readonly double[][] Published =
    [
        [0, 0, 0],
        [0.5, 0.5, 0.5],
        [0.75, 0.25, 0.25],
        [0.25, 0.75, 0.75],
        [0.375, 0.375, 0.625],
        [0.875, 0.875, 0.125],
        [0.625, 0.125, 0.875],
        [0.125, 0.625, 0.375],
        [0.1875, 0.3125, 0.9375],
        [0.6875, 0.8125, 0.4375],
    ];

    [Fact]
    public void The_first_points_are_the_published_ones()
    {
        var points = new SobolPoints(3);
        for (var i = 0; i < Published.Length; i++)
            Assert.Equal(Published[i], points.Point((uint)i));
    }

    /// <summary>
    /// What makes a sequence Sobol's: in each dimension every block of 2^m points from a multiple of 2^m on has one in each of 2^m equal
    /// cells. A wrong digit in the table of direction numbers breaks it (an even one at once).
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Each_block_is_spread_evenly_in_each_dimension(bool scrambled)
    {
        var points = new SobolPoints(SobolPoints.MostDimensions, scrambled ? new Rng(7) : null);
        foreach (var (from, size) in new[] { (0u, 64), (64u, 64), (256u, 256) })
        {
            var block = Enumerable.Range(0, size).Select(i => points.Point(from + (uint)i)).ToArray();
            for (var d = 0; d < SobolPoints.MostDimensions; d++)
                Assert.Equal(Enumerable.Range(0, size), block.Select(p => (int)(p[d] * size)).Order());
        }
    }

    /// <summary>
    /// Joe and Kuo's numbers fulfil Sobol's property A: of the first 2^d points of d dimensions one lies in each of the halves' boxes.
    /// It holds for the table's first dimensions together, so it ties them to each other.
    /// </summary>
    [Theory]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(12)]
    public void The_first_points_meet_every_box_of_halves(int dimensions)
    {
        var points = new SobolPoints(dimensions);
        var boxes = Enumerable
            .Range(0, 1 << dimensions)
            .Select(i => points.Point((uint)i).Select((x, d) => x < 0.5 ? 0 : 1 << d).Sum())
            .ToHashSet();
        Assert.Equal(1 << dimensions, boxes.Count);
    }

    [Fact]
    public void A_scramble_is_another_for_another_seed_and_the_same_for_the_same()
    {
        var (one, same, other) = (new SobolPoints(4, new Rng(1)), new SobolPoints(4, new Rng(1)), new SobolPoints(4, new Rng(2)));
        Assert.Equal(one.Point(5), same.Point(5));
        Assert.NotEqual(one.Point(5), other.Point(5));
        Assert.All(Enumerable.Range(0, 1024), i => Assert.All(one.Point((uint)i), x => Assert.InRange(x, double.Epsilon, 1 - 1e-12)));
    }

    /// <summary>
    /// The mean of 1,024 scrambled points misses the integral by far less than as many independent ones would (0.003 here).
    /// </summary>
    [Fact]
    public void Scrambled_points_integrate_better_than_independent_ones()
    {
        var errors = Enumerable
            .Range(0, 16)
            .Select(s =>
            {
                var points = new SobolPoints(6, new Rng((ulong)s));
                return Enumerable
                        .Range(0, 1024)
                        .Average(i => points.Point((uint)i).Select(x => 1 + (0.2 * (x - 0.5))).Aggregate((a, b) => a * b)) - 1;
            })
            .ToArray();
        Assert.InRange(Math.Sqrt(errors.Average(e => e * e)), 0, 3e-4);
    }

    [Fact]
    public void More_dimensions_than_the_table_has_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SobolPoints(SobolPoints.MostDimensions + 1));
}
