using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>A rule with its evaluation.</summary>
/// <param name="Limb">Null where it is about the casualty as a whole.</param>
public sealed record WarningFinding(WarningRule Rule, Limb? Limb, Trace Trace)
{
    public Truth State => Trace.State;

    /// <summary>What to look at to settle an unknown rule.</summary>
    public ImmutableArray<Input> Needs =>
        State == Truth.Unknown
            ? [.. Trace.Leaves.Where(l => l.State == Truth.Unknown).Select(l => l.Needs).OfType<Input>().Distinct()]
            : [];
}

/// <summary>Signs of complications: three-valued, from the record alone.</summary>
public static class WarningSigns
{
    /// <summary>Of every reading of a record, each rule at its worst.</summary>
    /// <param name="only">Id of the one rule that is asked about; null: all.</param>
    public static ImmutableArray<WarningFinding> Of(CareRecord record, Rulebook rules, Instant now, string? only = null) =>
        [
            .. InOrder(
                record
                    .Readings.SelectMany(state => Of(state, rules, now, only is null ? null : r => r.Id == only))
                    .GroupBy(f => (f.Rule, f.Limb))
                    .Select(g => g.MaxBy(f => f.State)!)
            ),
        ];

    /// <summary>What is met first, then what can't be told, then the rest; within each in the order of the rules.</summary>
    /// <param name="only">Which rules are asked about; null: all.</param>
    public static ImmutableArray<WarningFinding> Of(State state, Rulebook rules, Instant now, Predicate<WarningRule>? only = null)
    {
        var freshness = rules.Protocol.Freshness.SetItems(rules.WarningSigns.Freshness);
        var view = new CasualtyView(state, rules, now, []);
        var casualty = new CriterionEvaluator(freshness, new(view, null, []));
        var findings = new List<WarningFinding>();
        var limbs = Enum.GetValues<Limb>()
            .Select(l => view.Clock(l))
            .OfType<LimbClock>()
            .Select(c => (c.Limb, Evaluator: new CriterionEvaluator(freshness, new(view, c, view.Attempts(c.Limb)), casualty)))
            .ToArray();
        foreach (var rule in rules.WarningSigns.Rules.Where(r => only?.Invoke(r) != false))
        {
            if (rule.Scope == TaskScope.Casualty)
                findings.Add(new(rule, null, casualty.Of(rule.Condition)));
            else
                findings.AddRange(limbs.Select(l => new WarningFinding(rule, l.Limb, l.Evaluator.Of(rule.Condition))));
        }

        return [.. InOrder(findings)];
    }

    private static IOrderedEnumerable<WarningFinding> InOrder(IEnumerable<WarningFinding> findings) =>
        findings.OrderBy(f =>
            f.State switch
            {
                Truth.Met => 0,
                Truth.Unknown => 1,
                _ => 2,
            }
        );
}
