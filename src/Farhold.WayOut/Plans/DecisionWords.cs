using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Go or wait, and several plans side by side, in short sentences.</summary>
public static class DecisionWords
{
    /// <summary>The decision first, then what it is better than.</summary>
    public static ImmutableArray<string> Of(DecisionTime decision, ArrivalClock clock)
    {
        var (help, other) = (decision.Choice.Ways[0].Name ?? "help", decision.Choice.Ways[2].Name ?? "the other way");
        var act =
            !decision.Matters ? Even(decision, help, other)
            : decision.Best.Wait is { } wait && wait > Duration.Zero
                ? $"Wait for {help} until {clock.Exactly(clock.Start + wait)}. Not there by then: {other}."
            : decision.Best.Wait is null ? $"Wait on for {help}; {other} would be worse at any time."
            : $"Don't wait for {help}: {other} at once.";
        return
        [
            act,
            $"With the best wait {Outcome(decision.Best, decision, clock)}; going at once {Outcome(decision.GoNow, decision, clock)}; "
                + $"waiting on {Outcome(decision.WaitOn, decision, clock)}.",
        ];
    }

    public static IEnumerable<string> Of(SideBySide side, ArrivalClock clock)
    {
        var tens = CaseWords.Tens([.. side.Plans.Select(p => p.Earliest.Hits), side.Same.Hits, side.None.Hits]);
        yield return "Arrives first: "
            + string.Join(
                ", ",
                side.Plans.Select((p, i) => $"{p.Name} {tens[i]} of 10")
                    .Concat(side.Same.Hits > 0 ? [$"at the same time {tens[^2]} of 10"] : [])
                    .Concat(side.None.Hits > 0 ? [$"none within 60 days {tens[^1]} of 10"] : [])
            )
            + ".";
        foreach (var plan in side.Plans)
        {
            var range =
                plan.Quantiles.First(q => q.P == 0.1).At is not { } early ? "mostly nothing within 60 days"
                : plan.Quantiles.First(q => q.P == 0.9).At is { } late ? clock.Between(early, late)
                : $"not before {clock.At(early, -1)}, and perhaps not at all";
            var chances = plan.Deadlines.Select(d => $"; before {d.Deadline.Id} {ArrivalWords.Chance(d.Before)}");
            yield return $"{plan.Name}: {range} in eight of ten{string.Concat(chances)}{Against(plan, side.Plans[0].Name)}.";
        }
    }

    private static string Against(PlanBeside plan, string first) =>
        plan.EarlierThanFirst is not { } earlier ? ""
        : plan.LaterSeconds is { } by && Math.Abs(by.Value) > Math.Max(60, 2 * by.StandardError)
            ? $"; earlier than {first} in {ArrivalWords.Chance(earlier)}, on average {ArrivalWords.Length(Duration.FromSeconds(Math.Abs(by.Value)))} "
                + (by.Value < 0 ? "earlier" : "later")
        : $"; earlier than {first} in {ArrivalWords.Chance(earlier)}";

    private static string Even(DecisionTime decision, string help, string other) =>
        decision.Best.Wait is { } wait && wait == Duration.Zero ? $"Going at once ({other}) is as good as any wait for {help}."
        : decision.Best.Wait is null ? $"Waiting on for {help} is as good as leaving at any time."
        : $"When to stop waiting for {help} makes no difference that could be measured: decide by what else you know.";

    private static string Outcome(WaitOutcome outcome, DecisionTime decision, ArrivalClock clock) =>
        outcome.Before is { } before ? $"{ArrivalWords.Chance(before)} before {decision.Limit!.Id}"
        : outcome.Late is { } late ? $"nine in ten by {clock.At(late, 1)}"
        : "not nine in ten within 60 days";
}
