using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>The trials in which one way is the first to arrive, or the one taken.</summary>
/// <param name="Arrival">At higher care, of those trials; empty where there are none.</param>
public sealed record WayCase(string Name, ProbabilityEstimate Share, ImmutableArray<ArrivalQuantile> Arrival)
{
    public ArrivalQuantile? At(double p) => Arrival.FirstOrDefault(q => q.P == p);
}

/// <summary>A stage that is not counted on, and why.</summary>
/// <param name="Of">Trials in which the party gets as far as this stage and no further, of all that get as far.</param>
public sealed record NotFeasible(LegPlace Place, ProbabilityEstimate Of, string Why);

/// <summary>The answer as a leader needs it: which way is first how often, and when in each case.</summary>
/// <param name="Choice">What is decided between; null where the plan is one way.</param>
/// <param name="Ways">In the order written. Their shares and <paramref name="None"/> add up to all trials.</param>
/// <param name="None">Nothing arrives within 60 days.</param>
/// <param name="NotFeasible">Stages at which a party more likely stops than not.</param>
public sealed record ByCase(
    LegPlace? Choice,
    ImmutableArray<WayCase> Ways,
    ProbabilityEstimate None,
    ImmutableArray<NotFeasible> NotFeasible
)
{
    /// <summary>First in most trials; null where mostly nothing comes.</summary>
    public WayCase? Leader =>
        Ways.Where(w => w.Share.Hits > 0).MaxBy(w => w.Share.Hits) is { } most && most.Share.Hits >= None.Hits ? most : null;

    /// <exception cref="InvalidOperationException">No trial has run.</exception>
    public static ByCase Of(Simulation simulation)
    {
        if (simulation.Done == 0)
            throw new InvalidOperationException("No trial has run yet.");
        var plan = simulation.Plan.Plan;
        var arrivals = simulation.SecondsToCare;
        var none = 0;
        foreach (var at in arrivals)
            none += double.IsFinite(at) ? 0 : 1;
        var (choice, place) = Deciding(simulation.Plan);
        ImmutableArray<WayCase> ways = choice is null
            ? [Case(plan.Title ?? PlanTexts.ThisWay, arrivals.ToArray(), plan.Start)]
            : Split(simulation, choice, simulation.Plan.Places[place].Path);
        return new(
            choice is null ? null : simulation.Plan.Places[place],
            ways,
            new(none, simulation.Done),
            [.. Stopped(simulation).Where(s => 2 * s.Of.Hits > s.Of.Trials)]
        );
    }

    /// <summary>Which way was first in each trial, by its place among the ways; −1 where none arrived.</summary>
    internal static int[] Winners(Simulation simulation, Choice choice, string path)
    {
        var ends = choice.Ways.Select((way, w) => Place(simulation.Plan, $"{path}.{w + 1}.{way.Legs.Length}")).ToArray();
        var winners = new int[simulation.Done];
        var care = simulation.SecondsToCare;
        for (var t = 0; t < winners.Length; t++)
        {
            winners[t] = -1;
            if (!double.IsFinite(care[t]))
                continue;
            if (choice.IsElse)
            {
                winners[t] = ends[2] < 0 || double.IsNaN(simulation.SecondsTo(ends[2])[t]) ? 0 : 2;
                continue;
            }

            var best = double.PositiveInfinity;
            for (var w = 0; w < ends.Length; w++)
            {
                var at = ends[w] < 0 ? double.NaN : simulation.SecondsTo(ends[w])[t];
                if (!(at < best))
                    continue;
                (winners[t], best) = (w, at);
            }

            // A branch without stages leaves no trace, and is taken where no other is.
            if (winners[t] < 0)
                winners[t] = Array.FindIndex(ends, e => e < 0);
        }

        return winners;
    }

    /// <summary>The first race among the legs; without one the first branching; else none.</summary>
    internal static (Choice? Choice, int Place) Deciding(CompiledPlan plan)
    {
        var all = plan.Plan.All.ToArray();
        foreach (var kind in (ReadOnlySpan<ChoiceKind>)[ChoiceKind.First, ChoiceKind.Until, ChoiceKind.Try, ChoiceKind.Branches])
            for (var place = 0; place < all.Length; place++)
                if (all[place] is Choice choice && choice.Kind == kind && plan.Plan.Legs.Contains(choice))
                    return (choice, place);
        return (null, -1);
    }

    private static ImmutableArray<WayCase> Split(Simulation simulation, Choice choice, string path)
    {
        var winners = Winners(simulation, choice, path);
        var care = simulation.SecondsToCare.ToArray();
        return
        [
            .. choice
                .Ways.Select((way, w) => (way, w))
                .Where(x => !choice.IsElse || x.w == 0 || (x.w == 2 && !x.way.Legs.IsEmpty))
                .Select(x =>
                    Case(
                        x.way.Name ?? (choice.IsElse ? PlanCompiler.Title(x.way, x.w) : PlanTexts.Way(x.w + 1)),
                        [.. care.Select((at, t) => winners[t] == x.w ? at : double.PositiveInfinity)],
                        simulation.Plan.Plan.Start
                    )
                ),
        ];
    }

    private static WayCase Case(string name, double[] seconds, Instant start)
    {
        var mine = Array.FindAll(seconds, double.IsFinite);
        Array.Sort(mine);
        return new(name, new(mine.Length, seconds.Length), Outlook.Quantile(mine, start));
    }

    /// <summary>Every stage at which some trial stops.</summary>
    internal static IEnumerable<NotFeasible> Stopped(Simulation simulation)
    {
        var legs = simulation.Plan.Plan.All.ToArray();
        for (var place = 0; place < legs.Length; place++)
        {
            if (legs[place] is not Travel leg)
                continue;
            var (came, stopped) = (0, 0);
            var before = simulation.Plan.Before(place);
            var at = simulation.SecondsTo(place);
            for (var t = 0; t < at.Length; t++)
            {
                if (double.IsNaN(at[t]) || (before >= 0 && !double.IsFinite(simulation.SecondsTo(before)[t])))
                    continue;
                came++;
                stopped += double.IsFinite(at[t]) ? 0 : 1;
            }

            if (stopped > 0)
                yield return new(simulation.Plan.Places[place], new(stopped, came), Why(leg));
        }
    }

    private static string Why(Travel leg) =>
        leg switch
        {
            { Mode: TravelMode.Aircraft, Window: FlightWindow.Daylight } => PlanTexts.NoDaylightToFly,
            { Mode: TravelMode.Carry, Extent: Measured { Stretch: { } stretch } m } => PlanTexts.BearersSpent(
                m.Bearers ?? LitterTeam.Full,
                ArrivalWords.Length(Work(m, stretch)),
                ArrivalWords.Length(Duration.FromSeconds(BearerLimits.LastSeconds(All(m))))
            ),
            { Dark: DarkRule.Stop } => PlanTexts.NoDaylight,
            _ => PlanTexts.TooLong,
        };

    private static int All(Measured m) => (m.Bearers ?? LitterTeam.Full) + (m.Joining?.Bearers ?? 0);

    private static Duration Work(Measured m, Stretch stretch) =>
        Duration.FromSeconds(
            new LitterCarry(stretch, m.Surface ?? Surfaces.Path, All(m), m.Wheel, m.SnowCm) is { EquivalentKm: > 0 } carry
                ? carry.TimeSeconds().Median
                : 0
        );

    private static int Place(CompiledPlan plan, string path)
    {
        for (var place = 0; place < plan.Places.Length; place++)
            if (plan.Places[place].Path == path)
                return place;
        return -1;
    }
}
