using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.WayOut;

/// <summary>Which leg of a plan is next, by the moves that the record tells of since its start.</summary>
public static class NextLeg
{
    /// <summary>One leg; several where ways part and nothing tells which is taken; none once all were moved.</summary>
    public static ImmutableArray<Travel> Of(Plan plan, State state, Instant now) =>
        Next(
            plan.Legs,
            new(
                state
                    .Of(Kind.CasualtyMoved)
                    .Where(m =>
                        m.When.Latest >= plan.Start && m.When.Latest <= now && m.As<Payload.CasualtyMoved>().Phase == MovePhase.Moved
                    )
                    .Select(m => m.As<Payload.CasualtyMoved>().How)
            )
        ) ?? [];

    /// <summary>How the casualty is moved on a leg; null while it waits.</summary>
    public static Movement? How(Travel leg) =>
        leg.Mode switch
        {
            TravelMode.Walk => Movement.Walked,
            TravelMode.Carry => Movement.Carried,
            TravelMode.Vehicle => Movement.Vehicle,
            TravelMode.Boat => Movement.Boat,
            TravelMode.Aircraft => Movement.Aircraft,
            _ => null,
        };

    /// <summary>Null where every leg was gone: the legs after these come next.</summary>
    private static ImmutableArray<Travel>? Next(ImmutableArray<Leg> legs, Queue<Movement> moves)
    {
        foreach (var leg in legs)
            switch (leg)
            {
                case Travel travel when How(travel) is { } how:
                    if (!Took(how, moves))
                        return [travel];
                    break;
                case Choice choice:
                    var ways = choice.Ways.Select(w => w.Legs).ToArray();
                    var taken = ways.FirstOrDefault(w => First(w).Any(t => moves.Contains(How(t)!.Value)));
                    if (taken.IsDefault)
                        return [.. ways.SelectMany(w => First(w)).DistinctBy(t => t.Mode)];
                    if (Next(taken, moves) is { } next)
                        return next;
                    break;
            }

        return null;
    }

    private static ImmutableArray<Travel> First(ImmutableArray<Leg> legs) => Next(legs, new()) ?? [];

    /// <summary>Turns and lifts in between are part of no leg.</summary>
    private static bool Took(Movement how, Queue<Movement> moves)
    {
        if (!moves.Contains(how))
            return false;
        while (moves.Dequeue() != how) { }
        return true;
    }
}
