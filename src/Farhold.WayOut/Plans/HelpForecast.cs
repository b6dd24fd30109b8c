using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A forecast as the record's <c>help.expected</c>.</summary>
public static class HelpForecast
{
    /// <summary>
    /// Likely is the median, earliest P10, latest the time by which help has come with the probability that the protocol asks for.
    /// </summary>
    /// <remarks>
    /// The latest time is the upper end of the 95 % interval of that quantile, rounded up to a minute, so that at least that share of the
    /// trials has arrived by it: whoever waits because the latest time is soon waits for nothing less likely.
    /// </remarks>
    /// <param name="soonProbability">Of <see cref="ClockLimits.SoonProbability"/>.</param>
    /// <returns>Without a latest time where that share never comes; null where not even half do.</returns>
    /// <param name="care">What is reached at the end of the way; null: nobody said.</param>
    public static Payload.HelpExpected? Of(Simulation simulation, double soonProbability, HelpCare? care = null)
    {
        if (!(soonProbability is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(soonProbability), soonProbability, "A probability between 0 and 1.");
        var sorted = simulation.SecondsToCare.ToArray();
        Array.Sort(sorted);
        var plan = simulation.Plan.Plan;
        if (At(QuantileEstimate.Of(sorted, 0.5).Value) is not { } likely)
            return null;
        var latest = At(QuantileEstimate.Of(sorted, soonProbability).High);
        var earliest = At(QuantileEstimate.Of(sorted, 0.1).Value);
        return new(
            likely,
            earliest is { } early && early < likely ? early : likely,
            latest is { } late && late < likely ? likely : latest,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{plan.Title ?? "way out"}: {sorted.Length} trials; likely the middle, earliest 1 in 10, latest "
                    + $"{100 * soonProbability:0.##} in 100 ({simulation.Rng})"
            ),
            plan.Id,
            care
        );

        Instant? At(double seconds) =>
            double.IsFinite(seconds)
                ? Instant.FromUnixTimeSeconds(
                    60
                        * (long)
                            Math.Ceiling(
                                (plan.Start + Duration.FromSeconds(seconds)).ToUnixTimeTicks() / (double)NodaConstants.TicksPerMinute
                            )
                )
                : null;
    }
}
