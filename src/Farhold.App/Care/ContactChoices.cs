using System.Collections.Immutable;
using Farhold.App.Words;

namespace Farhold.App.Care;

/// <summary>Whether advice was reached, and how it was tried.</summary>
internal sealed class ContactChoices(Texts texts)
{
    public ImmutableArray<QuickGroup> Groups =>
    [
        new(texts.ContactNobody, [.. Ways.Append(texts.ContactNoSignal).Select(w => Option(w, reached: false))], Hint: texts.ContactNobodyHint),
        new(texts.ContactReached, [.. Ways.Select(w => Option(w, reached: true))], Hint: texts.ContactReachedHint),
    ];

    private string[] Ways => [texts.ContactPhone, texts.ContactRadio, texts.ContactMessage];

    private static QuickOption Option(string way, bool reached) => new(way, _ => new Payload.ContactTried(reached, How: way));
}
