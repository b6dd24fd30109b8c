using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A change to the plan worth asking about.</summary>
/// <param name="Change">The changed plan; nothing where the change does not apply.</param>
public sealed record WhatIf(string Id, string What, Func<Plan, Plan?> Change)
{
    /// <summary>Whether it can be asked of a plan that somebody has begun.</summary>
    private bool OfPlansUnderWay { get; init; } = true;

    /// <summary>The party waits first; what is given from the plan's start, such as when a river rises, waits for nobody.</summary>
    public static WhatIf LaterStart(Duration by) =>
        new(
            "later-start",
            PlanTexts.LaterStart(ArrivalWords.Length(by)),
            plan =>
                plan with
                {
                    Legs = plan.Legs.Insert(
                        0,
                        new Travel(
                            plan.NextSlot(),
                            null,
                            TravelMode.Wait,
                            new ThreePoint(by, by, by),
                            DarkRule.Allowed,
                            FlightWindow.AnyHour,
                            null
                        )
                    ),
                }
        )
        {
            OfPlansUnderWay = false,
        };

    public static WhatIf MoreBearers(int more) =>
        new(
            "more-bearers",
            PlanTexts.MoreBearers(more),
            plan =>
                Differing(
                    plan,
                    plan.Mapped(leg =>
                        leg is Travel { Mode: TravelMode.Carry, Extent: Measured { Bearers: { } now } m } carry
                            ? carry with
                            {
                                Extent = m with { Bearers = now + more },
                            }
                            : leg
                    )
                )
        );

    /// <summary>Every way by air is struck; nothing if the plan then has no other way.</summary>
    public static WhatIf NoAircraft => new("no-aircraft", PlanTexts.NoAircraft, WithoutAircraft);

    public static WhatIf GoOnInTheDark =>
        new(
            "dark-allowed",
            PlanTexts.GoOnInTheDark,
            plan => Differing(plan, plan.Mapped(leg => leg is Travel { Dark: DarkRule.Stop } t ? t with { Dark = DarkRule.Allowed } : leg))
        );

    public static WhatIf HaltInTheDark =>
        new(
            "dark-stop",
            PlanTexts.HaltInTheDark,
            plan =>
                Differing(
                    plan,
                    plan.Mapped(leg =>
                        leg is Travel { Dark: DarkRule.Allowed, Mode: TravelMode.Walk or TravelMode.Carry } t
                            ? t with
                            {
                                Dark = DarkRule.Stop,
                            }
                            : leg
                    )
                )
        );

    public static WhatIf Correlated(double rho) =>
        new(
            FormattableString.Invariant($"correlation-{rho:0.##}"),
            rho == 0 ? PlanTexts.DelaysApart
                : rho == 1 ? PlanTexts.DelaysTogether
                : PlanTexts.DelaysCorrelated(Say.Number(rho)),
            plan => plan.Correlation == rho ? null : plan with { Correlation = rho }
        );

    public static WhatIf Weathered(double rho) =>
        new(
            FormattableString.Invariant($"weather-{rho:0.##}"),
            rho == 0 ? PlanTexts.WeatherApart : PlanTexts.WeatherTogether,
            plan =>
                plan.Weather == rho || plan.All.OfType<Travel>().All(leg => leg.Mode != TravelMode.Aircraft && leg.Hold is null)
                    ? null
                    : plan with
                    {
                        Weather = rho,
                    }
        );

    /// <summary>What people usually want to know; those that don't apply answer nothing.</summary>
    public static ImmutableArray<WhatIf> Usual =>
        [
            LaterStart(Duration.FromHours(1)),
            MoreBearers(2),
            NoAircraft,
            GoOnInTheDark,
            HaltInTheDark,
            Correlated(0),
            Correlated(1),
            Weathered(0),
            Weathered(2 * Plan.UsualWeather),
        ];

    /// <summary>The changed plan on the same luck and as many trials, ready to run; nothing where the change does not apply.</summary>
    public Simulation? Start(Simulation basis) =>
        (OfPlansUnderWay || basis.Plan.SoFar is null) && Change(basis.Plan.Plan) is { } changed && Lit(changed, basis.Plan.Darkness)
            ? new(CompiledPlan.Of(changed, basis.Plan.Darkness, basis.Plan.SoFar), basis.Rng, SamplingLimits.Exactly(basis.Done))
            : null;

    private static bool Lit(Plan plan, Darkness? darkness) =>
        darkness is null ? !plan.NeedsLight : darkness.KnownUntil >= plan.Start + Duration.FromDays(1);

