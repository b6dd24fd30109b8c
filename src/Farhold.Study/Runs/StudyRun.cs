using System.Collections.Immutable;

namespace Farhold.Study.Runs;

/// <summary>One of several parts of a run; the whole is 1 of 1.</summary>
public readonly record struct RunPart(int Number, int Of)
{
    public static readonly RunPart Whole = new(1, 1);

    /// <summary>Every so-manieth batch, so that parts take about the same time.</summary>
    public IEnumerable<int> Batches(RunSize run)
    {
        for (var batch = Number - 1; batch < run.Batches; batch += Of)
            yield return batch;
    }
}

/// <summary>How far a run is.</summary>
public readonly record struct RunProgress(int Done, int Of);

/// <summary>Runs the batches of a part, keeping each as soon as it is done.</summary>
public static class StudyRun
{
    /// <param name="had">Batches done before, by their number.</param>
    /// <param name="keep">Given each new batch, in order.</param>
    /// <returns>All of the part; of a whole run, up to the one at which the rule is met.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled; what was kept stands.</exception>
    public static ImmutableArray<Batch> Run(
        StudyPlan plan,
        RunPart part,
        int threads,
        IReadOnlyDictionary<int, Batch> had,
        Action<Batch> keep,
        Action<RunProgress> progress,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        var batches = ImmutableArray.CreateBuilder<Batch>();
        var (tally, numbers) = (new Tally(plan), part.Batches(plan.Run).ToArray());
        foreach (var number in numbers)
        {
            progress(new(batches.Count, numbers.Length));
            if (!had.TryGetValue(number, out var batch))
            {
                batch = Batch.Run(plan, number, threads, cancellation);
                keep(batch);
            }

            // Only the first ones are drawn from again; the others' tables would fill the memory.
            batches.Add(batch with { Limits = number < Pool(plan) ? batch.Limits : null });
            tally.Add(batch.Tally);
            if (part == RunPart.Whole && batches.Count >= Pool(plan) && StoppingRule.IsMet(plan, tally))
                break;
        }

        progress(new(numbers.Length, numbers.Length));
        return batches.ToImmutable();
    }

    /// <summary>How many batches the outer loop draws its casualties from.</summary>
    public static int Pool(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return (plan.Uncertainty.Casualties + plan.Run.Batch - 1) / plan.Run.Batch;
    }
}
