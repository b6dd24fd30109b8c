using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>One of several plans set side by side.</summary>
/// <param name="Earliest">Trials in which it alone arrives first.</param>
/// <param name="None">Trials in which it does not arrive within 60 days.</param>
/// <param name="LaterSeconds">Mean delay against the first plan, where both arrive.</param>
/// <param name="EarlierThanFirst">Trials in which it arrives before the first plan does; null for that plan itself.</param>
public sealed record PlanBeside(
    string Name,
    Plan Plan,
    ProbabilityEstimate Earliest,
    ProbabilityEstimate None,
    ImmutableArray<ArrivalQuantile> Quantiles,
    PairedDifference LaterSeconds,
    ProbabilityEstimate? EarlierThanFirst,
    ImmutableArray<DeadlineChance> Deadlines
);

/// <summary>Two to four plans on the same luck: which arrives first how often, by how much, and before which limit.</summary>
/// <param name="Same">Trials in which two or more arrive first together.</param>
/// <param name="None">Trials in which none arrives. With every <see cref="PlanBeside.Earliest"/> they add up to all.</param>
public sealed record SideBySide(ImmutableArray<PlanBeside> Plans, ProbabilityEstimate Same, ProbabilityEstimate None)
{
    public const int Fewest = 2,
        Most = 4;

    /// <summary>
    /// The same plans with the same luck for what they share: a leg or choice that two plans both have, by name and kind, draws the same
    /// random numbers in both.
    /// </summary>
    /// <exception cref="ArgumentException">Not two to four plans, or they hold more stages than there are random numbers for.</exception>
    public static ImmutableArray<Plan> Aligned(IReadOnlyList<Plan> plans)
    {
        if (plans.Count is < Fewest or > Most)
            throw new ArgumentException($"Side by side stand {Fewest} to {Most} plans.", nameof(plans));
        var known = new Dictionary<(string, string, int), int>();
        var aligned = ImmutableArray.CreateBuilder<Plan>();
        var next = 1;
        foreach (var plan in plans)
        {
            var seen = new Dictionary<(string, string), int>();
            aligned.Add(
                plan.Mapped(leg =>
                {
                    var (kind, name) = Named(leg);
                    var nth = seen[(kind, name)] = seen.GetValueOrDefault((kind, name)) + 1;
                    if (!known.TryGetValue((kind, name, nth), out var slot))
                        known[(kind, name, nth)] = slot = next++;
                    return leg with { Slot = slot };
                })
            );
        }

        return next <= PlanReader.MostLegs + 1
            ? aligned.ToImmutable()
            : throw new ArgumentException($"Together the plans have more than {PlanReader.MostLegs} stages.", nameof(plans));
    }

    /// <param name="ran">As many trials of each, on the same generator.</param>
    /// <exception cref="ArgumentException">They did not run the same trials.</exception>
    public static SideBySide Of(IReadOnlyList<Simulation> ran, IEnumerable<Deadline> deadlines)
    {
        if (ran.Any(s => s.Done != ran[0].Done || s.Rng != ran[0].Rng) || ran[0].Done == 0)
            throw new ArgumentException("All must have run the same trials.", nameof(ran));
        var zero = ran[0].Plan.Plan.Start;
        var care = ran.Select(s => Since(s, zero)).ToArray();
        var (first, same, none) = (new int[ran.Count], 0, 0);
        for (var t = 0; t < ran[0].Done; t++)
        {
            var best = care.Min(c => c[t]);
            if (!double.IsFinite(best))
                none++;
            else if (care.Count(c => c[t] == best) > 1)
                same++;
            else
                first[Array.FindIndex(care, c => c[t] == best)]++;
        }

        ImmutableArray<Deadline> asked = [.. deadlines];
        var all = ran[0].Done;
        return new(
            [
                .. ran.Select(
                    (s, i) =>
                    {
                        var sorted = care[i].ToArray();
                        Array.Sort(sorted);
                        return new PlanBeside(
                            s.Plan.Plan.Title ?? s.Plan.Plan.Id ?? PlanTexts.Plan(i + 1),
                            s.Plan.Plan,
                            new(first[i], all),
                            new(sorted.Count(double.IsInfinity), all),
                            Outlook.Quantile(sorted, zero),
                            PairedDifference.Mean([.. care[0].Zip(care[i], (a, b) => b - a).Where(double.IsFinite)]),
                            i == 0 ? null : new(care[0].Zip(care[i]).Count(pair => pair.Second < pair.First), all),
                            [.. asked.Select(d => new DeadlineChance(d, Simulation.Before(sorted, (d.At - zero).TotalSeconds)))]
                        );
                    }
                ),
            ],
            new(same, all),
            new(none, all)
        );
    }

    private static double[] Since(Simulation simulation, Instant zero)
    {
        var shift = (simulation.Plan.Plan.Start - zero).TotalSeconds;
        return [.. simulation.SecondsToCare.ToArray().Select(s => s + shift)];
    }

    private static (string Kind, string Name) Named(Leg leg) =>
        leg switch
        {
            Travel travel => (
                travel.Mode.ToString(),
                travel.Name
                    ?? (travel.Extent is Measured m ? FormattableString.Invariant($"{m.Track}{m.Stretch}") : travel.Extent.ToString())
            ),
            Choice choice => (choice.Kind.ToString(), choice.Name ?? string.Join('|', choice.Ways.Select(w => w.Name))),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
