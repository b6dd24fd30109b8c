using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>What has to be done when, from protocol and record.</summary>
public static class DueList
{
    /// <summary>How long after slackening a casualty counts as unstable whatever the signs say (a design choice).</summary>
    private static readonly Duration FirstHours = Duration.FromHours(2);

    /// <param name="shock">By the signs last seen, however old: signs that are due again do not make a casualty unstable.</param>
    public static ImmutableArray<DueTask> Of(
        State state,
        Protocol protocol,
        IReadOnlyList<LimbVerdict> limbs,
        IReadOnlyList<WatchedLimb> watched,
        Truth shock,
        ImmutableArray<Doubt> doubts,
        Instant now)
    {
        if (state.Of(Kind.CareEnded).Any(e => e.When.Latest <= now))
            return [];
        var unstable = shock != Truth.NotMet
            || limbs.Any(l => l.Attempt is not null)
            || watched.Any(w => w.Loosened.Until(now).Min < FirstHours);
        var due = doubts.Select(d => new DueTask(now, d.Id, null, d.Text, [], true))
            .Concat(limbs.SelectMany(l => Tightening(l, state, now)))
            .Concat(watched.SelectMany(w => Watch(w, state, protocol.Watch, now)))
            .Concat(protocol.Tasks.SelectMany(t => Repeating(t, state, limbs, unstable, now)));
        return [.. InOrder(due)];
    }

    /// <summary>What must be done at once first, then by time, then by name.</summary>
    public static IEnumerable<DueTask> InOrder(IEnumerable<DueTask> due) =>
        due.OrderByDescending(d => d.AtOnce).ThenBy(d => d.At).ThenBy(d => d.Task, StringComparer.Ordinal);

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
        var pulse = state.Of(Kind.SignsTaken).LastOrDefault(s =>
            s.When.Earliest <= now && s.As<Payload.SignsTaken>().DistalPulse?.ContainsKey(limb.Limb) == true);
        if (pulse?.As<Payload.SignsTaken>().DistalPulse![limb.Limb] == DistalPulse.Present && !pulse.When.SurelyBefore(tightened))
            yield return Tighten(limb.Limb, pulse.When.Earliest, "a pulse beyond the tourniquet: tighten until it stops, or add a second beside the first");
    }

    private static IEnumerable<DueTask> Watch(WatchedLimb limb, State state, WatchPlan plan, Instant now)
    {
        if (limb.Bleeding == Truth.Met)
            yield return Tighten(limb.Limb, limb.BledAgain!.Value.Earliest, "bleeding again: tighten at once until bleeding and the pulse beyond it stop");
        var next = Watching.NextLook(limb, plan, state, now, out var until);
        yield return next is { } at
            ? new(at, Name("watch", limb.Limb), limb.Limb, plan.Text, plan.Sources, at < now)
            : new(now, Name("watch", limb.Limb), limb.Limb, "watch the wound without a break", plan.Sources, false) { Until = until };
    }

    private static IEnumerable<DueTask> Repeating(
        CareTask task, State state, IReadOnlyList<LimbVerdict> limbs, bool unstable, Instant now)
    {
        if (task.Scope == TaskScope.Limb)
            return limbs.Select(l => Of(task, state, l.Clock, unstable, now)).OfType<DueTask>();
        return Of(task, state, null, unstable, now) is { } one ? [one] : [];
    }

    private static DueTask? Of(CareTask task, State state, LimbClock? clock, bool unstable, Instant now)
    {
        var name = clock is null ? task.Id : Name(task.Id, clock.Limb);
        var last = LastDone(task, name, state, clock, now);
        if (task.Once is { } once)
        {
            var at = clock!.FirstTightened.Earliest + once;
            return last is { } done && done >= at - once ? null : Due(at);
        }

        var interval = unstable ? task.Unstable ?? task.Every : task.Every;
        return interval is { } every ? Due(last is { } l ? l + every : Start(state, clock, now)) : null;

        DueTask Due(Instant at) => new(at, name, clock?.Limb, task.Text, task.Sources, at < now);
    }

    /// <summary>When it was last done: a task ticked off, or an entry of a kind that amounts to doing it.</summary>
    private static Instant? LastDone(CareTask task, string name, State state, LimbClock? clock, Instant now)
    {
        var wounds = clock is null ? [] : LimbWounds.Treated(clock.Limb, state, now);
        Instant? last = null;
        Latest(state.Of(Kind.TaskDone), d => d.As<Payload.TaskDone>().Task == name);
        foreach (var kind in task.DoneBy)
            Latest(state.Of(kind), d => clock is null || About(d.What, clock, wounds));
        return last;

        // From the end: lists are sorted by latest time, and none that is over before the best found begins can better it.
        void Latest(ImmutableArray<Dated> entries, Func<Dated, bool> counts)
        {
            for (var i = entries.Length - 1; i >= 0 && !(entries[i].When.Latest < last); i--)
                if (entries[i].When is var when && when.Latest <= now && !(when.Earliest <= last) && counts(entries[i]))
                    last = when.Earliest;
        }
    }

    private static bool About(Payload payload, LimbClock clock, ImmutableArray<string> wounds) => payload switch
    {
        Payload.BleedingChecked b => wounds.Contains(b.Wound),
        Payload.AttemptStarted a => clock.Tourniquets.Contains(a.Tourniquet) || wounds.Contains(a.Wound),
        Payload.TourniquetTightened t => t.Limb == clock.Limb,
        Payload.SignsTaken s => s.DistalPulse?.ContainsKey(clock.Limb) == true,
        _ => true,
    };

    private static Instant Start(State state, LimbClock? clock, Instant now) =>
        clock?.FirstTightened.Earliest
        ?? state.Of(Kind.CasualtyOpened).Select(o => (Instant?)o.When.Earliest).Min()
        ?? now;

    private static DueTask Tighten(Limb limb, Instant at, string text) =>
        new(at, Name("tighten", limb), limb, text, ["common"], true) { AtOnce = true };

    private static string Name(string task, Limb limb) => $"{task}.{Wire.Word(limb)}";
}
