using NodaTime;

namespace Farhold.App.Attempts;

/// <summary>What the phone sounds during an attempt, from absolute times, so that a late tick loses no cue and doubles none.</summary>
/// <remarks>Bleeding is not among them: that alarm sounds on every screen, from the reminders.</remarks>
public static class Cues
{
    // Design choices, both.
    private static readonly Duration ReachedEvery = Duration.FromSeconds(10);
    private static readonly Duration LookEvery = Duration.FromMinutes(1);

    /// <summary>The cue that falls after <paramref name="before"/> and not after <paramref name="now"/>, or null.</summary>
    public static Signal? Between(Instant before, Instant now, LimbScene scene)
    {
        bool Falls(Instant from, Duration every, Instant until) => Crossed(before, Instant.Min(now, until), from, every);
        if (scene.Tighten is not null || scene.Progress is not { } progress || scene.Step is not { } step)
            return null;
        if (step.Step.Id == StepId.Slacken)
            return Pacing.Of(step, progress, scene.State) is not { } pace ? null
                : now >= pace.To
                    ? Falls(pace.To, ReachedEvery, Instant.MaxValue) ? Signal.Reached
                        : null
                : Falls(pace.From, Pacing.Beat, pace.To) ? Signal.Beat
                : null;
        if (step.Step.Minimum.IsEmpty || step is not { Began: { } began, NotBefore: { } end })
            return null;
        if (now >= end)
            return Falls(end, ReachedEvery, Instant.MaxValue) ? Signal.Reached : null;
        return step.Step.Id == StepId.Watch && Falls(began.Latest + LookEvery, LookEvery, end) ? Signal.Beat : null;
    }

    /// <summary>
    /// Whether one of from, from + every, from + 2 every … lies after <paramref name="before"/> and up to <paramref name="now"/>.
    /// </summary>
    public static bool Crossed(Instant before, Instant now, Instant from, Duration every) =>
        now >= from && Math.Floor((now - from) / every) > (before < from ? -1 : Math.Floor((before - from) / every));
}
