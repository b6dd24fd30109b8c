using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Where medical advice stands at one instant.</summary>
/// <param name="Allows">Advice in force surely allows an attempt; unknown where it may.</param>
/// <param name="Refuses">An express no stands, or may stand.</param>
/// <param name="Unreached">Advice was tried for, and surely nobody answered; an express no outweighs it.</param>
/// <param name="Given">When the advice that allows was given at the earliest, whoever gave it; null where none does.</param>
/// <remarks>
/// Where the rules say whose yes counts for what, something is lifted only if it would be without that list, and would be too if
/// nobody had said yes but those whose yes counts. So a list never lifts more, and a yes that does not count ends no express no.
/// </remarks>
internal sealed record AdviceStanding(Truth Allows, bool Refuses, bool Unreached, Happened? Given)
{
    private ImmutableArray<Allowance> allowances = [];
    private Func<string, Happened?> entitled = static _ => null;
    private readonly Dictionary<string, Happened?> known = [];

    /// <summary>What was said in the advice that allows, with who said it; it may set limits that nothing here can read.</summary>
    public ImmutableArray<string> Words { get; private init; } = [];

    /// <summary>Somebody tried to reach it within the time that a try counts.</summary>
    public bool Tried { get; private init; }

    /// <summary>Whose yes stands, and does not count for everything, with the office that was said.</summary>
    public ImmutableArray<(string From, string? Office)> InPart { get; private init; } = [];

    public static AdviceStanding At(State state, AdviceRules rules, Instant now)
    {
        var whole = Standing(state, rules, now, static _ => true);
        var list = rules.Allowances;
        var refuses = whole.Refuses || (!list.IsEmpty && Standing(state, rules, now, Counts(list, AllowedActs.Attempt)).Refuses);
        var allows = refuses ? Truth.NotMet : whole.Allows;
        var allowing = allows == Truth.Met ? whole.Allowing : [];
        return new(
            allows,
            refuses,
            !refuses && IsUnreached(state, rules, now),
            allowing.IsEmpty ? null : allowing.MinBy(w => w.When.Earliest).When
        )
        {
            Words = [.. allowing.OrderBy(w => w.When.Earliest).Select(w => $"{w.From}: {w.Text}").Distinct()],
            InPart =
            [
                .. whole
                    .Allowing.Where(w => whole.Allows == Truth.Met && !list.Permit(w.Office, AllowedActs.Attempt))
                    .Select(w => (w.From, w.Office))
                    .Distinct(),
            ],
            Tried = state.Of(Kind.ContactTried).Any(t => t.When.Latest <= now && t.When.Until(now).Max <= rules.Tried),
            allowances = list,
            entitled = act => Standing(state, rules, now, Counts(list, act)).Given,
        };
    }

    /// <summary>When a yes that counts for an act was given; empty where none stands. What it lifts has to have stood at each.</summary>
    /// <param name="act">A word of <see cref="AllowedActs"/>, or the id of a criterion.</param>
    public ImmutableArray<Happened> GivenFor(string act)
    {
        if (Given is not { } given)
            return [];
        if (allowances.IsEmpty)
            return [given];
        if (!known.TryGetValue(act, out var counted))
            known.Add(act, counted = entitled(act));
        return counted is { } by ? [given, by] : [];
    }

    /// <summary>Whether a yes that counts for an act was surely given after something.</summary>
    public bool GivenAfter(Happened what, string act) => GivenFor(act) is { IsEmpty: false } given && given.All(what.SurelyBefore);

    private static Func<Word, bool> Counts(ImmutableArray<Allowance> list, string act) => w => !w.Allows || list.Permit(w.Office, act);

    /// <summary>As if nothing had been said but what counts.</summary>
    private static (Truth Allows, bool Refuses, Happened? Given, ImmutableArray<Word> Allowing) Standing(
        State state,
        AdviceRules rules,
        Instant now,
        Func<Word, bool> counts
    )
    {
        var last = Current.Of<Word>(state.Of(Kind.AdviceReceived), now, d => Read(d) is { } word && counts(word) ? word : null);
        var refuses = last.Any(w => !w.Allows && !(w.Until <= now));
        var allowing = last.Where(w => w.Allows && now < w.End(rules) && w.When.Latest <= now).ToImmutableArray();
        var allows =
            allowing.IsEmpty || refuses ? Truth.NotMet
            : allowing.Length == last.Length ? Truth.Met
            : Truth.Unknown;
        return (allows, refuses, allows == Truth.Met ? allowing.MinBy(w => w.When.Earliest).When : null, allowing);
    }

    private static Word? Read(Dated entry) =>
        entry.As<Payload.AdviceReceived>() switch
        {
            { Allows: { IsDefault: false, IsEmpty: true } } no => new(false, entry.When, no),
            { Allows: { IsDefault: false } allows } yes when allows.Contains(Payload.AdviceReceived.AllowsAttempt) => new(
                true,
                entry.When,
                yes
            ),
            _ => null,
        };

    /// <summary>Every contact that may be the last one reached nobody within the time a try counts, or got no answer in time.</summary>
    private static bool IsUnreached(State state, AdviceRules rules, Instant now)
    {
        var tries = Current.Of<Contact>(state.Of(Kind.ContactTried), now, d => new(d.As<Payload.ContactTried>().Reached, d.When));
        return !tries.IsEmpty && tries.All(t => (Counts(t) && !Answered(t)) || (t.Reached && WaitsSince(t)));

        // Whoever calls again still waits for the answer to the call before.
        bool WaitsSince(Contact last) =>
            state
                .Of(Kind.ContactTried)
                .Select(d => new Contact(d.As<Payload.ContactTried>().Reached, d.When))
                .Any(t => t.Reached && t.When.SurelyBefore(last.When) && Counts(t) && !Answered(t));

        bool Counts(Contact contact)
        {
            var since = contact.When.Until(now);
            return since.Max <= rules.Tried && contact.When.Latest <= now && (!contact.Reached || since.Min >= rules.Unanswered);
        }

        // Anybody who gave advice, of whatever kind, not surely before the try was reached.
        bool Answered(Contact contact) =>
            state.Of(Kind.AdviceReceived).Any(a => a.When.Earliest <= now && !a.When.SurelyBefore(contact.When));
    }

    private readonly record struct Word(bool Allows, Happened When, Payload.AdviceReceived Said)
    {
        public Instant? Until => Said.Until;

        public string From => Said.From;

        public string Text => Said.Text;

        public string? Office => Said.Authority;

        public Instant End(AdviceRules rules) => Until ?? When.Earliest + rules.Lasts;
    }

    private readonly record struct Contact(bool Reached, Happened When);
}
