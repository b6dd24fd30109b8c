using System.Collections.Immutable;
using Farhold.App.Words;

namespace Farhold.App.Care;

/// <summary>Whether advice was reached, and how it was tried.</summary>
internal sealed class ContactChoices(Texts texts)
{
    public ImmutableArray<QuickGroup> Groups =>
    [
        new(texts.ContactReached, [.. Ways.Select(w => Option(texts.ContactBy(InWords(w)), w, reached: true))], Hint: texts.ContactReachedHint),
        new(
            texts.ContactNobody,
            [.. Ways.Select(w => Option(texts.ContactNotBy(InWords(w)), w, reached: false)), Option(texts.ContactNoSignal, texts.ContactNoSignal, reached: false)],
            Hint: texts.ContactNobodyHint),
    ];

    private string[] Ways => [texts.ContactPhone, texts.ContactRadio, texts.ContactMessage];

    private static string InWords(string way) => char.ToLowerInvariant(way[0]) + way[1..];

    /// <summary>Says by itself whether anybody was reached: the heading above it may be scrolled away, and "nobody" can make a verdict milder.</summary>
    private static QuickOption Option(string name, string way, bool reached) => new(name, _ => new Payload.ContactTried(reached, How: way));
}
