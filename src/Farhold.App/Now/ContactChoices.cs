using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>Whether advice was reached, and how it was tried.</summary>
internal sealed class ContactChoices(Texts texts)
{
    public ImmutableArray<QuickGroup> Groups =>
        [
            new(
                texts.ContactReached,
                [.. texts.ContactWays.Select(w => Option(texts.ContactBy(w.Within), w.Recorded, reached: true))],
                Hint: texts.ContactReachedHint
            ),
            new(
                texts.ContactNobody,
                [
                    .. texts.ContactWays.Select(w => Option(texts.ContactNotBy(w.Within), w.Recorded, reached: false)),
                    Option(texts.ContactNoSignal, texts.Recorded.ContactNoSignal, reached: false),
                ],
                Hint: texts.ContactNobodyHint
            ),
        ];

    /// <summary>
    /// Says by itself whether anybody was reached: the heading above it may be scrolled away, and "nobody" can make a verdict milder.
    /// </summary>
    private static QuickOption Option(string name, string way, bool reached) => new(name, _ => new Payload.ContactTried(reached, How: way));
}
