using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>How much of the spread of arrival goes with one thing the trials draw.</summary>
/// <param name="Share">Of the variance, 0 to 1; shares need not fill 1, since luck also works together.</param>
/// <param name="StandardError">From ten batches of the trials.</param>
public sealed record Driver(string What, double Share, double StandardError);

/// <summary>What drives the spread: first-order shares of variance from the trials already run.</summary>
/// <remarks>
/// The correlation ratio, variance of the mean arrival given one draw over the whole variance, from classes of that draw (Plischke,
/// Borgonovo, Smith 2013, EJOR 226:536–550), less what chance alone would show (Kelley 1935). Of independent draws it is the
/// first-order Sobol index; of an event it counts the weather that it shares. Trials in which nothing comes are left out.
/// </remarks>
public static class Drivers
{
    private const int Classes = 24;
    private const int Batches = 10;

    public static ImmutableArray<Driver> Of(Simulation simulation) => Ordered(simulation.Plan.Draws.Select(draw => Of(simulation, draw)));

    internal static ImmutableArray<Driver> Ordered(IEnumerable<Driver> drivers) => [.. drivers.OrderByDescending(d => d.Share)];

    internal static Driver Of(Simulation simulation, Draw draw)
    {
        var seconds = simulation.SecondsToCare;
        var weather = new Copula(draw.Weather ? simulation.Plan.Plan.Weather : 0);
        var whole = Share(simulation, seconds, 0, seconds.Length, draw, weather);
        var parts = new double[Batches];
        for (var b = 0; b < Batches; b++)
        {
            var (from, to) = ((int)((long)seconds.Length * b / Batches), (int)((long)seconds.Length * (b + 1) / Batches));
            parts[b] = Share(simulation, seconds, from, to, draw, weather);
        }

        var mean = parts.Average();
        var error = Math.Sqrt(parts.Sum(p => (p - mean) * (p - mean)) / (Batches - 1) / Batches);
        return new(draw.Label, Math.Clamp(whole, 0, 1), error);
    }

    private static double Share(Simulation simulation, ReadOnlySpan<double> seconds, int from, int to, Draw draw, Copula weather)
    {
        var classes = draw.Edges?.Length ?? Classes;
        var (counts, means) = (new int[classes], new double[classes]);
        double mean = 0,
            squares = 0;
        var n = 0;
        for (var trial = from; trial < to; trial++)
        {
            var t = seconds[trial];
            if (!double.IsFinite(t))
                continue;
            var c = Class(Luck(simulation.Rng, simulation.Attempt(trial), draw, weather), draw.Edges, classes);
            // Welford 1962, whole and by class.
            var off = t - mean;
            mean += off / ++n;
            squares += off * (t - mean);
            means[c] += (t - means[c]) / ++counts[c];
        }

        var used = counts.Count(c => c > 0);
        if (n <= used || used < 2 || squares <= 0)
            return 0;
        var between = 0.0;
        for (var c = 0; c < classes; c++)
            between += counts[c] * (means[c] - mean) * (means[c] - mean);
        var byChance = (used - 1.0) / (n - 1.0);
        return ((between / squares) - byChance) / (1 - byChance);
    }

    /// <summary>As a share between 0 and 1; of an event also by the weather that all share.</summary>
    private static double Luck(Rng rng, int trial, Draw draw, Copula weather)
    {
        var own = Slice.At(rng, trial, draw.Slot, draw.Place);
        return weather.Rho == 0
            ? own
            : NormalLaw.Cdf(weather.Score(NormalLaw.Quantile(Slice.At(rng, trial, 0, 0)), NormalLaw.Quantile(own)));
    }

    private static int Class(double u, ImmutableArray<double>? edges, int classes)
    {
        if (edges is not { } bounds)
            return (int)(u * classes);
        for (var c = 0; c < classes - 1; c++)
            if (u < bounds[c])
                return c;
        return classes - 1;
    }
}
