using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A moment that matters, such as a limb's limit.</summary>
public sealed record Deadline(string Id, Instant At);

/// <summary>When a share of the trials had arrived, with its 95 % interval.</summary>
/// <param name="At">Null where that share does not arrive within 60 days; so for the ends of the interval.</param>
public sealed record ArrivalQuantile(double P, Instant? At, Instant? Low, Instant? High);

/// <summary>The end of one leg.</summary>
/// <param name="Went">Trials that went this way. Of a race, every way that comes counts.</param>
/// <param name="Quantiles">Of those trials; empty where none went.</param>
/// <param name="Dark">Of those trials, arriving in the dark; null where darkness is unknown.</param>
public sealed record LegArrival(
    LegPlace Place,
    ProbabilityEstimate Went,
    ImmutableArray<ArrivalQuantile> Quantiles,
    ProbabilityEstimate? Dark
);

/// <param name="Before">The chance of reaching higher care before it.</param>
public sealed record DeadlineChance(Deadline Deadline, ProbabilityEstimate Before);

/// <summary>Everything the trials say.</summary>
/// <param name="Quantiles">Arrival at higher care at 5, 10, 25, 50, 75, 90 and 95 %.</param>
/// <param name="ByHour">Chance of having arrived by then, at even steps of an hour or more: a gate makes two humps no quantile
/// shows.</param>
/// <param name="Cases">Which way is first how often, and when in each case.</param>
/// <param name="Drivers">What drives the spread, most first.</param>
/// <param name="Cautions">Sentences to be shown with any of it.</param>
public sealed record Outlook(
    Plan Plan,
    Rng Rng,
    int Trials,
    ImmutableArray<ArrivalQuantile> Quantiles,
    ImmutableArray<(Instant At, double Arrived)> ByHour,
    ImmutableArray<DeadlineChance> Deadlines,
    ImmutableArray<LegArrival> Legs,
    ByCase Cases,
    ImmutableArray<Driver> Drivers,
    ImmutableArray<Basis> Rests,
    ImmutableArray<string> Cautions
)
{
    private static readonly ImmutableArray<double> Levels = [0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95];

    /// <summary>The middle says nothing: several ways make several humps, or hardly a trial arrives near it.</summary>
    public bool MiddleIsVoid { get; init; }

    public ArrivalQuantile At(double p) => Quantiles.First(q => q.P == p);

    /// <exception cref="InvalidOperationException">No trial has run.</exception>
    public static Outlook Of(Simulation simulation, IEnumerable<Deadline> deadlines) => Pieces(simulation, deadlines).Last()!;

    /// <summary>The same in small pieces of work: nothing after each but the last, so that a screen can breathe between them.</summary>
    /// <exception cref="InvalidOperationException">No trial has run.</exception>
    public static IEnumerable<Outlook?> Pieces(Simulation simulation, IEnumerable<Deadline> deadlines)
    {
        if (simulation.Done == 0)
            throw new InvalidOperationException("No trial has run yet.");
        var plan = simulation.Plan.Plan;
        var sorted = simulation.SecondsToCare.ToArray();
        Array.Sort(sorted);
        yield return null;
        var legs = ImmutableArray.CreateBuilder<LegArrival>();
        for (var place = 0; place < simulation.Plan.Places.Length; place++)
        {
            legs.Add(Leg(simulation, place));
            yield return null;
        }

        var cases = ByCase.Of(simulation);
        yield return null;
        var drivers = new List<Driver>();
        foreach (var draw in simulation.Plan.Draws)
        {
            drivers.Add(Farhold.WayOut.Plans.Drivers.Of(simulation, draw));
            yield return null;
        }

        yield return new(
            plan,
            simulation.Rng,
            simulation.Done,
            Quantile(sorted, plan.Start),
            Hourly(sorted, plan.Start),
            [.. deadlines.Select(d => new DeadlineChance(d, Simulation.Before(sorted, (d.At - plan.Start).TotalSeconds)))],
            legs.ToImmutable(),
            cases,
            Farhold.WayOut.Plans.Drivers.Ordered(drivers),
            simulation.Plan.Rests,
            Warned(simulation, sorted)
        )
        {
            MiddleIsVoid = Void(sorted) || cases.Ways.Count(w => 10 * w.Share.Hits >= w.Share.Trials) > 1,
        };
    }

    /// <summary>
    /// Of even arrivals, the tenth of the trials about the middle spans an eighth of the range from one in ten to nine in ten; where it
    /// spans a third, the middle lies in a gap (design).
    /// </summary>
    private static bool Void(double[] sorted)
    {
        var (early, middle, late) = (QuantileEstimate.At(sorted, 0.1), QuantileEstimate.At(sorted, 0.5), QuantileEstimate.At(sorted, 0.9));
        if (!double.IsFinite(middle))
            return false;
        var last = double.IsFinite(late) ? late : sorted.Last(double.IsFinite);
        return QuantileEstimate.At(sorted, 0.55) - QuantileEstimate.At(sorted, 0.45) > (last - early) / 3 && last - early > 60;
    }

    internal static ImmutableArray<ArrivalQuantile> Quantile(double[] sorted, Instant start) =>
        sorted.Length == 0 ? [] : [.. Levels.Select(p => Placed(QuantileEstimate.Of(sorted, p), start))];

    private static ArrivalQuantile Placed(QuantileEstimate q, Instant start) =>
        new(q.P, After(start, q.Value), After(start, q.Low), After(start, q.High));

    private static Instant? After(Instant start, double seconds) => double.IsFinite(seconds) ? start + Duration.FromSeconds(seconds) : null;

    private static LegArrival Leg(Simulation simulation, int place)
    {
        var seconds = simulation.SecondsTo(place).ToArray();
        var went = Array.FindAll(seconds, s => !double.IsNaN(s));
        var dark =
            simulation.Plan.Dark is { } clock && went.Length > 0
                ? new ProbabilityEstimate(went.Count(clock.IsDark), went.Length)
                : (ProbabilityEstimate?)null;
        Array.Sort(went);
        return new(simulation.Plan.Places[place], new(went.Length, seconds.Length), Quantile(went, simulation.Plan.Plan.Start), dark);
    }

    private static ImmutableArray<(Instant, double)> Hourly(double[] sorted, Instant start)
    {
        var last = sorted.LastOrDefault(double.IsFinite);
        var stepHours = Math.Max(1, (int)Math.Ceiling(last / 3600 / 96));
        var points = ImmutableArray.CreateBuilder<(Instant, double)>();
        for (var hours = stepHours; points.Count == 0 || points[^1].Item2 < 1 && (hours - stepHours) * 3600.0 < last; hours += stepHours)
            points.Add((start + Duration.FromHours(hours), Simulation.Before(sorted, hours * 3600.0).Value));
        return points.ToImmutable();
    }

    /// <summary>Where parties stop that more likely get through; the others are not feasible, which is said before.</summary>
    private static IEnumerable<string> Stops(Simulation simulation) =>
        ByCase
            .Stopped(simulation)
            .Where(s => 2 * s.Of.Hits <= s.Of.Trials && s.Of.Value >= 0.01)
            .Select(s => PlanTexts.StopsIn(s.Place.Label, ArrivalWords.Chance(s.Of), s.Why));

    private static ImmutableArray<string> Warned(Simulation simulation, double[] sorted)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        var (plan, darkness) = (simulation.Plan.Plan, simulation.Plan.Darkness);
        if (darkness is null)
            cautions.Add(PlanTexts.LightUnknown);
        else if (sorted[^1] > (darkness.KnownUntil - plan.Start).TotalSeconds)
            cautions.Add(PlanTexts.BeyondDarkness);
        if (!double.IsFinite(sorted[^1]))
            cautions.AddRange(Stops(simulation));
        if (plan.All.OfType<Travel>().Any(leg => leg is { Mode: TravelMode.Carry, Extent: Measured { Bearers: null } }))
            cautions.Add(PlanTexts.BearersUnknown);
        if (simulation.Plan.Rests.Any(rest => rest.Mark is Evidence.Assumption or Evidence.Memory))
            cautions.Add(PlanTexts.OnAssumptions);
        return cautions.ToImmutable();
    }
}
