namespace Farhold.Tests.WayOut;

public class RngTests
{
    // Source: Rosetta Code, "Pseudo-random numbers/Splitmix64", seed 1234567.
    [Fact]
    public void It_draws_what_the_reference_draws()
    {
        ulong[] published = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.Equal(published, Enumerable.Range(0, 5).Select(i => new Rng(1234567).Bits((ulong)i)));
    }

    // Source: outputs of splitmix64.c for seed 0, as public test suites print them.
    [Fact]
    public void Seed_0_draws_what_the_reference_draws() =>
        Assert.Equal([0xE220A8397B1DCDAF, 0x6E789E6AA1B965F4], new[] { new Rng(0).Bits(0), new Rng(0).Bits(1) });

    [Fact]
    public void Skipping_is_drawing_and_throwing_away() => Assert.Equal(new Rng(7).Bits(1000), new Rng(7).Skip(900).Bits(100));

    [Fact]
    public void It_prints_and_reads_back()
    {
        var rng = new Rng(0xFEDCBA9876543210).Skip(42);
        Assert.Equal("splitmix64:fedcba9876543210:42", rng.ToString());
        Assert.Equal(rng, Rng.Parse(rng.ToString()));
        Assert.Null(Rng.Parse("splitmix64:42"));
        Assert.Null(Rng.Parse("pcg:fedcba9876543210:42"));
    }

    [Fact]
    public void Uniforms_are_flat_and_uncorrelated_with_neighbours_and_parts()
    {
        const int n = 100_000;
        var rng = new Rng(20310504);
        var part = rng.Split(3);
        var counts = new int[20];
        double pairs = 0,
            across = 0;
        for (var i = 0UL; i < n; i++)
        {
            var u = rng.Uniform(i);
            counts[(int)(20 * u)]++;
            pairs += (u - 0.5) * (rng.Uniform(i + 1) - 0.5);
            across += (u - 0.5) * (part.Uniform(i) - 0.5);
        }

        // 99.99 % of chi-squared with 19 degrees of freedom is 50.8; a correlation has standard error 1/√n.
        Assert.True(counts.Sum(c => (c - (n / 20.0)) * (c - (n / 20.0)) / (n / 20.0)) < 50.8);
        Assert.InRange(12 * pairs / n, -4 / Math.Sqrt(n), 4 / Math.Sqrt(n));
        Assert.InRange(12 * across / n, -4 / Math.Sqrt(n), 4 / Math.Sqrt(n));
    }
}
