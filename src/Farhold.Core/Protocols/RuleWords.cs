using NodaTime;

namespace Farhold.Protocols;

/// <summary>Rules of a protocol written out whole, so that a person can see what a change comes to.</summary>
internal static class RuleWords
{
    public static string Of(Criterion c) => Joined(
    [
        c.Text, $"Asks: {Of(c.Condition)}.", $"It {Of(c.Role)}.", c.Stops ? "It counts during an attempt too." : null,
        c.AdviceLifts ? "Advice lifts it." : null, c.GivesWay is { } apart ? $"Where nobody can be reached, two clear looks {Say.Duration(apart)} apart lift it." : null,
        .. c.Acts.Select(Of), c.Look is { } look ? $"To look: {look}." : null, c.Change is { } change ? $"What changes it: {change}." : null,
        Sources(c.Sources),
    ]);

    public static string Of(AttemptStep s) => Joined(
    [
        .. s.Before.Select(Of), s.Text,
        .. s.Minimum.Select(m => $"At least {Say.Duration(m.Value)}{(m.Key.Length == 0 ? "" : $" with {m.Key.Replace('-', ' ')}")}."),
        s.Twice is { } twice ? $"Twice that where {Of(twice)}." : null, s.Gate is { } gate ? $"Not before the task {gate}." : null, Sources(s.Sources),
    ]);

    public static string Of(ObservationPlan w) => Joined(
    [
        w.Text,
        .. w.Periods.Select(p => $"{(p.Until is { } until ? $"Up to {Say.Duration(until)}" : "Then")}: {(p.Every is { } every ? $"every {Say.Duration(every)}" : "without a break")}."),
        w.AfterMove is { } move ? $"After a move {Say.Duration(move)} without a break." : null, Sources(w.Sources),
    ]);

    public static string Of(CareTask t) => Joined(
    [
        t.Text, t.Reason, t.Instead is { } instead ? $"Where it must not be done: {instead}" : null,
        t.Child?.Text is { } child ? $"For a child: {child}" : null, t.Child?.Reason is { } why ? $"For a child: {why}" : null,
        $"For {t.Scope switch { TaskScope.Limb => "each tied limb", TaskScope.Loosened => "each loosened limb", _ => "the casualty" }}.",
        Span("Every", t.Every), Span("While unstable every", t.Unstable), Span("At night after at most", t.Night), Span("Its source allows at most", t.AtMost),
        Span("Once, after", t.Once), t.Again.IsEmpty ? null : $"Again after {string.Join(", ", t.Again.Select(Say.Duration))}.",
        t.From > Duration.Zero ? Span("Not before", t.From) : null, t.People > 1 ? $"Takes {t.People}." : null,
        t.Condition is { } when ? $"Where {Of(when)}." : null, t.OnlyStable ? "Only while stable." : null,
        t.ReplacedBy is { } other ? $"Replaced by the task {other}." : null,
        $"Done by {string.Join(", ", t.DoneBy.Select(Kinds.Wire).Concat(t.Seen.Select(s => InputWords.Name(s.Name))).Append("saying so"))}.", Sources(t.Sources),
    ]);

    public static string Of(Condition condition) => condition switch
    {
        Condition.All all => $"({string.Join(" and ", all.Parts.Select(Of))})",
        Condition.Any any => $"({string.Join(" or ", any.Parts.Select(Of))})",
        Condition.Not not => $"not {Of(not.Part)}",
        Condition.OneOf { Input: var input, Words: var words } => $"{InputWords.Name(input.Name)} is {string.Join(" or ", words.Select(w => w.Replace('-', ' ')))}",
        Condition.Compare c => $"{InputWords.Name(c.Input.Name)} {Of(c.Comparison)} {Limit(c.Input, c.Limit)}"
            + string.Concat(c.Bands.Select(b => $", from {Say.Number(b.FromYears)} to under {Say.Number(b.UnderYears)} years {Limit(c.Input, b.Limit)}"))
            + (c.Measured ? ", where it was measured" : ""),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Of(ConditionalText text) => text.When is { } when ? $"Where {Of(when)}: {text.Text}" : text.Text;

    private static string Of(Role role) => role switch
    {
        Role.Forbids => "forbids an attempt",
        Role.Requires => "has to be met for an attempt",
        Role.Awaits => "lets an attempt gain nothing",
        Role.Asks => "has to be settled before an attempt",
        Role.Soft => "is a soft sign of shock",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Of(Comparison comparison) => comparison switch
    {
        Comparison.Above => "above",
        Comparison.AtLeast => "at least",
        Comparison.Below => "below",
        Comparison.AtMost => "at most",
        _ => "in",
    };

    private static string Limit(Input input, double limit) =>
        input.Type == InputType.Duration ? Say.Duration(Duration.FromSeconds(limit)) : Say.Number(limit);

    private static string? Span(string what, Duration? span) => span is { } s ? $"{what} {Say.Duration(s)}." : null;

    private static string Sources(IEnumerable<string> keys) => $"Source: {string.Join(", ", keys)}.";

    private static string Joined(IEnumerable<string?> parts) => string.Join(" ", parts.OfType<string>());
}
