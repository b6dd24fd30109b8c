using System.Collections.Immutable;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Uncertainty;

/// <summary>What the net benefit of a policy is once the figures are drawn, per 1,000 casualties.</summary>
/// <param name="Error">Of the mean, between independent scrambles.</param>
/// <param name="Pays">Share of draws above 0.</param>
/// <param name="InnerShare">How much of the variance among draws was noise of the casualties within; taken out of the quantiles.</param>
public readonly record struct Fan(
    double Mean,
    double Error,
    double P5,
    double P25,
    double P50,
    double P75,
    double P95,
    double Pays,
    double InnerShare
)
{
    /// <summary>The middle nine tenths lie on both sides of 0.</summary>
    public bool Crosses => P5 < 0 && P95 > 0;
}

/// <summary>How often a policy is the best, and what choosing it costs, for one cohort and hour.</summary>
/// <param name="Best">Share of draws.</param>
/// <param name="NearBest">Share of draws in which it is within the zone of indifference of the best.</param>
/// <param name="Regret">Mean net benefit given away against the best of each draw, per 1,000.</param>
public readonly record struct Rank(double Best, double NearBest, double Regret);

/// <summary>Draws the figures, and all casualties anew for each draw.</summary>
/// <remarks>
/// Scrambled Sobol' points in sixteen independent scrambles. Within a draw the noise of so many casualties is known; nested analysis of
/// variance takes it out: quantiles are drawn together about their mean by the square root of the share that is left. The casualties'
/// bleeding limits are the same in every draw, so what noise those bring is not in it.
/// </remarks>
public sealed class OuterLoop
{
    private const int Scrambles = 16;

    private readonly StudyPlan plan;
    private readonly ImmutableArray<StudyInput> drawn;

    private OuterLoop(StudyPlan plan, ImmutableArray<StudyInput> drawn, double[][] points, double[][] net, double[][] noise)
    {
        (this.plan, this.drawn, Points, Net, Noise) = (plan, drawn, points, net, noise);
    }

    /// <summary>Places in the unit cube, one a draw: the share of needed tourniquets first, then the drawn inputs.</summary>
    public double[][] Points { get; }

    /// <summary>For each cell as in <see cref="Tally.Cell"/>: net benefit per 1,000, one a draw.</summary>
    public double[][] Net { get; }

    /// <summary>Variance of each of those by the casualties within.</summary>
    private double[][] Noise { get; }

    public ImmutableArray<StudyInput> Drawn => drawn;

    /// <summary>The same whatever the number of threads.</summary>
    /// <param name="limits">Of at least as many casualties as the plan asks for; null where shares decide.</param>
    public static OuterLoop Run(StudyPlan plan, LimitTable? limits, int threads, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (size, drawn) = (plan.Uncertainty, plan.Figures.Drawn);
        var cells = plan.Cohorts.Length * plan.Policies.Length * plan.Evacuation.Length;
        var rng = new Rng(plan.Seed).Split(StudyDraws.Key("outer"));
        var points = Places(size.Draws, drawn.Length + 1, rng);
        var (net, noise) = (New(cells, size.Draws), New(cells, size.Draws));
        Parallel.For(
            0,
            size.Draws,
            new() { MaxDegreeOfParallelism = threads, CancellationToken = cancellation },
            draw => Draw(plan, drawn, points[draw], limits, draw, net, noise)
        );
        return new(plan, drawn, points, net, noise);
    }

    private static double[][] New(int rows, int columns) => [.. Enumerable.Range(0, rows).Select(_ => new double[columns])];

    private static double[][] Places(int draws, int dimensions, Rng rng)
    {
        var scrambles = Math.Min(Scrambles, draws);
        var each = draws / scrambles;
        var sequences = Enumerable.Range(0, scrambles).Select(s => new SobolPoints(dimensions, rng.Split((ulong)s))).ToArray();
        return [.. Enumerable.Range(0, draws).Select(i => sequences[i / each].Point((uint)(i % each)))];
    }

