using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>How far off a forecast was, once the truth is known.</summary>
/// <param name="Told">When it was told.</param>
/// <param name="QuantileMinutes">
/// Mean quantile loss of its earliest (1 in 10), likely (5 in 10) and latest (9 in 10) times, minutes; 0 is perfect. Source: the quantile
/// score of Gneiting and Raftery 2007, JASA 102:359–378.
/// </param>
/// <param name="Inside">Whether it was between the earliest and the latest.</param>
public sealed record ForecastScore(Instant Told, Payload.HelpExpected Forecast, Instant Truth, double QuantileMinutes, bool Inside)
{
    /// <param name="soonProbability">What the latest time stands for.</param>
    public static ForecastScore Of(Instant told, Payload.HelpExpected forecast, Instant truth, double soonProbability = 0.9)
    {
        var asked = new[] { (0.1, forecast.Earliest), (0.5, (Instant?)forecast.Likely), (soonProbability, forecast.Latest) };
        var losses = asked.Where(a => a.Item2 is not null).Select(a => Loss(a.Item1, (truth - a.Item2!.Value).TotalMinutes));
        return new(
            told,
            forecast,
            truth,
            losses.Average(),
            !(truth < (forecast.Earliest ?? forecast.Likely) || truth > (forecast.Latest ?? Instant.MaxValue))
        );
    }

    /// <summary>Every forecast that the record holds of a plan, once its last stage is done; empty before.</summary>
    public static ImmutableArray<ForecastScore> All(Plan plan, State state, Instant now)
    {
        if (RecordSoFar.Of(state, plan, now) is not { } soFar || Arrived(plan, soFar) is not { } truth)
            return [];
        return
        [
            .. state
                .Of(Kind.HelpExpected)
                .Where(h => h.When.Latest <= truth && h.As<Payload.HelpExpected>().Plan == plan.Id)
                .Select(h => Of(h.When.Latest, h.As<Payload.HelpExpected>(), truth)),
        ];
    }

    public static IEnumerable<string> Lines(Plan plan, State state, Instant now, ArrivalClock clock) =>
        All(plan, state, now)
            .Select(s =>
                $"Forecast of {clock.Exactly(s.Told)}: {clock.Exactly(s.Forecast.Likely)} was likely, it was {clock.Exactly(s.Truth)}, "
                + $"{(s.Inside ? "inside" : "outside")} its range. Quantile score {Say.Number(Math.Round(s.QuantileMinutes))} min (0 is perfect)."
            );

    private static Instant? Arrived(Plan plan, SoFar soFar)
    {
        var last = FormattableString.Invariant($"{plan.Legs.Length}");
        if (plan.Legs[^1] is Travel)
            return soFar.Of(last, StageState.Done)?.At;
        var choice = (Choice)plan.Legs[^1];
        return choice
            .Ways.Select((way, w) => soFar.Of(FormattableString.Invariant($"{last}.{w + 1}.{way.Legs.Length}"), StageState.Done)?.At)
            .Where((at, w) => at is not null && (choice.Kind != ChoiceKind.Until || w > 0 || choice.Ways[1].Legs.IsEmpty))
            .Min();
    }

    private static double Loss(double p, double later) => later >= 0 ? p * later : (p - 1) * later;
}