    private static Plan? Differing(Plan before, Plan after) =>
        before.All.OfType<Travel>().SequenceEqual(after.All.OfType<Travel>()) ? null : after;

    private static Plan? WithoutAircraft(Plan plan)
    {
        if (!plan.All.OfType<Travel>().Any(leg => leg.Mode == TravelMode.Aircraft))
            return null;
        var grounded = plan.Mapped(leg => leg is Choice { Kind: not ChoiceKind.All } choice ? Grounded(choice) : leg);
        return Flies(grounded.Legs) ? null : grounded;
    }

    // The struck way keeps its place at probability 0, so that the others keep their luck. What is waited for or tried is struck with what
    // goes on from there.
    private static Choice Grounded(Choice choice)
    {
        if (choice.IsElse)
            return !Flies(choice.Ways[0].Legs.AddRange(choice.Ways[1].Legs)) || choice.Ways[2].Legs.IsEmpty || Flies(choice.Ways[2].Legs)
                ? choice
                : choice with
                {
                    Ways = [new(choice.Ways[0].Name, 0, []), new(choice.Ways[1].Name, 0, []), choice.Ways[2]],
                };
        var kept = choice.Ways.Sum(way => Flies(way.Legs) ? 0 : way.Probability);
        var some = choice.Ways.Any(way => Flies(way.Legs));
        return !some || kept <= 0
            ? choice
            : choice with
            {
                Ways =
                [
                    .. choice.Ways.Select(way =>
                        Flies(way.Legs) ? new Way(way.Name, 0, [])
                        : choice.Kind == ChoiceKind.Branches ? way with { Probability = way.Probability / kept }
                        : way
                    ),
                ],
            };
    }

    private static bool Flies(ImmutableArray<Leg> legs) =>
        legs.SelectMany(Leg.Inside).OfType<Travel>().Any(leg => leg.Mode == TravelMode.Aircraft);
}

/// <summary>A difference between two plans on the same luck, with its standard error.</summary>
public readonly record struct PairedDifference(double Value, double StandardError)
{
    /// <summary>Not a number from fewer than two differences.</summary>
    internal static PairedDifference Mean(double[] differences)
    {
        if (differences.Length < 2)
            return new(double.NaN, double.NaN);
        var mean = differences.Average();
        return new(mean, Math.Sqrt(differences.Sum(d => (d - mean) * (d - mean)) / (differences.Length - 1) / differences.Length));
    }
}

/// <summary>What a change does.</summary>
/// <param name="Quantiles">Arrival under the change.</param>
/// <param name="LaterSeconds">Mean delay against the plan, negative if sooner, over trials in which both arrive.</param>
/// <param name="Cases">Which way is then first how often.</param>
/// <param name="Deadlines">Chances under the change, and how much they differ.</param>
public sealed record WhatIfAnswer(
    string Id,
    string What,
    ImmutableArray<ArrivalQuantile> Quantiles,
    PairedDifference LaterSeconds,
    ByCase Cases,
    ImmutableArray<(DeadlineChance Chance, PairedDifference Difference)> Deadlines
)
{
    /// <exception cref="ArgumentException">The two did not run as many trials.</exception>
    public static WhatIfAnswer Of(WhatIf asked, Simulation basis, Simulation changed, IEnumerable<Deadline> deadlines)
    {
        if (basis.Done != changed.Done || basis.Rng != changed.Rng)
            throw new ArgumentException("Both must run the same trials.", nameof(changed));
        var (before, after) = (basis.SecondsToCare.ToArray(), changed.SecondsToCare.ToArray());
        var shift = (changed.Plan.Plan.Start - basis.Plan.Plan.Start).TotalSeconds;
        var delays = before.Zip(after, (b, a) => a + shift - b).Where(double.IsFinite).ToArray();
        var sorted = after.ToArray();
        Array.Sort(sorted);
        return new(
            asked.Id,
            asked.What,
            Outlook.Quantile(sorted, changed.Plan.Plan.Start),
            PairedDifference.Mean(delays),
            ByCase.Of(changed),
            [.. deadlines.Select(d => Chance(d, before, after, (d.At - basis.Plan.Plan.Start).TotalSeconds, shift))]
        );
    }

    private static (DeadlineChance, PairedDifference) Chance(
        Deadline deadline,
        double[] before,
        double[] after,
        double limit,
        double shift
    ) =>
        (
            new(deadline, new(after.Count(a => a + shift < limit), after.Length)),
            PairedDifference.Mean([.. before.Zip(after, (b, a) => (a + shift < limit ? 1.0 : 0) - (b < limit ? 1 : 0))])
        );
}
