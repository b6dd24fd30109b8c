using System.Collections.Immutable;
using Farhold.Review;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>How far off a forecast was, once the truth is known.</summary>
/// <param name="Told">When it was told.</param>
/// <param name="Quantile">By <see cref="QuantileScore"/>; 0 is perfect.</param>
/// <param name="Inside">Whether it was between the earliest and the latest.</param>
public sealed record ForecastScore(Instant Told, Payload.HelpExpected Forecast, Instant Truth, Duration Quantile, bool Inside)
{
    /// <param name="soonProbability">What the latest time stands for.</param>
    public static ForecastScore Of(Instant told, Payload.HelpExpected forecast, Instant truth, double soonProbability) =>
        new(
            told,
            forecast,
            truth,
            QuantileScore.Of(forecast, truth, soonProbability),
            !(truth < (forecast.Earliest ?? forecast.Likely) || truth > (forecast.Latest ?? Instant.MaxValue))
        );

    /// <summary>Every forecast that the record holds of a plan, once its last stage is done; empty before.</summary>
    public static ImmutableArray<ForecastScore> All(Plan plan, State state, Instant now, double soonProbability)
    {
        if (RecordSoFar.Of(state, plan, now) is not { } soFar || Arrived(plan, soFar) is not { } truth)
            return [];
        return
        [
            .. state
                .Of(Kind.HelpExpected)
                .Where(h => h.When.Latest <= truth && h.As<Payload.HelpExpected>().Plan == plan.Id)
                .Select(h => Of(h.When.Latest, h.As<Payload.HelpExpected>(), truth, soonProbability)),
        ];
    }

    public static IEnumerable<string> Lines(Plan plan, State state, Instant now, ArrivalClock clock, double soonProbability) =>
        All(plan, state, now, soonProbability).Select(s => Line(s, clock));

    private static string Line(ForecastScore score, ArrivalClock clock)
    {
        var (made, likely, truth) = (clock.Exactly(score.Told), clock.Exactly(score.Forecast.Likely), clock.Exactly(score.Truth));
        var quantile = Say.Duration(score.Quantile);
        return score.Inside ? PlanTexts.ScoreInside(made, likely, truth, quantile) : PlanTexts.ScoreOutside(made, likely, truth, quantile);
    }

    private static Instant? Arrived(Plan plan, SoFar soFar)
    {
        var last = FormattableString.Invariant($"{plan.Legs.Length}");
        if (plan.Legs[^1] is Travel)
            return soFar.Of(last, StageState.Done)?.At;
        var choice = (Choice)plan.Legs[^1];
        return choice
            .Ways.Select((way, w) => soFar.Of(FormattableString.Invariant($"{last}.{w + 1}.{way.Legs.Length}"), StageState.Done)?.At)
            .Where((at, w) => at is not null && (!choice.IsElse || w > 0 || choice.Ways[1].Legs.IsEmpty))
            .Min();
    }
}
