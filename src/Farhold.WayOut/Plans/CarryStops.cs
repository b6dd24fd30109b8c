using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>When to set the litter down on a leg, and why.</summary>
/// <param name="Every">Between two stops.</param>
/// <param name="Fewest">Stops on the leg if it goes fast.</param>
/// <param name="Most">If it goes slowly.</param>
public sealed record CarryStop(Duration Every, int Fewest, int Most);

/// <summary>A carry in stretches: how often to stop and look, how often to feel for warmth, who carries when.</summary>
/// <param name="Shortest">On the move, in one of ten trials or as given; null where the leg's length is not known.</param>
/// <param name="Longest">Likewise in nine of ten.</param>
/// <param name="Look">Tourniquet and dressing; null: they need eyes without a break, which no carry gives, or nothing is tied.</param>
/// <param name="Warmth">Chest, hands, feet, wet clothes.</param>
/// <param name="Rota">Null where nobody said how many carry, or a wheel takes the weight.</param>
/// <remarks>
/// No plan has a temperature, so exposure goes by rule (design): whoever lies still on a litter cools, and is felt as often as an
/// unstable casualty, every 30 min in the shipped protocol.
/// </remarks>
public sealed record CarryStops(Duration? Shortest, Duration? Longest, CarryStop? Look, CarryStop? Warmth, BearerRota? Rota)
{
    private const string WarmthTask = "warmth";

    /// <exception cref="ArgumentException">The leg is no carry.</exception>
    public static CarryStops Of(Travel leg, Judgement judged, bool straps)
    {
        if (leg.Mode != TravelMode.Carry)
            throw new ArgumentException($"A stage by {leg.Mode} is not carried.", nameof(leg));
        var ground = leg.Extent as Measured;
        var (shortest, longest) = Range(leg.Extent);
        var warmth = judged.Protocol.Tasks.FirstOrDefault(t => t.Id == WarmthTask);
        var look = LookInterval.Of(judged);
        return new(
            shortest,
            longest,
            look is { } every && every > Duration.Zero ? Stop(every) : null,
            (warmth?.Unstable ?? warmth?.Every) is { } feel ? Stop(feel) : null,
            ground is { Bearers: { } bearers, Wheel: false } ? BearerRota.Of(bearers, straps) : null
        );

        CarryStop Stop(Duration every) => new(every, Count(shortest, every), Count(longest, every));
    }

    /// <summary>Stops on the way; the end of the leg is none.</summary>
    private static int Count(Duration? length, Duration every) => length is { } l ? Math.Max(0, (int)Math.Ceiling(l / every) - 1) : 0;

    private static (Duration? Shortest, Duration? Longest) Range(Extent extent) =>
        extent switch
        {
            ThreePoint p => (p.Low, p.High),
            Percentiles p => (p.P10, p.P90),
            Measured { Stretch: { } stretch } m => Range(
                new LitterCarry(stretch, m.Surface ?? Surfaces.Path, m.Bearers, m.Wheel, m.SnowCm).TimeSeconds()
            ),
            _ => (null, null),
        };

    private static (Duration?, Duration?) Range(LogNormal seconds) =>
        (Duration.FromSeconds(seconds.Quantile(0.1)), Duration.FromSeconds(seconds.Quantile(0.9)));
}
