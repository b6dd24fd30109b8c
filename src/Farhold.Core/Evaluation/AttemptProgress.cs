using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>How far one step of an attempt has come.</summary>
/// <param name="Began">When what precedes it was done.</param>
/// <param name="NotBefore">Earliest time at which it may count as done: begun at its latest, plus its minimum.</param>
/// <param name="Done">When it was done, or null.</param>
public sealed record StepProgress(AttemptStep Step, Happened? Began, Instant? NotBefore, Happened? Done)
{
    /// <summary>What comes before it here and now.</summary>
    public ImmutableArray<string> Before { get; init; } = [];

    /// <summary>Name of the task that has to be ticked off before it; null where there is none, or it is done.</summary>
    public string? Gate { get; init; }

    /// <summary>Pressure is held twice as long as usual.</summary>
    public bool Twice { get; init; }
}

/// <summary>An attempt under way, step by step, told from the record alone, so that it resumes wherever it was left.</summary>
public sealed record AttemptProgress(Attempt Attempt, ImmutableArray<StepProgress> Steps)
{
    /// <summary>The step to be done now; null when all are.</summary>
    public StepProgress? Current => Steps.FirstOrDefault(s => s.Done is null);

    internal static AttemptProgress? Of(Scene scene)
    {
        if (scene.Attempts is not [.., { Result: AttemptResult.UnderWay } attempt])
            return null;
        var protocol = scene.Casualty.Protocol;
        var asking = new CriterionEvaluator(scene.Casualty.CareFreshness, scene, scene.Casualty.Evaluator);
        var steps = ImmutableArray.CreateBuilder<StepProgress>();
        Happened? began = attempt.Started;
        var with = "";
        foreach (var step in protocol.Steps)
        {
            var twice = step.Twice is { } when && asking.Of(when).State == Truth.Met;
            var times = twice ? 2 : 1;
            var entry = began is { } since ? Doing(step, attempt, scene, since, Minimum(step, with) * times) : null;
            if (entry?.What is Payload.WoundPacked packed)
                with = Wire.Word(packed.Material);
            steps.Add(
                new(step, began, began?.Latest + (Minimum(step, with) * times), entry?.When)
                {
                    Before = [.. step.Before.Where(b => b.When is null || asking.Of(b.When).State == Truth.Met).Select(b => b.Text)],
                    Gate = entry is null ? Gate(step, attempt, scene, asking) : null,
                    Twice = twice,
                }
            );
            began = entry?.When;
        }

        return new(attempt, steps.ToImmutable());
    }

    /// <summary>A gate is open once its task was ticked off, since an hour before the attempt (design).</summary>
    private static string? Gate(AttemptStep step, Attempt attempt, Scene scene, CriterionEvaluator asking)
    {
        if (
            step.Gate is not { } id
            || scene.Clock is not { } clock
            || scene.Casualty.Protocol.Tasks.FirstOrDefault(t => t.Id == id) is not { } task
            || (task.Condition is { } when && asking.Of(when).State == Truth.NotMet)
        )
            return null;
        var name = $"{id}.{Wire.Word(clock.Limb)}";
        var from = attempt.Started.Earliest - Duration.FromHours(1);
        return scene
            .State.Of(Kind.TaskDone)
            .Any(t => t.When.Latest <= scene.Now && t.When.Earliest >= from && t.As<Payload.TaskDone>().Task == name)
            ? null
            : name;
    }

    /// <summary>The least time a step takes, by what the wound was packed with.</summary>
    public static Duration Minimum(AttemptStep step, string with) =>
        step.Minimum.TryGetValue(with, out var known) ? known
        : step.Minimum.IsEmpty ? Duration.Zero
        : step.Minimum.Values.Max();

    /// <summary>The entry that completes a step, not before the step began.</summary>
    private static Dated? Doing(AttemptStep step, Attempt attempt, Scene scene, Happened since, Duration minimum)
    {
        IEnumerable<Dated> After(Kind kind) =>
            scene.State.Of(kind).Where(d => d.When.Latest >= since.Earliest && d.When.Earliest <= scene.Now);
        return step.Id switch
        {
            StepId.Pack => After(Kind.WoundPacked).LastOrDefault(d => d.As<Payload.WoundPacked>().Wound == attempt.Wound),
            StepId.Hold => Held(After(Kind.PressureHeld), attempt.Wound, minimum),
            StepId.Dress => After(Kind.DressingApplied)
                .LastOrDefault(d => d.As<Payload.DressingApplied>() is { Dressing: DressingKind.Pressure } p && p.Wound == attempt.Wound),
            // Blood flows only once every tourniquet on the limb is loose: then the last that was let out ends the step.
            StepId.Slacken when scene.Clock is { Tight: Truth.NotMet } clock => After(Kind.TourniquetSlackened)
                .LastOrDefault(d =>
                    d.As<Payload.TourniquetSlackened>().Tourniquet is var t && (t == attempt.Tourniquet || clock.Tourniquets.Contains(t))
                ),
            StepId.Slacken => null,
            StepId.Watch => null,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    /// <summary>The entry with which the minutes held reach the minimum.</summary>
    private static Dated? Held(IEnumerable<Dated> entries, string wound, Duration minimum)
    {
        var held = Duration.Zero;
        foreach (var entry in entries)
            if (entry.As<Payload.PressureHeld>() is var p && p.Wound == wound && (held += Duration.FromMinutes(p.Minutes)) >= minimum)
                return entry;
        return null;
    }
}