    private static void Draw(
        StudyPlan plan,
        ImmutableArray<StudyInput> drawn,
        double[] point,
        LimitTable? limits,
        int draw,
        double[][] net,
        double[][] noise
    )
    {
        var values = plan.Cohorts.Select(c => InputValues.AtPoint(plan, c, drawn, point)).ToArray();
        var (n, draws, hours) = (plan.Uncertainty.Casualties, new StudyDraws(plan.Seed, (ulong)draw + 1), plan.Evacuation.Length);
        var (sums, squares) = (new double[net.Length], new double[net.Length]);
        var reference = new double[hours];
        for (var i = 0; i < n; i++)
        {
            var luck = new Luck(draws.Casualty(i));
            var cell = 0;
            foreach (var v in values)
            {
                var needed = luck.Needed < v.Needed;
                var course = Follow.Of(plan.Policies[plan.Reference], v, luck, needed, limits, i);
                for (var hour = 0; hour < hours; hour++)
                    reference[hour] = Follow.At(plan, plan.Reference, hour, course, v, luck, needed).Harm(plan.Weights);
                for (var policy = 0; policy < plan.Policies.Length; policy++)
                {
                    course = Follow.Of(plan.Policies[policy], v, luck, needed, limits, i);
                    for (var hour = 0; hour < hours; hour++, cell++)
                    {
                        var gained = reference[hour] - Follow.At(plan, policy, hour, course, v, luck, needed).Harm(plan.Weights);
                        sums[cell] += gained;
                        squares[cell] += gained * gained;
                    }
                }
            }
        }

        for (var cell = 0; cell < net.Length; cell++)
        {
            var mean = Paired.From(sums[cell], squares[cell], n);
            net[cell][draw] = 1000 * mean.Mean;
            noise[cell][draw] = 1e6 * mean.Error * mean.Error;
        }
    }

    public Fan Fan(int cohort, int policy, int hour)
    {
        var cell = Cell(cohort, policy, hour);
        var (net, mean) = (Net[cell], Net[cell].Average());
        var variance = net.Sum(x => (x - mean) * (x - mean)) / (net.Length - 1);
        var inner = variance > 0 ? Math.Min(1, Noise[cell].Average() / variance) : 0;
        var drawnTogether = Math.Sqrt(1 - inner);
        var sorted = net.Select(x => mean + ((x - mean) * drawnTogether)).Order().ToArray();
        var scrambles = Math.Min(Scrambles, net.Length);
        var means = net.Chunk(net.Length / scrambles).Select(c => c.Average()).ToArray();
        var error = Math.Sqrt(means.Sum(m => (m - mean) * (m - mean)) / (scrambles - 1) / scrambles);
        double P(double p) => Quantiles.Of(sorted, p);
        return new(mean, error, P(0.05), P(0.25), P(0.5), P(0.75), P(0.95), (double)sorted.Count(x => x > 0) / sorted.Length, inner);
    }

    /// <summary>For each policy.</summary>
    public ImmutableArray<Rank> Ranks(int cohort, int hour)
    {
        var net = Enumerable.Range(0, plan.Policies.Length).Select(p => Net[Cell(cohort, p, hour)]).ToArray();
        var draws = net[0].Length;
        var (best, near, regret) = (new double[net.Length], new double[net.Length], new double[net.Length]);
        for (var i = 0; i < draws; i++)
        {
            var most = net.Max(n => n[i]);
            var firsts = net.Count(n => n[i] == most);
            for (var p = 0; p < net.Length; p++)
            {
                best[p] += net[p][i] == most ? 1.0 / firsts : 0;
                near[p] += net[p][i] >= most - plan.Uncertainty.Indifference ? 1 : 0;
                regret[p] += most - net[p][i];
            }
        }

        return [.. Enumerable.Range(0, net.Length).Select(p => new Rank(best[p] / draws, near[p] / draws, regret[p] / draws))];
    }

    /// <summary>Worth of knowing each: the share of needed tourniquets first, then the drawn inputs; per 1,000 casualties.</summary>
    /// <remarks>Between no attempt and the policy that the file takes apart: more policies would only add noise to choose from.</remarks>
    public ImmutableArray<double> Worth(int cohort, int hour)
    {
        var benefits = Choice(cohort, hour);
        return [.. Enumerable.Range(0, drawn.Length + 1).Select(i => ValueOfInformation.OfOne(benefits, [.. Points.Select(p => p[i])]))];
    }

    public double WorthOfAll(int cohort, int hour) => ValueOfInformation.OfAll(Choice(cohort, hour));

    private double[][] Choice(int cohort, int hour) =>
        [Net[Cell(cohort, plan.Reference, hour)], Net[Cell(cohort, plan.Uncertainty.Policy, hour)]];

    private int Cell(int cohort, int policy, int hour) => (((cohort * plan.Policies.Length) + policy) * plan.Evacuation.Length) + hour;
}
