using System.Collections.Immutable;

namespace Farhold.Study.Runs;

/// <summary>One batch of casualties under every policy.</summary>
/// <param name="Number">From 0.</param>
/// <param name="Limits">Where the casualty model decides.</param>
public sealed record Batch(int Number, Tally Tally, LimitTable? Limits)
{
    /// <summary>The same whatever the number of threads, and whatever was run before.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static Batch Run(StudyPlan plan, int number, int threads, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var first = (long)number * plan.Run.Batch;
        var limits = plan.Bleeding == BleedingBy.Model ? new BleedingLimits(plan).Find(first, plan.Run.Batch, threads, cancellation) : null;
        return new(number, Count(plan, first, limits), limits);
    }

    private static Tally Count(StudyPlan plan, long first, LimitTable? limits)
    {
        var (tally, draws) = (new Tally(plan) { Casualties = plan.Run.Batch }, new StudyDraws(plan.Seed));
        var values = plan.Cohorts.Select(c => InputValues.Central(plan, c)).ToImmutableArray();
        var references = new CareOutcome[plan.Evacuation.Length];
        for (var i = 0; i < plan.Run.Batch; i++)
        {
            var luck = new Luck(draws.Casualty(first + i));
            for (var cohort = 0; cohort < values.Length; cohort++)
            {
                var v = values[cohort];
                var needed = luck.Needed < v.Needed;
                var reference = Follow.Of(plan.Policies[plan.Reference], v, luck, needed, limits, i);
                for (var hour = 0; hour < references.Length; hour++)
                    references[hour] = Follow.At(plan, plan.Reference, hour, reference, v, luck, needed);
                for (var policy = 0; policy < plan.Policies.Length; policy++)
                {
                    var course = Follow.Of(plan.Policies[policy], v, luck, needed, limits, i);
                    for (var hour = 0; hour < references.Length; hour++)
                        tally.Add(
                            tally.Cell(cohort, policy, hour),
                            Follow.At(plan, policy, hour, course, v, luck, needed),
                            references[hour],
                            course,
                            plan.Policies[policy].AttemptH < plan.Evacuation[hour],
                            plan.Evacuation[hour],
                            plan.Weights
                        );
                }
            }
        }

        return tally;
    }
}
