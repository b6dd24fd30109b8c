using System.Collections.Immutable;

namespace Farhold.Verdicts;

/// <summary>How much each unknown input can decide.</summary>
/// <remarks>
/// Every unknown leaf is taken as met or not met with equal chance. The weight of a leaf is the probability that the
/// others fall so that this leaf settles the verdict (Birnbaum 1969, reliability importance; with equal chances the
/// Banzhaf index of the tree); the weight of an input is the sum over its leaves. Exact where leaves are independent.
/// </remarks>
internal static class InputWeights
{
    /// <summary>Inputs to look at, heaviest first; equal ones in the order of the protocol.</summary>
    public static ImmutableArray<Input> Order(ImmutableArray<Finding> findings)
    {
        var weights = new Dictionary<Input, double>();
        var forbidding = findings.Where(f => f.Criterion.Role != Role.Awaits).ToArray();
        var awaiting = findings.Where(f => f.Criterion.Role == Role.Awaits).ToArray();
        var allowed = forbidding.Aggregate(1.0, (p, f) => p * (1 - Against(f)));
        Weigh(forbidding, 1, weights);
        Weigh(awaiting, allowed, weights);
        return [.. weights.OrderByDescending(w => Math.Round(w.Value, 12)).Select(w => w.Key).Where(i => i.Look.Length > 0)];
    }

    /// <summary>An "any of" over findings: one of them settles it if none of the others does.</summary>
    private static void Weigh(Finding[] findings, double outer, Dictionary<Input, double> weights)
    {
        for (var i = 0; i < findings.Length; i++)
        {
            var others = 1.0;
            for (var j = 0; j < findings.Length; j++)
                if (j != i)
                    others *= 1 - Against(findings[j]);
            if (outer * others <= 0)
                continue;
            if (Asked(findings[i]) is { } asked)
                weights[asked] = weights.GetValueOrDefault(asked) + (outer * others);
            else if (findings[i].Lifted == Lift.None)
                Weigh(findings[i].Trace, outer * others, weights);
        }
    }

    /// <summary>What settles a finding that asks for something first; null for every other.</summary>
    private static Input? Asked(Finding finding) =>
        finding switch
        {
            { Criterion.Role: not Role.Asks } or { Against: not Truth.Met } => null,
            { Criterion.AdviceLifts: true } => Input.Oversight,
            _ => finding.Criterion.Condition.Inputs.First() is var input && input == Input.SoftSigns ? Input.ClearLooks : input,
        };

    private static void Weigh(Trace trace, double outer, Dictionary<Input, double> weights)
    {
        if (outer <= 0 || trace.State != Truth.Unknown)
            return;
        if (trace.Parts.IsEmpty)
        {
            weights[trace.Needs!] = weights.GetValueOrDefault(trace.Needs!) + outer;
            return;
        }

        for (var i = 0; i < trace.Parts.Length; i++)
        {
            var others = 1.0;
            for (var j = 0; j < trace.Parts.Length; j++)
                if (j != i)
                    others *= trace.Condition is Condition.All ? Met(trace.Parts[j]) : 1 - Met(trace.Parts[j]);
            Weigh(trace.Parts[i], outer * others, weights);
        }
    }

    private static double Against(Finding finding) =>
        (finding.Criterion.Role, finding.Against) switch
        {
            (_, Truth.NotMet) => 0,
            (Role.Asks, Truth.Met) => 0.5,
            (Role.Soft, Truth.Met) => 0,
            (Role.Requires, _) => 1 - Met(finding.Trace),
            _ => Met(finding.Trace),
        };

    /// <summary>Probability that the condition is met.</summary>
    private static double Met(Trace trace) =>
        trace.State switch
        {
            Truth.Met => 1,
            Truth.NotMet => 0,
            _ => trace.Condition switch
            {
                Condition.All => trace.Parts.Aggregate(1.0, (p, part) => p * Met(part)),
                Condition.Any => 1 - trace.Parts.Aggregate(1.0, (p, part) => p * (1 - Met(part))),
                Condition.Not => 1 - Met(trace.Parts[0]),
                Condition.Compare or Condition.OneOf => 0.5,
                _ => throw new System.Diagnostics.UnreachableException(),
            },
        };
}
