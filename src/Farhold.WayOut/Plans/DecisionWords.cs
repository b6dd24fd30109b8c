using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Go or wait, and several plans side by side, in short sentences.</summary>
public static class DecisionWords
{
    /// <summary>The decision first, then what it is better than.</summary>
    public static ImmutableArray<string> Of(DecisionTime decision, ArrivalClock clock)
    {
        var (help, other) = (decision.Choice.Ways[0].Name ?? PlanTexts.Help, decision.Choice.Ways[2].Name ?? PlanTexts.TheOtherWay);
        var act =
            !decision.Matters ? Even(decision, help, other)
            : decision.Best.Wait is { } wait && wait > Duration.Zero ? PlanTexts.WaitUntil(help, clock.Exactly(clock.Start + wait), other)
            : decision.Best.Wait is null ? PlanTexts.WaitOn(help, other)
            : PlanTexts.DontWait(help, other);
        return
        [
            act,
            PlanTexts.Outcomes(
                Outcome(decision.Best, decision, clock),
                Outcome(decision.GoNow, decision, clock),
                Outcome(decision.WaitOn, decision, clock)
            ),
        ];
    }

    public static IEnumerable<string> Of(SideBySide side, ArrivalClock clock)
    {
        var tens = CaseWords.Tens([.. side.Plans.Select(p => p.Earliest.Hits), side.Same.Hits, side.None.Hits]);
        yield return PlanTexts.ArrivesFirst(
            string.Join(
                ", ",
                side.Plans.Select((p, i) => PlanTexts.PlanTenths(p.Name, tens[i]))
                    .Concat(side.Same.Hits > 0 ? [PlanTexts.SameTenths(tens[^2])] : [])
                    .Concat(side.None.Hits > 0 ? [PlanTexts.NoneTenths(tens[^1])] : [])
            )
        );
        foreach (var plan in side.Plans)
        {
            var range = plan.Quantiles.First(q => q.P == 0.1).At is null ? PlanTexts.MostlyNone : ArrivalWords.Ends(plan.Quantiles, clock);
            var chances = plan.Deadlines.Select(d => PlanTexts.AlsoBefore(d.Deadline.Id, ArrivalWords.Chance(d.Before)));
            yield return PlanTexts.PlanRange(plan.Name, range, string.Concat(chances), Against(plan, side.Plans[0].Name));
        }
    }

    private static string Against(PlanBeside plan, string first)
    {
        if (plan.EarlierThanFirst is not { } earlier)
            return "";
        var (chance, by) = (ArrivalWords.Chance(earlier), plan.LaterSeconds);
        if (!(Math.Abs(by.Value) > Math.Max(60, 2 * by.StandardError)))
            return PlanTexts.EarlierThan(first, chance);
        var length = ArrivalWords.Length(Duration.FromSeconds(Math.Abs(by.Value)));
        return by.Value < 0 ? PlanTexts.EarlierBy(first, chance, length) : PlanTexts.LaterThanBy(first, chance, length);
    }

    private static string Even(DecisionTime decision, string help, string other) =>
        decision.Best.Wait is { } wait && wait == Duration.Zero ? PlanTexts.GoAsGood(other, help)
        : decision.Best.Wait is null ? PlanTexts.WaitAsGood(help)
        : PlanTexts.NoDifference(help);

    private static string Outcome(WaitOutcome outcome, DecisionTime decision, ArrivalClock clock) =>
        outcome.Before is { } before ? PlanTexts.ChanceBefore(ArrivalWords.Chance(before), decision.Limit!.Id)
        : outcome.Late is { } late ? PlanTexts.NineBy(clock.At(late, 1))
        : PlanTexts.NotNine;
}
