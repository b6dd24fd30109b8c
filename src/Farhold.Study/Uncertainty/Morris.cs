using System.Collections.Immutable;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Uncertainty;

/// <summary>How far an input moves an output on the way through the whole range.</summary>
/// <param name="Size">Mean of the sizes of the effects (mu star).</param>
/// <param name="Spread">Standard deviation of the effects: bends, or hangs on other inputs.</param>
public readonly record struct Effect(double Size, double Spread);

/// <summary>Screening by elementary effects.</summary>
/// <remarks>
/// M. D. Morris, Technometrics 33 (1991) 161, with the mean of sizes of Campolongo, Cariboni and Saltelli 2007. Four levels, steps of two
/// thirds, one input after another in an order of each trajectory's own.
/// </remarks>
public static class Morris
{
    private const double Step = 2.0 / 3;

    /// <param name="outputs">Of a point of the unit cube.</param>
    /// <returns>For each output, one effect an input.</returns>
    public static ImmutableArray<ImmutableArray<Effect>> Screen(
        Func<double[], double[]> outputs,
        int inputs,
        int trajectories,
        Rng rng,
        int threads = 1,
        CancellationToken cancellation = default
    )
    {
        var effects = new double[trajectories][][];
        Parallel.For(
            0,
            trajectories,
            new() { MaxDegreeOfParallelism = threads, CancellationToken = cancellation },
            t => effects[t] = Trajectory(outputs, inputs, rng.Split((ulong)t))
        );
        return
        [
            .. Enumerable
                .Range(0, effects[0][0].Length)
                .Select(o => Enumerable.Range(0, inputs).Select(i => Of([.. effects.Select(e => e[i][o])])).ToImmutableArray()),
        ];
    }

    private static double[][] Trajectory(Func<double[], double[]> outputs, int inputs, Rng rng)
    {
        // Of the levels 0, 1/3, 2/3, 1 a step leads from the lower two up, or from the upper two down.
        var point = new double[inputs];
        for (var i = 0; i < inputs; i++)
            point[i] = Math.Floor(4 * rng.Uniform((ulong)i)) / 3;
        var order = Enumerable.Range(0, inputs).OrderBy(i => rng.Uniform((ulong)(inputs + i))).ToArray();
        var effects = new double[inputs][];
        var before = outputs([.. point.Select(Inside)]);
        foreach (var i in order)
        {
            var step = point[i] < 0.5 ? Step : -Step;
            point[i] += step;
            var after = outputs([.. point.Select(Inside)]);
            effects[i] = [.. after.Zip(before, (x, y) => (x - y) / step)];
            before = after;
        }

        return effects;
    }

    /// <summary>The ends of the range are no place of a law without ends.</summary>
    private static double Inside(double level) => 0.01 + (0.98 * level);

    private static Effect Of(double[] effects)
    {
        var mean = effects.Average();
        var spread = effects.Length < 2 ? 0 : Math.Sqrt(effects.Sum(e => (e - mean) * (e - mean)) / (effects.Length - 1));
        return new(effects.Average(Math.Abs), spread);
    }
}
