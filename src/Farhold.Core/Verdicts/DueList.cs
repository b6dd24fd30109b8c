using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>What has to be done when, from protocol and record.</summary>
public static class DueList
{
    /// <summary>How long after slackening a casualty counts as unstable whatever the signs say (a design choice).</summary>
    private static readonly Duration FirstHours = Duration.FromHours(2);

    /// <param name="shock">By the signs last seen, however old: signs that are due again do not make a casualty unstable.</param>
    public static bool IsUnstable(IReadOnlyList<LimbVerdict> limbs, IReadOnlyList<ObservedLimb> watched, Truth shock, Instant now) =>
        shock != Truth.NotMet
        || limbs.Any(l => l.Attempt is not null || EffectChecks.LastBled(l.Scene!) is { } bled && bled.Until(now).Min < FirstHours)
        || watched.Any(w => w.Bleeding == Truth.Met || w.Loosened.Until(now).Min < FirstHours);

    internal static ImmutableArray<DueTask> Of(
        CasualtyView casualty,
        IReadOnlyList<LimbVerdict> limbs,
        IReadOnlyList<ObservedLimb> watched,
        IEnumerable<PlannedTask> plan
    )
    {
        var (state, now) = (casualty.State, casualty.Now);
        var due = casualty
            .Doubts.Select(d => new DueTask(now, d.Id, null, d.Text, [], true) { IsDoubt = true })
            .Concat(limbs.SelectMany(l => AtOnce.Tightening(l, state, now)))
            .Concat(AtOnce.Elsewhere(casualty))
            .Concat(AtOnce.Airway(casualty))
            .Concat(casualty.Questions.Where(q => !q.Settled).Select(q => Ask(q, now)))
            .Concat(limbs.Select(l => EffectChecks.Next(l.Scene!, l.Attempt)).OfType<DueTask>())
            .Concat(limbs.Where(l => l.Act.Text.Length > 0).Select(l => Next(l, now)))
            .Concat(SecondLook(casualty, limbs))
            .Concat(SitingTasks.Of(limbs, casualty))
            .Concat(watched.SelectMany(w => Watch(w, state, casualty.Protocol.Watch, now)))
            .Concat(plan.Where(p => p.Applies != Truth.NotMet).Select(p => p.Due(now)));
        return [.. InOrder(due)];
    }

    /// <summary>A value that is asked back; ticked off, somebody looked again and it is right.</summary>
    private static DueTask Ask(Question question, Instant now) =>
        new(now, question.Task, null, question.Text, ["design"], false) { Leads = true, BySeeing = !question.BySaying };

    /// <summary>The next act of a limb as something due now, or when its second look may be taken.</summary>
    private static DueTask Next(LimbVerdict limb, Instant now) =>
        new(limb.Act.NotBefore ?? now, Name(TaskNames.Next, limb.Limb), limb.Limb, limb.Act.Text, limb.Act.Sources, false)
        {
            BySeeing = true,
            Leads = true,
        };

    /// <summary>So that a reminder rings when it may be taken.</summary>
    private static IEnumerable<DueTask> SecondLook(CasualtyView casualty, IReadOnlyList<LimbVerdict> limbs)
    {
        if (
            limbs.Any(l => l is { Verdict: Verdict.CheckFirst, Attempt: null })
            && ClearLooks.SecondDue(casualty) is { } at
            && at > casualty.Now
        )
            yield return new(at, TaskNames.SecondLook, null, VerdictTexts.SecondLook, ["design"], false) { BySeeing = true };
    }

    /// <summary>What must be done at once first; of what is due, checks before comfort; then by time, then by name.</summary>
    public static IEnumerable<DueTask> InOrder(IEnumerable<DueTask> due) =>
        due.OrderByDescending(d => d.AtOnce)
            .ThenBy(Rank)
            .ThenBy(d => d.At)
            .ThenBy(d => d.Group == TaskGroup.Nursing)
            .ThenBy(d => d.Task, StringComparer.Ordinal);

    private static int Rank(DueTask due) =>
        due switch
        {
            { Leads: true } => -2,
            { IsDoubt: true } or { Until: not null } => -1, // whoever watches without a break does nothing else that can wait
            { Overdue: true, Group: TaskGroup.Nursing } => 1,
            { Overdue: true } => 0,
            _ => 2,
        };

    private static IEnumerable<DueTask> Watch(ObservedLimb limb, State state, ObservationPlan plan, Instant now)
    {
        if (limb.Bleeding == Truth.Met)
            yield return AtOnce.Tighten(limb.Limb, limb.BledAgain!.Value.Earliest, VerdictTexts.BleedingAgainTighten);
        var next = LimbObservation.NextLook(limb, plan, state, now, out var until);
        yield return next is { } at
            ? new(at, Name("watch", limb.Limb), limb.Limb, plan.Text, plan.Sources, at < now)
            {
                BySeeing = true,
                Leads = LimbObservation.IsUnseenAfterMove(limb, plan, state, now),
            }
            : new(now, Name("watch", limb.Limb), limb.Limb, VerdictTexts.WatchUnbroken, plan.Sources, false)
            {
                Until = until,
                BySeeing = true,
            };
    }

    internal static string Name(string task, Limb limb) => $"{task}.{Wire.Word(limb)}";
}
