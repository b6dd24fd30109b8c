using Farhold.App.Care;
using Farhold.App.Limbs;
using Farhold.App.Shell;
using Farhold.App.Screens;
using Farhold.App.Store;
using Farhold.App.Words;

namespace Farhold.App.Attempts;

/// <summary>Writes what happens in an attempt, always as entries of their own, the one that the clocks depend on first.</summary>
public sealed class AttemptLog(CareDesk desk, Logbook logbook, Toasts toasts, Session session)
{
    // Read before the first entry of several is on disk: the others belong to the same casualty, whatever is opened meanwhile.
    private CasualtyHead Open => session.Open ?? throw new InvalidOperationException("An attempt needs an open casualty.");

    /// <summary>One entry with its Undo. What could not be stored is told by the status strip.</summary>
    public Task LogAsync(Payload payload) => logbook.LogAsync(Open, payload);

    /// <summary>Tight again because it bled: the clock first, then the end of the attempt, if one is under way.</summary>
    public async Task BledAsync(LimbScene scene, string tourniquet)
    {
        var open = Open;
        toasts.Clear();
        await desk.LogAsync(open, scene.Known(tourniquet) with { Why = TighteningReason.Bleeding });
        if (scene.Progress is { Attempt: var attempt })
            await desk.LogAsync(open, new Payload.AttemptEnded(attempt.Wound, attempt.Tourniquet, AttemptOutcome.Bled));
    }

    /// <summary>Held to the end of the watch: what was seen at the last look, then the end.</summary>
    public async Task HeldAsync(Attempt attempt, Bleeding seen)
    {
        var open = Open;
        await desk.LogAsync(open, new Payload.BleedingChecked(attempt.Wound, seen));
        await logbook.LogAsync(open, new Payload.AttemptEnded(attempt.Wound, attempt.Tourniquet, AttemptOutcome.Held));
    }

    /// <param name="tightAgain">Those now tight again; empty: left as they are.</param>
    public async Task AbandonedAsync(LimbScene scene, Attempt attempt, string note, IEnumerable<string> tightAgain)
    {
        var open = Open;
        foreach (var tourniquet in tightAgain)
            await desk.LogAsync(open, scene.Known(tourniquet) with { Why = TighteningReason.Precaution });
        await logbook.LogAsync(open, new Payload.AttemptEnded(
            attempt.Wound, attempt.Tourniquet, AttemptOutcome.Abandoned, note.Trim() is { Length: > 0 } said ? said : null));
    }
}
