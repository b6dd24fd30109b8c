using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>The verdict for one limb.</summary>
internal static class LimbJudge
{
    /// <summary>How long what was found when an attempt was begun goes on counting (design); a forgotten one is judged anew.</summary>
    internal static readonly Duration Longest = Duration.FromHours(1);

    public static LimbVerdict At(Scene scene, AttemptProgress? progress)
    {
        var clock = scene.Clock!;
        var findings =
            progress is null ? Findings(scene)
            : WhenBegun(scene, progress.Attempt) is { } begun ? WhileUnderWay(scene, begun)
            : Findings(scene with { Attempts = Over(scene.Attempts) });
        var verdict = Decide(findings);
        return new(
            clock,
            verdict,
            findings,
            verdict == Verdict.CheckFirst ? InputWeights.Order(findings) : [],
            Next(clock, scene.Casualty),
            progress
        )
        {
            Scene = scene,
        };
    }

    /// <summary>The same with another limb before it.</summary>
    public static LimbVerdict After(LimbVerdict limb, FirstLimb first)
    {
        var scene = limb.Scene! with { First = first };
        var evaluator = new CriterionEvaluator(scene.Casualty.Protocol.Freshness, scene, scene.Casualty.Evaluator);
        var findings = limb
            .Findings.Select(f => f.Criterion.Condition.Inputs.Contains(Input.OtherLimbFirst) ? evaluator.Of(f.Criterion) : f)
            .ToImmutableArray();
        var verdict = Decide(findings);
        return limb with
        {
            Scene = scene,
            Findings = findings,
            Verdict = verdict,
            CheckFirst = verdict == Verdict.CheckFirst ? InputWeights.Order(findings) : [],
        };
    }

    /// <summary>The decision itself.</summary>
    internal static Verdict Decide(ImmutableArray<Finding> findings)
    {
        var (forbidden, soon) = (Truth.NotMet, Truth.NotMet);
        foreach (var finding in findings)
            if (finding.Criterion.Role == Role.Awaits)
                soon = soon.Or(finding.Against);
            else
                forbidden = forbidden.Or(finding.Weighs);
        return (Forbidden: forbidden, Soon: soon) switch
        {
            { Forbidden: Truth.Met } => Verdict.LeaveOn,
            { Forbidden: Truth.Unknown } => Verdict.CheckFirst,
            { Soon: Truth.Met } => Verdict.AwaitHelp,
            { Soon: Truth.Unknown } => Verdict.CheckFirst,
            _ => Verdict.Attempt,
        };
    }

    private static ImmutableArray<Finding> Findings(Scene scene)
    {
        var evaluator = new CriterionEvaluator(scene.Casualty.Protocol.Freshness, scene, scene.Casualty.Evaluator);
        return [.. scene.Casualty.Protocol.Criteria.Select(evaluator.Of)];
    }

    /// <summary>What was found when an attempt was begun; null where it was begun against the verdict.</summary>
    private static ImmutableArray<Finding>? WhenBegun(Scene scene, Attempt attempt)
    {
        var at = Instant.Min(attempt.Started.Latest, scene.Now);
        if (attempt.Started.Until(scene.Now).Max > Longest)
            return null;
        var then = scene.Casualty.At(at);
        if (then.Clock(scene.Clock!.Limb) is not { } clock)
            return null;
        var findings = Findings(new(then, clock, Over(then.Attempts(clock.Limb))));
        return Decide(findings) == Verdict.Attempt ? findings : null;
    }

    /// <summary>Those that came to something: one that was begun against the verdict must not change it.</summary>
    private static ImmutableArray<Attempt> Over(ImmutableArray<Attempt> attempts) =>
        [.. attempts.Where(a => a.Result != AttemptResult.UnderWay)];

    /// <summary>During an attempt only bleeding, strong signs and the limits of the protocol go on counting.</summary>
    /// <remarks>What was known when it was begun stays known: nobody takes signs with both hands in the wound.</remarks>
    private static ImmutableArray<Finding> WhileUnderWay(Scene scene, ImmutableArray<Finding> begun)
    {
        var ageless = new CriterionEvaluator(ImmutableSortedDictionary<string, Duration>.Empty, scene);
        return
        [
            .. begun.Select(f =>
                f.Criterion.Stops && ageless.Of(f.Criterion) is var now && !(f.Criterion.IsSign && now.State == Truth.Unknown) ? now : f
            ),
        ];
    }

    /// <summary>The clock counts from the earliest time the limb can have been tightened: the worse side.</summary>
    private static ImmutableArray<ClockEvent> Next(LimbClock clock, CasualtyView casualty)
    {
        var limits = casualty.Protocol.Clock;
        var on = TimeOn.Of(clock, casualty).Max;
        return
        [
            .. new[] { (limits.Window, "window"), (limits.Limit, "limit") }
                .Where(e => e.Item1 > on)
                .Select(e => new ClockEvent(casualty.Now + (e.Item1 - on), $"{e.Item2}-{Hours(e.Item1)}")),
        ];
    }

    private static string Hours(Duration d) =>
        d.Minutes == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{d.TotalHours}h")
            : string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(d.TotalHours)}h{d.Minutes:00}");
}
