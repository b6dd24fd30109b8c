using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Pictures;

/// <summary>A forecast as twenty ways it may go, each as likely as the next.</summary>
/// <param name="Arrivals">Rising; null for a way in which none gets through within 60 days.</param>
public sealed record ArrivalDots(ImmutableArray<Instant?> Arrivals)
{
    public const int Count = 20;

    /// <summary>What the sentence is about where no limit is asked after: seven in ten (design).</summary>
    private const int SevenInTen = 14;

    /// <exception cref="InvalidOperationException">No trial has run.</exception>
    public static ArrivalDots Of(Simulation simulation)
    {
        if (simulation.Done == 0)
            throw new InvalidOperationException("No trial has run yet.");
        var sorted = simulation.SecondsToCare.ToArray();
        Array.Sort(sorted);
        var start = simulation.Plan.Plan.Start;
        return new([
            .. Enumerable
                .Range(0, Count)
                .Select(i => QuantileEstimate.At(sorted, (i + 0.5) / Count))
                .Select(s => double.IsFinite(s) ? start + Duration.FromSeconds(s) : (Instant?)null),
        ]);
    }

    public int Before(Instant limit) => Arrivals.Count(at => at < limit);

    /// <summary>The moment the sentence is about: the limit, or by when seven in ten have arrived; null where fewer ever do.</summary>
    public Instant? By(Instant? limit) => limit ?? Arrivals[SevenInTen - 1];
}
