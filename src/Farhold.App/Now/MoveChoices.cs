using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>A move that is ahead, and one that is over.</summary>
internal sealed class MoveChoices(Texts texts)
{
    public ImmutableArray<QuickGroup> Groups =>
        [Of(MovePhase.AboutTo, texts.MoveAhead, texts.MoveAheadHint), Of(MovePhase.Moved, texts.MoveOver, texts.MoveOverHint)];

    private QuickGroup Of(MovePhase phase, string label, string hint) =>
        new(
            label,
            [.. Enum.GetValues<Movement>().Select(m => new QuickOption(texts.MovementWord(m), _ => new Payload.CasualtyMoved(m, phase)))],
            Hint: hint
        );
}
