using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>What has to be done when, from protocol and record.</summary>
public static class DueList
{
    /// <summary>How long after slackening a casualty counts as unstable whatever the signs say (a design choice).</summary>
    private static readonly Duration FirstHours = Duration.FromHours(2);

    /// <param name="shock">By the signs last seen, however old: signs that are due again do not make a casualty unstable.</param>
    public static bool IsUnstable(IReadOnlyList<LimbVerdict> limbs, IReadOnlyList<WatchedLimb> watched, Truth shock, Instant now) =>
        shock != Truth.NotMet
        || limbs.Any(l => l.Attempt is not null)
        || watched.Any(w => w.Loosened.Until(now).Min < FirstHours);

    public static ImmutableArray<DueTask> Of(
        State state,
        WatchPlan watch,
        IReadOnlyList<LimbVerdict> limbs,
        IReadOnlyList<WatchedLimb> watched,
        IEnumerable<PlannedTask> plan,
        ImmutableArray<Doubt> doubts,
        Instant now)
    {
        var due = doubts.Select(d => new DueTask(now, d.Id, null, d.Text, [], true))
            .Concat(limbs.SelectMany(l => Tightening(l, state, now)))
            .Concat(watched.SelectMany(w => Watch(w, state, watch, now)))
            .Concat(plan.Where(p => p.Applies != Truth.NotMet).Select(p => p.Due(now)));
        return [.. InOrder(due)];
    }

    /// <summary>What must be done at once first; of what is due, checks before comfort; then by time, then by name.</summary>
    public static IEnumerable<DueTask> InOrder(IEnumerable<DueTask> due) =>
        due.OrderByDescending(d => d.AtOnce).ThenBy(Rank).ThenBy(d => d.At)
            .ThenBy(d => d.Group == TaskGroup.Nursing).ThenBy(d => d.Task, StringComparer.Ordinal);

    private static int Rank(DueTask due) => due switch
    {
        { Until: not null } => 0,
        { Overdue: true, Group: TaskGroup.Nursing } => 1,
        { Overdue: true } => 0,
        _ => 2,
    };

    /// <summary>A tight tourniquet that does not stop the bleeding, or leaves a pulse beyond it, is not tight enough.</summary>
    private static IEnumerable<DueTask> Tightening(LimbVerdict limb, State state, Instant now)
    {
        var tightened = state.Of(Kind.TourniquetTightened)
            .Last(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Limb == limb.Limb).When;
        var wounds = LimbWounds.Treated(limb.Limb, state, now);
        var bled = state.Of(Kind.BleedingChecked).LastOrDefault(b =>
            b.When.Earliest <= now && wounds.Contains(b.As<Payload.BleedingChecked>().Wound));
        if (bled?.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active && !bled.When.SurelyBefore(tightened))
            yield return Tighten(limb.Limb, bled.When.Earliest, "still bleeding: tighten further, or add a second tourniquet beside the first");
        var pulse = state.Telling(SignRead.PulseBeyond(limb.Limb)).LastOrDefault(s => s.When.Earliest <= now);
        if (pulse?.As<Payload.SignsTaken>().DistalPulse![limb.Limb] == DistalPulse.Present && !pulse.When.SurelyBefore(tightened))
            yield return Tighten(limb.Limb, pulse.When.Earliest, "a pulse beyond the tourniquet: tighten until it stops, or add a second beside the first");
    }

    private static IEnumerable<DueTask> Watch(WatchedLimb limb, State state, WatchPlan plan, Instant now)
    {
        if (limb.Bleeding == Truth.Met)
            yield return Tighten(limb.Limb, limb.BledAgain!.Value.Earliest, "bleeding again: tighten at once until bleeding and the pulse beyond it stop");
        var next = Watching.NextLook(limb, plan, state, now, out var until);
        yield return next is { } at
            ? new(at, Name("watch", limb.Limb), limb.Limb, plan.Text, plan.Sources, at < now) { BySeeing = true }
            : new(now, Name("watch", limb.Limb), limb.Limb, "watch the wound without a break", plan.Sources, false) { Until = until, BySeeing = true };
    }

    private static DueTask Tighten(Limb limb, Instant at, string text) =>
        new(at, Name("tighten", limb), limb, text, ["common"], true) { AtOnce = true, BySeeing = true };

    private static string Name(string task, Limb limb) => $"{task}.{Wire.Word(limb)}";
}
