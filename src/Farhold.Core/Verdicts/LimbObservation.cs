using NodaTime;

namespace Farhold.Verdicts;

/// <summary>The watch over a limb whose tourniquet has given way.</summary>
public static class LimbObservation
{
    public static ObservedLimb Of(LimbClock clock, State state, Instant now, AttemptProgress? progress)
    {
        var loosened = TourniquetLife.On(clock.Limb, state, now).SelectMany(l => l.Loosened).MaxBy(l => l.When.Latest)!.When;
        var looks = Looks(clock.Limb, state, now).Where(d => !d.When.SurelyBefore(loosened)).ToArray();
        var again = looks
            .GroupBy(d => d.As<Payload.BleedingChecked>().Wound)
            .Select(w => w.Last())
            .FirstOrDefault(d => d.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active);
        var bleeding = looks.Length == 0 ? Truth.Unknown : Kleene.Of(again is not null);
        return new(clock, loosened, bleeding, again?.When, progress);
    }

    /// <summary>When to look next, or null where the plan says to look without a break.</summary>
    /// <param name="until">End of the unbroken watch where the answer is null.</param>
    public static Instant? NextLook(ObservedLimb limb, ObservationPlan plan, State state, Instant now, out Instant until)
    {
        var period = Period(limb, plan, now);
        until = limb.Loosened.Latest + (period.Until ?? Duration.Zero);
        if (period.Every is not { } every)
            return null;
        var moved = plan.AfterMove is null ? null : MovedSince(limb, state, now);
        if (moved is { } at && now < at + plan.AfterMove!.Value)
        {
            until = at + plan.AfterMove.Value;
            return null;
        }

        var last = Looks(limb.Limb, state, now).LastOrDefault()?.When.Earliest ?? Instant.MinValue;
        var next = Instant.Max(last, limb.Loosened.Earliest) + every;
        return moved is { } unseen && last <= unseen ? Instant.Min(next, unseen) : next;
    }

    /// <summary>How often to look, this long after it was loosened at the least; null: without a break.</summary>
    public static Duration? Every(ObservedLimb limb, ObservationPlan plan, Instant now) => Period(limb, plan, now).Every;

    /// <summary>The casualty was moved after the limb was loosened, and nobody has surely looked at it since.</summary>
    public static bool IsUnseenAfterMove(ObservedLimb limb, ObservationPlan plan, State state, Instant now) =>
        plan.AfterMove is not null
        && MovedSince(limb, state, now) is { } moved
        && !(Looks(limb.Limb, state, now).LastOrDefault()?.When.Earliest > moved);

    private static ObservationPeriod Period(ObservedLimb limb, ObservationPlan plan, Instant now)
    {
        var since = limb.Loosened.Until(now).Min;
        return plan.Periods.First(p => p.Until is null || since < p.Until);
    }

    private static Instant? MovedSince(ObservedLimb limb, State state, Instant now) =>
        Moves.Last(state, now) is { } moved && moved > limb.Loosened.Earliest ? moved : null;

    private static IEnumerable<Dated> Looks(Limb limb, State state, Instant now)
    {
        var wounds = LimbWounds.Treated(limb, state, now);
        return state.Of(Kind.BleedingChecked).Where(d => d.When.Earliest <= now && wounds.Contains(d.As<Payload.BleedingChecked>().Wound));
    }
}
