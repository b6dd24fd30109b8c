using NodaTime;

namespace Farhold.Protocols;

/// <summary>Rules of a protocol written out whole, so that a person can see what a change comes to.</summary>
internal static class RuleWords
{
    public static string Of(Criterion c) =>
        Joined([
            c.Text,
            ProtocolTexts.RuleAsks(Of(c.Condition)),
            ProtocolTexts.RuleRole(Of(c.Role)),
            c.Stops ? ProtocolTexts.RuleDuringAttempt : null,
            c.AdviceLifts ? ProtocolTexts.RuleAdviceLifts : null,
            c.GivesWay is { } apart ? ProtocolTexts.RuleUnreachedLifts(Say.Duration(apart)) : null,
            .. c.Acts.Select(Of),
            c.Look is { } look ? ProtocolTexts.RuleToLook(look) : null,
            c.Change is { } change ? ProtocolTexts.RuleChange(change) : null,
            Sources(c.Sources),
        ]);

    public static string Of(AttemptStep s) =>
        Joined([
            s.Brief is { } brief ? ProtocolTexts.RuleInBrief(brief) : null,
            .. s.Before.Select(Of),
            s.Text,
            .. s.Minimum.Select(m =>
                ProtocolTexts.RuleAtLeast(Say.Duration(m.Value), m.Key.Length == 0 ? "" : ProtocolTexts.RuleWith(m.Key.Replace('-', ' ')))
            ),
            s.Twice is { } twice ? ProtocolTexts.RuleTwice(Of(twice)) : null,
            s.Gate is { } gate ? ProtocolTexts.RuleNotBefore(gate) : null,
            Sources(s.Sources),
        ]);

    public static string Of(ObservationPlan w) =>
        Joined([
            w.Text,
            .. w.Periods.Select(p =>
                ProtocolTexts.RulePeriod(
                    p.Until is { } until ? ProtocolTexts.RuleUpTo(Say.Duration(until)) : ProtocolTexts.RuleThen,
                    p.Every is { } every ? ProtocolTexts.RuleEvery(Say.Duration(every)) : ProtocolTexts.RuleUnbroken
                )
            ),
            w.AfterMove is { } move ? ProtocolTexts.RuleAfterMove(Say.Duration(move)) : null,
            Sources(w.Sources),
        ]);

    public static string Of(CareTask t) =>
        Joined([
            t.Text,
            t.Reason,
            t.Instead is { } instead ? ProtocolTexts.RuleInstead(instead) : null,
            t.Child?.Text is { } child ? ProtocolTexts.RuleForChild(child) : null,
            t.Child?.Reason is { } why ? ProtocolTexts.RuleForChild(why) : null,
            ProtocolTexts.RuleFor(
                t.Scope switch
                {
                    TaskScope.Limb => ProtocolTexts.RuleTiedLimb,
                    TaskScope.Loosened => ProtocolTexts.RuleLoosenedLimb,
                    _ => ProtocolTexts.RuleCasualty,
                }
            ),
            Span(ProtocolTexts.SpanEvery, t.Every),
            Span(ProtocolTexts.SpanUnstable, t.Unstable),
            Span(ProtocolTexts.SpanNight, t.Night),
            Span(ProtocolTexts.SpanAtMost, t.AtMost),
            Span(ProtocolTexts.SpanOnce, t.Once),
            t.Again.IsEmpty ? null : ProtocolTexts.RuleAgainAfter(string.Join(", ", t.Again.Select(Say.Duration))),
            t.From > Duration.Zero ? Span(ProtocolTexts.SpanNotBefore, t.From) : null,
            t.People > 1 ? ProtocolTexts.RuleTakes(t.People) : null,
            t.Condition is { } when ? ProtocolTexts.RuleWhere(Of(when)) : null,
            t.Unless is { } unless ? ProtocolTexts.RuleUnless(Of(unless)) : null,
            t.Drugs.IsEmpty ? null : ProtocolTexts.RuleAbout(string.Join(", ", t.Drugs)),
            t.OnlyStable ? ProtocolTexts.RuleOnlyStable : null,
            t.AfterMove is { } moved ? ProtocolTexts.RuleMoved(moved) : null,
            t.ReplacedBy is { } other ? ProtocolTexts.RuleReplacedBy(other) : null,
            ProtocolTexts.RuleDoneBy(
                string.Join(
                    ", ",
                    t.DoneBy.Select(Kinds.Wire).Concat(t.Seen.Select(s => InputWords.Name(s.Name))).Append(ProtocolTexts.RuleSayingSo)
                )
            ),
            Sources(t.Sources),
        ]);

    public static string Of(Condition condition) =>
        condition switch
        {
            Condition.All all => $"({string.Join(ProtocolTexts.And, all.Parts.Select(Of))})",
            Condition.Any any => $"({string.Join(ProtocolTexts.Or, any.Parts.Select(Of))})",
            Condition.Not not => ProtocolTexts.RuleNot(Of(not.Part)),
            Condition.OneOf { Input: var input, Words: var words } => ProtocolTexts.RuleIs(
                InputWords.Name(input.Name),
                string.Join(ProtocolTexts.Or, words.Select(w => w.Replace('-', ' ')))
            ),
            Condition.Compare c => ProtocolTexts.RuleCompared(InputWords.Name(c.Input.Name), Of(c.Comparison), Limit(c.Input, c.Limit))
                + string.Concat(
                    c.Bands.Select(b => ProtocolTexts.RuleBand(Say.Number(b.FromYears), Say.Number(b.UnderYears), Limit(c.Input, b.Limit)))
                )
                + (c.Measured ? ProtocolTexts.RuleWhereMeasured : ""),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static string Of(ConditionalText text) => text.When is { } when ? ProtocolTexts.RuleWhereThen(Of(when), text.Text) : text.Text;

    private static string Of(Role role) =>
        role switch
        {
            Role.Forbids => ProtocolTexts.RoleForbids,
            Role.Requires => ProtocolTexts.RoleNeeded,
            Role.Awaits => ProtocolTexts.RoleAwaits,
            Role.Asks => ProtocolTexts.RoleSettled,
            Role.Soft => ProtocolTexts.RoleSoft,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static string Of(Comparison comparison) =>
        comparison switch
        {
            Comparison.Above => ProtocolTexts.Above,
            Comparison.AtLeast => ProtocolTexts.AtLeast,
            Comparison.Below => ProtocolTexts.Below,
            Comparison.AtMost => ProtocolTexts.AtMost,
            _ => ProtocolTexts.In,
        };

    private static string Limit(Input input, double limit) =>
        input.Type == InputType.Duration ? Say.Duration(Duration.FromSeconds(limit)) : Say.Number(limit);

    private static string? Span(string what, Duration? span) => span is { } s ? ProtocolTexts.RuleSpan(what, Say.Duration(s)) : null;

    private static string Sources(IEnumerable<string> keys) => ProtocolTexts.RuleSource(string.Join(", ", keys));

    private static string Joined(IEnumerable<string?> parts) => string.Join(" ", parts.OfType<string>());
}
