using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Where medical advice stands at one instant.</summary>
/// <param name="Allows">Advice in force surely allows an attempt; unknown where it may.</param>
/// <param name="Refuses">An express no stands, or may stand.</param>
/// <param name="Unreached">Advice was tried for, and surely nobody answered; an express no outweighs it.</param>
/// <param name="Given">When the advice that allows was given at the earliest; null where none does.</param>
internal sealed record AdviceStanding(Truth Allows, bool Refuses, bool Unreached, Happened? Given)
{
    /// <summary>What was said in the advice that allows, with who said it; it may set limits that nothing here can read.</summary>
    public ImmutableArray<string> Words { get; private init; } = [];

    /// <summary>Somebody tried to reach it within the time that a try counts.</summary>
    public bool Tried { get; private init; }

    public static AdviceStanding At(State state, AdviceRules rules, Instant now)
    {
        var last = Current.Of<Word>(state.Of(Kind.AdviceReceived), now, Read);
        var refuses = last.Any(w => !w.Allows && !(w.Until <= now));
        var allowing = last.Where(w => w.Allows && now < w.End(rules) && w.When.Latest <= now).ToArray();
        var allows = allowing.Length == 0 || refuses ? Truth.NotMet : allowing.Length == last.Length ? Truth.Met : Truth.Unknown;
        return new(
            allows, refuses, !refuses && IsUnreached(state, rules, now),
            allows == Truth.Met ? allowing.MinBy(w => w.When.Earliest).When : null)
        {
            Words = allows == Truth.Met ? [.. allowing.OrderBy(w => w.When.Earliest).Select(w => $"{w.From}: {w.Text}").Distinct()] : [],
            Tried = state.Of(Kind.ContactTried).Any(t => t.When.Latest <= now && t.When.Until(now).Max <= rules.Tried),
        };
    }

    /// <summary>Whether advice was surely given after something.</summary>
    public bool GivenAfter(Happened what) => Given is { } given && what.SurelyBefore(given);

    private static Word? Read(Dated entry) => entry.As<Payload.AdviceReceived>() switch
    {
        { Allows: { IsDefault: false, IsEmpty: true } } no => new(false, entry.When, no.Until, no.From, no.Text),
        { Allows: { IsDefault: false } allows } yes when allows.Contains(Payload.AdviceReceived.AllowsAttempt) =>
            new(true, entry.When, yes.Until, yes.From, yes.Text),
        _ => null,
    };

    /// <summary>Every contact that may be the last one reached nobody within the time a try counts, or got no answer in time.</summary>
    private static bool IsUnreached(State state, AdviceRules rules, Instant now)
    {
        var tries = Current.Of<Contact>(state.Of(Kind.ContactTried), now, d => new(d.As<Payload.ContactTried>().Reached, d.When));
        return !tries.IsEmpty && tries.All(t => (Counts(t) && !Answered(t)) || (t.Reached && WaitsSince(t)));

        // Whoever calls again still waits for the answer to the call before.
        bool WaitsSince(Contact last) => state.Of(Kind.ContactTried)
            .Select(d => new Contact(d.As<Payload.ContactTried>().Reached, d.When))
            .Any(t => t.Reached && t.When.SurelyBefore(last.When) && Counts(t) && !Answered(t));

        bool Counts(Contact contact)
        {
            var since = contact.When.Until(now);
            return since.Max <= rules.Tried && contact.When.Latest <= now && (!contact.Reached || since.Min >= rules.Unanswered);
        }

        // Anybody who gave advice, of whatever kind, not surely before the try was reached.
        bool Answered(Contact contact) => state.Of(Kind.AdviceReceived)
            .Any(a => a.When.Earliest <= now && !a.When.SurelyBefore(contact.When));
    }

    private readonly record struct Word(bool Allows, Happened When, Instant? Until, string From, string Text)
    {
        public Instant End(AdviceRules rules) => Until ?? When.Earliest + rules.Lasts;
    }

    private readonly record struct Contact(bool Reached, Happened When);
}
