using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>How far one step of an attempt has come.</summary>
/// <param name="Began">When what precedes it was done.</param>
/// <param name="NotBefore">Earliest time at which it may count as done: begun at its latest, plus its minimum.</param>
/// <param name="Done">When it was done, or null.</param>
public sealed record StepProgress(AttemptStep Step, Happened? Began, Instant? NotBefore, Happened? Done);

/// <summary>An attempt under way, step by step, told from the record alone, so that it resumes wherever it was left.</summary>
public sealed record AttemptProgress(Attempt Attempt, ImmutableArray<StepProgress> Steps)
{
    /// <summary>The step to be done now; null when all are.</summary>
    public StepProgress? Current => Steps.FirstOrDefault(s => s.Done is null);

    public static AttemptProgress? Of(ImmutableArray<Attempt> attempts, State state, Protocol protocol, Instant now)
    {
        if (attempts is not [.., { Result: AttemptResult.UnderWay } attempt])
            return null;
        var steps = ImmutableArray.CreateBuilder<StepProgress>();
        Happened? began = attempt.Started;
        var with = "";
        foreach (var step in protocol.Steps)
        {
            var entry = began is { } since ? Doing(step, attempt, state, since, now, with) : null;
            if (entry?.What is Payload.WoundPacked packed)
                with = Wire.Word(packed.Material);
            steps.Add(new(step, began, began?.Latest + Minimum(step, with), entry?.When));
            began = entry?.When;
        }

        return new(attempt, steps.ToImmutable());
    }

    /// <summary>The least time a step takes, by what the wound was packed with.</summary>
    public static Duration Minimum(AttemptStep step, string with) =>
        step.Minimum.TryGetValue(with, out var known) ? known
        : step.Minimum.IsEmpty ? Duration.Zero
        : step.Minimum.Values.Max();

    /// <summary>The entry that completes a step, not before the step began.</summary>
    private static Dated? Doing(AttemptStep step, Attempt attempt, State state, Happened since, Instant now, string with)
    {
        IEnumerable<Dated> After(Kind kind) =>
            state.Of(kind).Where(d => d.When.Latest >= since.Earliest && d.When.Earliest <= now);
        return step.Id switch
        {
            StepId.Pack => After(Kind.WoundPacked)
                .LastOrDefault(d => d.As<Payload.WoundPacked>().Wound == attempt.Wound),
            StepId.Hold => Held(After(Kind.PressureHeld), attempt.Wound, Minimum(step, with)),
            StepId.Dress => After(Kind.DressingApplied).LastOrDefault(d =>
                d.As<Payload.DressingApplied>() is { Dressing: DressingKind.Pressure } p && p.Wound == attempt.Wound),
            StepId.Slacken => After(Kind.TourniquetSlackened)
                .LastOrDefault(d => d.As<Payload.TourniquetSlackened>().Tourniquet == attempt.Tourniquet),
            StepId.Watch => null,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    /// <summary>The entry with which the minutes held reach the minimum.</summary>
    private static Dated? Held(IEnumerable<Dated> entries, string wound, Duration minimum)
    {
        var held = Duration.Zero;
        foreach (var entry in entries)
            if (entry.As<Payload.PressureHeld>() is var p && p.Wound == wound
                && (held += Duration.FromMinutes(p.Minutes)) >= minimum)
                return entry;
        return null;
    }
}
