using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>How a wait of some length turns out.</summary>
/// <param name="Wait">From the plan's start; null for waiting on, however long.</param>
/// <param name="Before">The chance before the limit asked about; null where none was.</param>
/// <param name="Late">Beaten in nine of ten trials; null where fewer arrive within 60 days.</param>
public sealed record WaitOutcome(Duration? Wait, ProbabilityEstimate? Before, Instant? Late);

/// <summary>How long to wait for what may come before setting out another way, found by trying.</summary>
/// <param name="Choice">What is waited for, and what else.</param>
/// <param name="Limit">Whose chance was made as good as can be; null: the time beaten in nine of ten trials was made as early.</param>
/// <param name="Best">The best of all waits tried; of equals the shortest.</param>
/// <param name="Matters">Whether it is better than going at once, and than waiting on, by more than the trials' own chance.</param>
/// <param name="Tried">Every wait tried, the shortest first.</param>
public sealed record DecisionTime(
    Choice Choice,
    Deadline? Limit,
    WaitOutcome Best,
    WaitOutcome GoNow,
    WaitOutcome WaitOn,
    bool Matters,
    ImmutableArray<WaitOutcome> Tried
)
{
    /// <summary>Waits longer than this are not looked at one by one (design).</summary>
    private static readonly Duration Longest = Duration.FromHours(24);

    private static readonly Duration Fine = Duration.FromMinutes(5);
    private const int Coarse = 24;

    /// <summary>A chance under this is no ground to decide by (design).</summary>
    private const double Hopeless = 0.05;

    /// <summary>For the first limit that some wait still reaches at times; if none is reached, for arrival itself.</summary>
    public static DecisionTime? Of(Simulation basis, IEnumerable<Deadline> limits, CancellationToken cancellation = default) =>
        Pieces(basis, limits)
            .LastOrDefault(_ =>
            {
                cancellation.ThrowIfCancellationRequested();
                return true;
            });

    /// <summary>The same in small pieces of work: nothing after each but the last.</summary>
    public static IEnumerable<DecisionTime?> Pieces(Simulation basis, IEnumerable<Deadline> limits)
    {
        foreach (var limit in limits.Where(l => l.At > basis.Plan.Plan.Start).Append(null))
        {
            DecisionTime? found = null;
            foreach (var piece in Pieces(basis, limit))
            {
                found = piece;
                if (piece is null)
                    yield return null;
            }

            if (found is null)
                yield break;
            if (limit is not null && found.Best.Before!.Value.Value < Hopeless)
                continue;
            yield return found;
            yield break;
        }
    }

    /// <summary>The plan with the best wait in it.</summary>
    public Plan Decided(Plan plan) =>
        plan with
        {
            Legs = [.. plan.Legs.Select(leg => leg.Slot == Choice.Slot ? Choice with { Until = Best.Wait } : leg)],
        };

    /// <summary>Coarse steps over as long as what is waited for may take, then 5 min about the best.</summary>
    /// <param name="basis">Has run; the search takes its luck and as many trials.</param>
    /// <returns>Null where the plan waits for nothing.</returns>
    public static DecisionTime? Of(Simulation basis, Deadline? limit, CancellationToken cancellation = default)
    {
        DecisionTime? found = null;
        foreach (var piece in Pieces(basis, limit))
        {
            cancellation.ThrowIfCancellationRequested();
            found = piece;
        }

        return found;
    }

    /// <summary>The same in small pieces of work: nothing after each but the last.</summary>
    public static IEnumerable<DecisionTime?> Pieces(Simulation basis, Deadline? limit)
    {
        var plan = basis.Plan.Plan;
        if (plan.Legs.OfType<Choice>().FirstOrDefault(c => c.Kind == ChoiceKind.Until) is not { } choice)
            yield break;
        var tried = new SortedDictionary<Duration, Trial>();
        var forever = Duration.MaxValue;
        var step = Duration.Max(Fine, Fine * Math.Ceiling(Range(basis, choice) / Fine / Coarse));
        foreach (var wait in Enumerable.Range(0, Coarse + 1).Select(i => step * i).Append(forever))
        {
            tried[wait] = Try(basis, choice, wait == forever ? null : wait, limit);
            yield return null;
        }

        var near = Finest(tried);
        if (near != forever)
            for (var wait = Duration.Max(Duration.Zero, near - step); wait <= near + step; wait += Fine)
                if (!tried.ContainsKey(wait))
                {
                    tried[wait] = Try(basis, choice, wait, limit);
                    yield return null;
                }

        var (best, now, on) = (tried[Finest(tried)], tried[Duration.Zero], tried[forever]);
        yield return new(
            choice,
            limit,
            best.Outcome,
            now.Outcome,
            on.Outcome,
            Better(best, now) && Better(best, on),
            [.. tried.Values.Select(t => t.Outcome)]
        );
    }

    private static Trial Try(Simulation basis, Choice choice, Duration? wait, Deadline? limit)
    {
        var plan = basis.Plan.Plan;
        var changed = plan with { Legs = [.. plan.Legs.Select(leg => leg.Slot == choice.Slot ? choice with { Until = wait } : leg)] };
        var ran = new Simulation(
            CompiledPlan.Of(changed, basis.Plan.Darkness, basis.Plan.SoFar),
            basis.Rng,
            SamplingLimits.Exactly(basis.Done)
        ).Run();
        var care = ran.SecondsToCare.ToArray();
        var sorted = care.ToArray();
        Array.Sort(sorted);
        var late = QuantileEstimate.Of(sorted, 0.9).Value;
        var before = limit is { } by ? Simulation.Before(sorted, (by.At - plan.Start).TotalSeconds) : (ProbabilityEstimate?)null;
        return new(
            new(wait, before, double.IsFinite(late) ? plan.Start + Duration.FromSeconds(late) : null),
            before?.Value ?? -late,
            [
                .. care.Select(c =>
                    limit is { } d ? (c < (d.At - plan.Start).TotalSeconds ? 1.0 : 0) : -Math.Min(c, DarkClock.Horizon.TotalSeconds)
                ),
            ]
        );
    }

    private static Duration Finest(SortedDictionary<Duration, Trial> tried) => tried.MaxBy(t => t.Value.Score).Key;

    private static bool Better(Trial one, Trial other) =>
        PairedDifference.Mean([.. one.Each.Zip(other.Each, (a, b) => a - b)]) is { } by && by.Value > 2 * by.StandardError;

    /// <summary>As long as it may take what is waited for to be there, in nineteen of twenty trials in which it comes.</summary>
    private static Duration Range(Simulation basis, Choice choice)
    {
        var place = basis.Plan.Places.ToList().FindIndex(p => p.Path == End(basis.Plan, choice));
        var came = basis.SecondsTo(place).ToArray().Where(double.IsFinite).Order().ToArray();
        return came.Length == 0
            ? Duration.FromHours(1)
            : Duration.Min(Longest, Duration.FromSeconds(Math.Max(60, QuantileEstimate.At(came, 0.95))));
    }

    private static string End(CompiledPlan plan, Choice choice) =>
        FormattableString.Invariant($"{plan.Plan.Legs.IndexOf(choice) + 1}.1.{choice.Ways[0].Legs.Length}");

    private sealed record Trial(WaitOutcome Outcome, double Score, double[] Each);
}
