using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>A task of the protocol as it stands for one casualty now.</summary>
/// <param name="Limb">Null where it is about the casualty as a whole.</param>
/// <param name="Applies">Whether it has to be done; unknown: <paramref name="LookFirst"/> says what tells.</param>
/// <param name="Interval">How often now; null for what is done once.</param>
/// <param name="Waits">Put off to a change of watch, or brought forward to one, so that people sleep.</param>
public sealed record PlannedTask(
    CareTask Task,
    Limb? Limb,
    string Name,
    Instant At,
    Truth Applies,
    ImmutableArray<Input> LookFirst,
    ImmutableArray<Used> Used,
    Duration? Interval,
    bool Waits
)
{
    /// <summary>Not asked for yet: the record has not gone on long enough.</summary>
    public bool Later { get; init; }

    /// <summary>What a signed local protocol orders, in place of the task's words; null without an order.</summary>
    public string? Ordered { get; init; }

    /// <summary>Repeats, and was never done yet.</summary>
    public bool First { get; init; }

    /// <summary>Due because of a move that nobody has looked after yet; of a limb it leads.</summary>
    public bool AfterMove { get; init; }

    public DueTask Due(Instant now) =>
        new(At, Name, Limb, Text, Task.Sources, At < now)
        {
            Reason = Task.Reason,
            Group = Task.Group,
            People = Task.People,
            LookFirst = LookFirst,
            Every = Interval,
            Waits = Waits,
            First = First,
            ByDrugList = Ordered is not null,
            Leads = AfterMove && Limb is not null && Applies == Truth.Met,
        };

    private string Words => AfterMove ? Task.AfterMove! : Ordered ?? Task.Text;

    private string Text =>
        Applies == Truth.Unknown
            ? CareTexts
                .FirstThen(string.Join("; ", LookFirst.Select(i => i.Look).Where(l => l.Length > 0).Take(2)), Words)
                .Replace("?. ", "? ", StringComparison.Ordinal)
                .Replace("?; ", "? ", StringComparison.Ordinal)
            : Words;
}

/// <summary>Something that must not be done now, and what to do instead.</summary>
public sealed record WithheldTask(string Name, Limb? Limb, string Text, ImmutableArray<Used> Used, ImmutableArray<string> Sources);

/// <summary>The repeating tasks of prolonged care, fitted to how the casualty is and to day and night.</summary>
/// <remarks>
/// A task comes due one interval after it was last done: the shorter one while the casualty is unstable. A stable casualty's
/// comfort is moved at night to the latest change of watch between half its interval and the longest it may wait. Nothing is
/// ever due later than the source of the task allows, day or night.
/// </remarks>
public static class CarePlan
{
    /// <returns>What is to be asked for later too, marked so.</returns>
    /// <param name="unstable">Shock suspected or unknown, an attempt under way, or a tourniquet loosened only hours ago.</param>
    internal static ImmutableArray<PlannedTask> Of(CasualtyView view, IEnumerable<LimbClock> limbs, bool unstable, Rhythm rhythm)
    {
        var protocol = view.Protocol;
        var whole = new Scene(view, null, []);
        var casualty = new CriterionEvaluator(view.CareFreshness, whole);
        var onLimbs = limbs
            .Select(c => (Clock: c, Scene: new Scene(view, c, view.Attempts(c.Limb))))
            .Select(l => (l.Clock, l.Scene, Evaluator: new CriterionEvaluator(view.CareFreshness, l.Scene, casualty)))
            .ToArray();
        var drugs = new PromptedDrugs(view);
        var planned = ImmutableArray.CreateBuilder<PlannedTask>();
        foreach (var task in protocol.Tasks)
        {
            if (task.Scope == TaskScope.Casualty)
                Add(new(task, whole, casualty, drugs));
            foreach (var (clock, scene, evaluator) in onLimbs)
                if (task.Scope == (clock.Tight == Truth.NotMet ? TaskScope.Loosened : TaskScope.Limb))
                    Add(new(task, scene, evaluator, drugs));
        }

        var replaced = planned.Where(p => p is { Applies: Truth.Met, Later: false }).Select(p => p.Task.Id).ToHashSet();
        return [.. planned.Where(p => p.Applies == Truth.NotMet || p.Task.ReplacedBy is not { } by || !replaced.Contains(by))];

        void Add(TaskPlanner planning)
        {
            if (planning.Of(unstable, rhythm) is { } one)
                planned.Add(one);
        }
    }

    /// <summary>What must not be done now although it is in the plan.</summary>
    internal static IEnumerable<WithheldTask> Withheld(IEnumerable<PlannedTask> plan) =>
        plan.Where(p => p is { Applies: Truth.NotMet, Later: false, Task.Instead: not null })
            .Select(p => new WithheldTask(p.Name, p.Limb, p.Task.Instead!, p.Used, p.Task.Sources));
}
