using NodaTime;

namespace Farhold.App.Attempts;

/// <summary>What the phone says aloud during an attempt, for hands that are in the wound and eyes that are on it.</summary>
public static class SpokenCues
{
    /// <summary>Said when it comes to be what is to be done now; null where the screen alone has to do.</summary>
    /// <param name="alarm">It bleeds again.</param>
    /// <param name="stop">What speaks against going on.</param>
    public static string? OfStep(LimbScene scene, bool alarm, string? stop, Texts texts) =>
        alarm ? texts.SayTighten
        : stop is not null ? stop
        : scene is not { Progress: { } progress, Step: { } step } ? null
        : step.Gate is not null ? texts.GateTitle
        : Pacing.Of(step, progress, scene.State) is not null ? texts.SaySlacken
        : step.Step.InBrief;

    /// <summary>Said when a time falls after <paramref name="before"/> and not after <paramref name="now"/>.</summary>
    public static string? Between(Instant before, Instant now, LimbScene scene, Texts texts)
    {
        if (scene.Tighten is not null || scene is not { Progress: { } progress, Step: { } step })
            return null;
        var end = step.Step.Id == StepId.Slacken ? Pacing.Of(step, progress, scene.State)?.To : step.NotBefore;
        if (end is not { } over || step.Gate is not null)
            return null;
        if (before < over && now >= over)
            return step.Step.Id switch
            {
                StepId.Slacken => texts.SaySlackened,
                StepId.Watch => texts.SayWatched,
                _ => null, // what is pressed is counted, and the next step says itself
            };
        var (had, left) = (Math.Ceiling((over - before).TotalMinutes), Math.Ceiling((over - now).TotalMinutes));
        return step.Step.Id == StepId.Hold && left < had && left >= 1 ? texts.SayPress((long)left) : null;
    }
}
