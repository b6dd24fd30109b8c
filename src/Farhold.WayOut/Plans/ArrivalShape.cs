using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A forecast as the limb line draws it: three instants and the shape between.</summary>
public static class ArrivalShape
{
    /// <summary>Classes of time between the first trial and P99 (design: the line is some 300 px wide).</summary>
    private const int Classes = 48;

    /// <summary>What P10, the median and P90 are called on the line.</summary>
    public static (string Early, string Middle, string Late) Names => (PlanTexts.ShapeEarly, PlanTexts.ShapeMiddle, PlanTexts.ShapeLate);

    /// <returns>Null where nine in ten never arrive: a picture that ends early would promise too much.</returns>
    /// <exception cref="InvalidOperationException">No trial has run.</exception>
    public static Arrival? Of(Simulation simulation)
    {
        if (simulation.Done == 0)
            throw new InvalidOperationException("No trial has run yet.");
        var sorted = simulation.SecondsToCare.ToArray();
        Array.Sort(sorted);
        var start = simulation.Plan.Plan.Start;
        var (early, middle, late) = (QuantileEstimate.At(sorted, 0.1), QuantileEstimate.At(sorted, 0.5), QuantileEstimate.At(sorted, 0.9));
        if (!double.IsFinite(late))
            return null;
        return new(At(early), At(middle), At(late), PlanTexts.ShapeSource(sorted.Length))
        {
            Names = Names,
            Density = Density(sorted, start),
        };

        Instant At(double seconds) => start + Duration.FromSeconds(seconds);
    }

    private static ImmutableArray<(Instant, double)> Density(double[] sorted, Instant start)
    {
        var (from, to) = (sorted[0], QuantileEstimate.At(sorted, 0.99));
        if (!double.IsFinite(to) || to - from < 1)
            return [];
        var wide = (to - from) / Classes;
        return
        [
            .. Enumerable
                .Range(0, Classes)
                .Select(c =>
                    (
                        start + Duration.FromSeconds(from + ((c + 0.5) * wide)),
                        (double)(
                            Simulation.Before(sorted, from + ((c + 1) * wide)).Hits - Simulation.Before(sorted, from + (c * wide)).Hits
                        )
                    )
                ),
        ];
    }
}
