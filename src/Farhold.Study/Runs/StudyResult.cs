using System.Collections.Immutable;

namespace Farhold.Study.Runs;

/// <summary>All that a study found.</summary>
/// <param name="Batches">Added, up to the look that ended it.</param>
/// <param name="Limits">Of the first casualties: what the model says of how long a wound may bleed; null where shares decide.</param>
public sealed record StudyResult(
    StudyPlan Plan,
    Tally Tally,
    int Batches,
    EndedBy EndedBy,
    LimitTable? Limits,
    OuterLoop Outer,
    ImmutableArray<Decided> Decided
)
{
    /// <summary>From batches that are whole: the same from one run or from many parts.</summary>
    public static StudyResult Of(StudyPlan plan, ImmutableArray<Batch> batches, int threads, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var (tally, added, by) = StoppingRule.Add(plan, batches);
        var pool = batches.Take(StudyRun.Pool(plan)).ToArray();
        var limits = plan.Bleeding == BleedingBy.Model ? new LimitTable([.. pool.SelectMany(b => b.Limits!.Minutes.ToArray())]) : null;
        return new(
            plan,
            tally,
            added,
            by,
            limits,
            OuterLoop.Run(plan, limits, threads, cancellation),
            Sensitivity.Find(plan, limits, threads, cancellation)
        );
    }
}
