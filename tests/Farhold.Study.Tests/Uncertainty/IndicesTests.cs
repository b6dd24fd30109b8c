using Farhold.WayOut.Chance;

namespace Farhold.Study.Tests.Uncertainty;

/// <summary>Functions whose indices are known in closed form.</summary>
public class IndicesTests
{
    private const int Rows = 4096;

    /// <summary>T. Ishigami, T. Homma 1990, with a = 7, b = 0.1; indices as printed in Saltelli and others 2008.</summary>
    [Fact]
    public void Ishigamis_indices_are_found()
    {
        static double[] Ishigami(double[] u)
        {
            var x = u.Select(v => Math.PI * ((2 * v) - 1)).ToArray();
            var s = Math.Sin(x[1]);
            return [Math.Sin(x[0]) + (7 * s * s) + (0.1 * x[2] * x[2] * x[2] * x[2] * Math.Sin(x[0]))];
        }

        var found = SobolIndices.Find(Ishigami, 3, Rows, new Rng(1))[0];
        Near(found, [0.3139, 0.4424, 0], [0.5576, 0.4424, 0.2437]);
    }

    /// <summary>I. M. Sobol' g-function, a = 0, 1, 4.5, 9, 99, 99: first-order and total in closed form.</summary>
    [Fact]
    public void The_g_functions_indices_are_found()
    {
        double[] a = [0, 1, 4.5, 9, 99, 99];
        var parts = a.Select(x => 1 / (3 * (1 + x) * (1 + x))).ToArray();
        var all = parts.Aggregate(1.0, (product, v) => product * (1 + v)) - 1;
        var first = parts.Select(v => v / all).ToArray();
        var total = parts.Select(v => v * ((all + 1) / (1 + v)) / all).ToArray();
        var found = SobolIndices.Find(
            u => [u.Select((x, i) => (Math.Abs((4 * x) - 2) + a[i]) / (1 + a[i])).Aggregate((p, q) => p * q)],
            a.Length,
            Rows,
            new Rng(2)
        )[0];
        Near(found, first, total);
    }

    private static void Near(IReadOnlyList<SobolIndex> found, double[] first, double[] total)
    {
        for (var i = 0; i < found.Count; i++)
        {
            Assert.Equal(first[i], found[i].First, 0.02);
            Assert.Equal(total[i], found[i].Total, 0.02);
            Assert.InRange(total[i], found[i].TotalLow - 0.01, found[i].TotalHigh + 0.01);
            Assert.InRange(found[i].TotalHigh - found[i].TotalLow, 0, 0.1);
        }
    }

    [Fact]
    public void Threads_change_no_bit()
    {
        static double[] Some(double[] u) => [u[0] * u[1], u[1] + u[2]];
        var (one, four) = (SobolIndices.Find(Some, 3, 64, new Rng(3)), SobolIndices.Find(Some, 3, 64, new Rng(3), threads: 4));
        Assert.Equal(one.SelectMany(o => o), four.SelectMany(o => o));
        Assert.Equal(
            Morris.Screen(Some, 3, 10, new Rng(3)).SelectMany(o => o),
            Morris.Screen(Some, 3, 10, new Rng(3), threads: 4).SelectMany(o => o)
        );
    }

    /// <summary>Of a sum each effect is the slope, whatever the trajectory; of a product it spreads.</summary>
    [Fact]
    public void Morris_finds_slopes_and_what_hangs_together()
    {
        var found = Morris.Screen(u => [(3 * u[0]) - (2 * u[1]), u[0] * u[2]], 3, 20, new Rng(4));
        Assert.Equal(2.94, found[0][0].Size, 1e-9); // the outermost hundredth on each side is left out
        Assert.Equal(1.96, found[0][1].Size, 1e-9);
        Assert.Equal(0, found[0][2].Size, 1e-9);
        Assert.All(found[0], e => Assert.Equal(0, e.Spread, 1e-9));
        Assert.True(found[1][0].Spread > 0.1);
    }
}
