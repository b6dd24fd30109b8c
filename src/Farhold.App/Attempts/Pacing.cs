using NodaTime;

namespace Farhold.App.Attempts;

/// <summary>How fast the tourniquet is let out: from the look at the dressing, over at least the step's minimum.</summary>
/// <param name="From">When the last look since dressing found no active bleeding.</param>
/// <param name="To">Not before this may it be called slackened.</param>
public sealed record Pacing(Instant From, Instant To)
{
    /// <summary>Design: one small turn of the windlass to a beat.</summary>
    public static readonly Duration Beat = Duration.FromSeconds(10);

    public int Beats => (int)Math.Ceiling((To - From) / Beat);

    /// <summary>Null until somebody has looked at the dressing, after the step's gate was open; the pace never starts by itself.</summary>
    public static Pacing? Of(StepProgress slacken, AttemptProgress progress, State state)
    {
        if (slacken is not { Step.Id: StepId.Slacken, Gate: null, Began: { } began, NotBefore: { } notBefore })
            return null;
        var look = state
            .Of(Kind.BleedingChecked)
            .LastOrDefault(d => d.As<Payload.BleedingChecked>().Wound == progress.Attempt.Wound && d.When.Earliest >= began.Latest);
        if (
            look is null
            || look.When.Latest < Opened(slacken.Step, state)
            || look.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active
        )
            return null;
        var paced = look.When.Latest + AttemptProgress.Minimum(slacken.Step, "");
        return new(look.When.Latest, Instant.Max(paced, notBefore));
    }

    private static Instant? Opened(AttemptStep step, State state) =>
        step.Gate is not { } gate
            ? null
            : state.Of(Kind.TaskDone).LastOrDefault(t => CareTask.Is(gate, t.As<Payload.TaskDone>().Task))?.When.Latest;

    /// <summary>The beat that is on now, from 1; the number of beats once they are over.</summary>
    public int At(Instant now) => Math.Clamp((int)((now - From) / Beat) + 1, 1, Beats);
}
