using NodaTime;

namespace Farhold.Review;

/// <summary>How far off a forecast of help was, once the truth is known: a wide range and a missed one both cost; 0 is perfect.</summary>
/// <remarks>
/// Mean loss of its earliest (1 in 10), likely (5 in 10) and latest times. Source: Gneiting and Raftery 2007, JASA 102:359–378.
/// </remarks>
public static class QuantileScore
{
    /// <summary>What the earliest time stands for, as forecasts write it.</summary>
    private const double Early = 0.1;

    /// <param name="soonProbability">What the latest time stands for, of <see cref="ClockLimits.SoonProbability"/>.</param>
    public static Duration Of(Payload.HelpExpected forecast, Instant truth, double soonProbability)
    {
        var asked = new[] { (Early, forecast.Earliest), (0.5, forecast.Likely), (soonProbability, forecast.Latest) };
        return Duration.FromSeconds(
            asked.Where(a => a.Item2 is not null).Average(a => Loss(a.Item1, (truth - a.Item2!.Value).TotalSeconds))
        );
    }

    private static double Loss(double p, double later) => later >= 0 ? p * later : (p - 1) * later;
}
