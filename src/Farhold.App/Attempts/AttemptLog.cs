namespace Farhold.App.Attempts;

/// <summary>Writes what happens in an attempt, always as entries of their own, the one that the clocks depend on first.</summary>
public sealed class AttemptLog(Logbook logbook, Toasts toasts, Session session)
{
    // Read before the first entry of several is on disk: the others belong to the same casualty, whatever is opened meanwhile.
    private CasualtyHead Open => session.Open ?? throw new InvalidOperationException("An attempt needs an open casualty.");

    /// <summary>Tight again because it bled: the clock first, then the end of the attempt, if one is under way.</summary>
    public async Task BledAsync(LimbScene scene, string tourniquet)
    {
        var open = Open;
        toasts.Clear();
        await logbook.WriteAsync(open, scene.Known(tourniquet) with { Why = TighteningReason.Bleeding });
        if (scene.Progress is { Attempt: var attempt })
            await logbook.WriteAsync(open, new Payload.AttemptEnded(attempt.Wound, attempt.Tourniquet, AttemptOutcome.Bled));
    }

    /// <summary>The least time of pressing is over, counted here while both hands were on the wound: at least so long.</summary>
    public Task CountedAsync(Attempt attempt, StepProgress hold) =>
        hold is { Began.Latest: var from, NotBefore: { } until }
            ? logbook.LogAsync(new Payload.PressureHeld(attempt.Wound, (until - from).TotalMinutes, Counted: true), Happened.At(until))
            : Task.CompletedTask;

    /// <summary>Held to the end of the watch: what was seen at the last look, then the end.</summary>
    public async Task HeldAsync(Attempt attempt, Bleeding seen)
    {
        var open = Open;
        await logbook.WriteAsync(open, new Payload.BleedingChecked(attempt.Wound, seen));
        await logbook.LogAsync(open, new Payload.AttemptEnded(attempt.Wound, attempt.Tourniquet, AttemptOutcome.Held));
    }

    /// <param name="tightAgain">Those now tight again; empty: left as they are.</param>
    public async Task AbandonedAsync(LimbScene scene, Attempt attempt, string note, IEnumerable<string> tightAgain)
    {
        var open = Open;
        foreach (var tourniquet in tightAgain)
            await logbook.WriteAsync(open, scene.Known(tourniquet) with { Why = TighteningReason.Precaution });
        await logbook.LogAsync(
            open,
            new Payload.AttemptEnded(
                attempt.Wound,
                attempt.Tourniquet,
                AttemptOutcome.Abandoned,
                note.Trim() is { Length: > 0 } said ? said : null
            )
        );
    }
}
