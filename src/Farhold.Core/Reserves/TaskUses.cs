using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>What the coming tasks of the care plan take of an item.</summary>
internal static class TaskUses
{
    /// <summary>
    /// Pieces an hour, at the intervals the plan has now. The most counts every task that may have to be done; the least those
    /// that are asked for already and have to be done for certain, as seldom as a night may stretch them. Null where no task uses any.
    /// </summary>
    /// <remarks>Of a task and the one that may take its place only one is done: the higher counts, not both.</remarks>
    public static Between? PerHour(KitItem item, ImmutableArray<PlannedTask> plan)
    {
        var rates = plan.Where(p => p.Applies != Truth.NotMet && Each(item, p.Task) is not null)
            .GroupBy(p => p.Task.Id, (_, limbs) => limbs.ToArray())
            .Select(limbs => (limbs[0].Task, Rate: Together(limbs[0].Task, [.. limbs.Select(p => Of(p, Each(item, p.Task)!.Value))])))
            .ToDictionary(t => t.Task.Id);
        if (rates.Count == 0)
            return null;
        return rates
            .Values.GroupBy(t => t.Task.ReplacedBy is { } by && rates.ContainsKey(by) ? by : t.Task.Id)
            .Select(g => new Between(g.Min(t => t.Rate.Low), g.Max(t => t.Rate.High)))
            .Aggregate(Between.Add);
    }

    /// <summary>Of all limbs the task is about: one drink and one measuring of urine does for every limb.</summary>
    private static Between Together(CareTask task, Between[] limbs) =>
        task.DoneBy.Any(k => k is Kind.UrineMeasured or Kind.FluidGiven)
            ? new(limbs.Max(l => l.Low), limbs.Max(l => l.High))
            : limbs.Aggregate(Between.Add);

    private static Between? Each(KitItem item, CareTask task) =>
        item.Uses.FirstOrDefault(u => u.Kind == Kind.TaskDone && u.Of == task.Id)?.Each;

    private static Between Of(PlannedTask planned, Between each) =>
        planned.Interval is not { } every
            ? default
            : new(
                planned is { Applies: Truth.Met, Later: false }
                    ? each.Low / Duration.Max(every, planned.Task.Night ?? every).TotalHours
                    : 0,
                each.High / every.TotalHours
            );
}
