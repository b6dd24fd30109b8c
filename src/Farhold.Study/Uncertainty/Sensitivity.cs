using System.Collections.Immutable;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Uncertainty;

/// <summary>Net benefit, per 1,000, with one input at its 5 % and its 95 % end and all others at their middle.</summary>
public readonly record struct Swing(double Low, double High)
{
    public double Size => Math.Abs(High - Low);
}

/// <summary>Which figures decide over the net benefit of one policy, for one cohort and hour of evacuation.</summary>
public sealed record Decided(
    int Cohort,
    double Hour,
    double Middle,
    ImmutableArray<Swing> Swings,
    ImmutableArray<Effect> Effects,
    ImmutableArray<SobolIndex> Indices
);

/// <summary>Takes the net benefit apart, on the same casualties with the same luck at every point.</summary>
public static class Sensitivity
{
    /// <returns>One for each cohort and hour that the plan names; the share of needed tourniquets is the first input of each.</returns>
    public static ImmutableArray<Decided> Find(StudyPlan plan, LimitTable? limits, int threads, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (drawn, size) = (plan.Figures.Drawn, plan.Uncertainty);
        var inputs = drawn.Length + 1;
        var (draws, rng) = (new StudyDraws(plan.Seed), new Rng(plan.Seed).Split(StudyDraws.Key("sensitivity")));
        var luck = Enumerable.Range(0, size.Casualties).Select(i => new Luck(draws.Casualty(i))).ToArray();
        var hours = size.At.Select(h => plan.Evacuation.IndexOf(h)).ToArray();
        double[] Net(double[] point) =>
            [.. plan.Cohorts.SelectMany(c => NetAt(plan, InputValues.AtPoint(plan, c, drawn, point), hours, luck, limits))];

        var middle = Enumerable.Repeat(0.5, inputs).ToArray();
        var atMiddle = Net(middle);
        var swings = new (double[] Low, double[] High)[inputs];
        for (var i = 0; i < inputs; i++)
            swings[i] = (Net(With(middle, i, 0.05)), Net(With(middle, i, 0.95)));
        var effects = size.Trajectories > 1 ? Morris.Screen(Net, inputs, size.Trajectories, rng.Split(1), threads, cancellation) : [];
        var indices = size.Base > 0 ? SobolIndices.Find(Net, inputs, size.Base, rng.Split(2), threads, cancellation) : [];
        return
        [
            .. Enumerable
                .Range(0, plan.Cohorts.Length * hours.Length)
                .Select(o => new Decided(
                    o / hours.Length,
                    size.At[o % hours.Length],
                    atMiddle[o],
                    [.. swings.Select(s => new Swing(s.Low[o], s.High[o]))],
                    effects.IsEmpty ? [] : effects[o],
                    indices.IsEmpty ? [] : indices[o]
                )),
        ];
    }

    private static double[] With(double[] point, int place, double value)
    {
        var other = (double[])point.Clone();
        other[place] = value;
        return other;
    }

    private static IEnumerable<double> NetAt(StudyPlan plan, InputValues v, int[] hours, Luck[] luck, LimitTable? limits)
    {
        var net = new double[hours.Length];
        for (var i = 0; i < luck.Length; i++)
        {
            var needed = luck[i].Needed < v.Needed;
            var reference = Follow.Of(plan.Policies[plan.Reference], v, luck[i], needed, limits, i);
            var course = Follow.Of(plan.Policies[plan.Uncertainty.Policy], v, luck[i], needed, limits, i);
            for (var h = 0; h < hours.Length; h++)
                net[h] +=
                    Follow.At(plan, plan.Reference, hours[h], reference, v, luck[i], needed).Harm(plan.Weights)
                    - Follow.At(plan, plan.Uncertainty.Policy, hours[h], course, v, luck[i], needed).Harm(plan.Weights);
        }

        return net.Select(x => 1000 * x / luck.Length);
    }
}
