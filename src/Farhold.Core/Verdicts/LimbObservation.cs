using NodaTime;

namespace Farhold.Verdicts;

/// <summary>The watch over a limb whose tourniquet has given way.</summary>
public static class LimbObservation
{
    public static ObservedLimb Of(LimbClock clock, State state, Instant now, AttemptProgress? progress)
    {
        var loosened = TourniquetLife.On(clock.Limb, state, now)
            .SelectMany(l => l.Loosened).MaxBy(l => l.When.Latest)!.When;
        var looks = Looks(clock.Limb, state, now).Where(d => !d.When.SurelyBefore(loosened)).ToArray();
        var again = looks.GroupBy(d => d.As<Payload.BleedingChecked>().Wound).Select(w => w.Last())
            .FirstOrDefault(d => d.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active);
        var bleeding = looks.Length == 0 ? Truth.Unknown : Kleene.Of(again is not null);
        return new(clock, loosened, bleeding, again?.When, progress);
    }

    /// <summary>When to look next, or null where the plan says to look without a break.</summary>
    /// <param name="until">End of the unbroken watch where the answer is null.</param>
    public static Instant? NextLook(ObservedLimb limb, ObservationPlan plan, State state, Instant now, out Instant until)
    {
        var since = limb.Loosened.Until(now).Min;
        var period = plan.Periods.First(p => p.Until is null || since < p.Until);
        until = limb.Loosened.Latest + (period.Until ?? Duration.Zero);
        if (period.Every is not { } every)
            return null;
        if (plan.AfterMove is { } still && LastMoved(state, now) is { } moved && moved > limb.Loosened.Earliest && now < moved + still)
        {
            until = moved + still;
            return null;
        }

        var last = Looks(limb.Limb, state, now).LastOrDefault()?.When.Earliest ?? Instant.MinValue;
        return Instant.Max(last, limb.Loosened.Earliest) + every;
    }

    private static Instant? LastMoved(State state, Instant now) => state.Of(Kind.CasualtyMoved)
        .Where(m => m.When.Earliest <= now && m.As<Payload.CasualtyMoved>().Phase == MovePhase.Moved)
        .Select(m => (Instant?)Instant.Min(m.When.Latest, now)).Max();

    private static IEnumerable<Dated> Looks(Limb limb, State state, Instant now)
    {
        var wounds = LimbWounds.Treated(limb, state, now);
        return state.Of(Kind.BleedingChecked).Where(d =>
            d.When.Earliest <= now && wounds.Contains(d.As<Payload.BleedingChecked>().Wound));
    }
}
