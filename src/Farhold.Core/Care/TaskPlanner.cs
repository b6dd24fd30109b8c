using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>Finds out of one task whether it has to be done, and when next.</summary>
/// <param name="drugs">Drugs held against the record, for tasks that are about one.</param>
internal sealed class TaskPlanner(CareTask task, Scene scene, CriterionEvaluator evaluator, PromptedDrugs drugs)
{
    private readonly string name = scene.Clock is { } clock ? $"{task.Id}.{Wire.Word(clock.Limb)}" : task.Id;

    /// <summary>Null where nothing is due of it now or later.</summary>
    public PlannedTask? Of(bool unstable, Rhythm rhythm)
    {
        var start = Start();
        if (Of(start, unstable, rhythm) is not { } planned)
            return null;
        if (task.AfterMove is not null && Moves.Last(scene.State, scene.Now) is { } moved && moved > Fresh(start) && !(LastDone() > moved))
            return planned with { At = Instant.Min(planned.At, moved), Waits = false, AfterMove = true };
        return planned with { Later = task.From > Duration.Zero && scene.Now < start + task.From };
    }

    private PlannedTask? Of(Instant start, bool unstable, Rhythm rhythm)
    {
        var last = LastDone() is { } counted && (task.Scope != TaskScope.Loosened || counted >= start) ? counted : (Instant?)null;
        if (task.Once is { } once)
            return Once([start + once, .. task.Again.Select(a => start + a)], start, last) is { } asked
                ? Planned(asked, null, unstable)
                : null;
        if (Interval(task, unstable) is not { } every)
            return null;
        if (last is not { } done)
            return Planned(start + task.From, every, unstable) is { } first ? first with { First = true } : null;
        var (at, waits) = Next(task, done, unstable, rhythm);
        return Planned(at, every, unstable, waits);
    }

    /// <summary>
    /// The last of its times that has come, or the first that has not, unless it was answered since the time before; then the one
    /// after it. Null where none is left.
    /// </summary>
    private Instant? Once(Instant[] times, Instant start, Instant? last)
    {
        for (var i = Math.Max(0, times.Count(t => t <= scene.Now) - 1); i < times.Length; i++)
            if (
                !(
                    last
                    >= (
                        i > 0 ? times[i - 1]
                        : scene.Clock is null ? Instant.MinValue
                        : start
                    )
                )
            )
                return times[i];
        return null;
    }

    /// <summary>When a repeating task comes again after it was done.</summary>
    public static (Instant At, bool Waits) Next(CareTask task, Instant done, bool unstable, Rhythm rhythm)
    {
        var every = Interval(task, unstable)!.Value;
        var due = done + every;
        return unstable || task.Night is not { } longest || !rhythm.IsNight(due)
            ? (due, false)
            : (rhythm.LastUp(done + (every / 2), done + longest) ?? done + longest, true);
    }

    private static Duration? Interval(CareTask task, bool unstable) => unstable ? task.Unstable ?? task.Every : task.Every;

    private PlannedTask? Planned(Instant at, Duration? interval, bool unstable, bool waits = false)
    {
        var trace = task.Condition is { } condition ? evaluator.Of(condition) : null;
        var applies = task.OnlyStable && unstable ? Truth.NotMet : trace?.State ?? Truth.Met;
        var over = task.Unless is { } unless ? evaluator.Of(unless) : null;
        if ((over is not null && applies == Truth.NotMet) || (applies != Truth.NotMet && drugs.RefusesAll(task)))
            return null;
        applies = applies.And(over?.State.Not() ?? Truth.Met);
        Trace[] leaves = [.. (trace?.Leaves ?? []).Concat(over?.Leaves ?? [])];
        return new(
            ChildFigures.Worded(task, scene.Casualty.Person, interval),
            scene.Clock?.Limb,
            name,
            at,
            applies,
            applies == Truth.Unknown
                ? [.. leaves.Where(l => l.State == Truth.Unknown).Select(l => l.Needs).OfType<Input>().Distinct()]
                : [],
            leaves.Length == 0 ? [] : [.. leaves.SelectMany(l => l.Used).Distinct()],
            interval,
            waits
        )
        {
            Ordered = drugs.Ordered(task),
        };
    }

    private Instant Start() =>
        scene.Clock is { } clock
            ? (task.Scope == TaskScope.Loosened ? clock.Loosened()!.Value : clock.FirstTightened).Earliest
            : scene
                .State.Of(Kind.CasualtyOpened)
                .Concat(task.Once is null ? [] : WoundFacts.Injuries(scene.State, scene.Now))
                .Select(o => (Instant?)o.When.Earliest)
                .Min()
                ?? scene.State.All.Select(e => (Instant?)e.When.Earliest).Min()
                ?? scene.Now;

    /// <summary>From when a move counts: for a tied limb since it was last tightened, which asks for looks of its own.</summary>
    private Instant Fresh(Instant start) =>
        scene.Clock is { Limb: var limb } && task.Scope == TaskScope.Limb
            ? scene
                .State.Of(Kind.TourniquetTightened)
                .Where(t => t.When.Earliest <= scene.Now && t.As<Payload.TourniquetTightened>().Limb == limb)
                .Select(t => t.When.Earliest)
                .Append(start)
                .Max()
            : start;

    /// <summary>
    /// When it was last done: a task ticked off, an entry of a kind that amounts to doing it, or a value that was looked at.
    /// </summary>
    private Instant? LastDone()
    {
        var wounds = scene.Clock is { } clock ? LimbWounds.Treated(clock.Limb, scene.State, scene.Now) : WoundNames.None;
        Instant? last = null;
        Latest(scene.State.Of(Kind.TaskDone), d => d.As<Payload.TaskDone>().Task == name);
        foreach (var kind in task.DoneBy)
            Latest(
                kind == Kind.SignsTaken && scene.Clock is { Limb: var limb }
                    ? scene.State.WithSign(SignRead.DistalPulse(limb))
                    : scene.State.Of(kind),
                d => drugs.Counts(task, d.What) && (scene.Clock is null || About(d.What, scene.Clock, wounds))
            );
        foreach (var input in task.Seen)
        foreach (var reading in InputReadings.For(input, scene, Duration.MaxValue))
            if (!reading.Lasting && reading.When.Latest <= scene.Now && !(reading.When.Earliest <= last))
                last = reading.When.Earliest;
        return last;

        // From the end: lists are sorted by latest time, and none that is over before the best found begins can better it.
        void Latest(ImmutableArray<Dated> entries, Func<Dated, bool> counts)
        {
            for (var i = entries.Length - 1; i >= 0 && !(entries[i].When.Latest < last); i--)
                if (entries[i].When is var when && when.Latest <= scene.Now && !(when.Earliest <= last) && counts(entries[i]))
                    last = when.Earliest;
        }
    }

    private static bool About(Payload payload, LimbClock clock, WoundNames wounds) =>
        payload switch
        {
            Payload.BleedingChecked b => wounds.Contains(b.Wound),
            Payload.AttemptStarted a => clock.Tourniquets.Contains(a.Tourniquet) || wounds.Contains(a.Wound),
            Payload.TourniquetTightened t => t.Limb == clock.Limb,
            _ => true,
        };
}
