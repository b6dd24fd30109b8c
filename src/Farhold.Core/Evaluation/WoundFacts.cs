using NodaTime;

namespace Farhold.Evaluation;

/// <summary>What the wounds of the record say beside the decision: what a drug or a prompt hangs on.</summary>
internal static class WoundFacts
{
    /// <summary>A wound that goes through the skin; open where nobody said whether it does.</summary>
    public static Truth Open(State state, Instant now) =>
        Any(
            state,
            now,
            w =>
                w.Nature switch
                {
                    WoundNature.Bleeding or WoundNature.Amputation or WoundNature.PartialAmputation => Truth.Met,
                    WoundNature.Burn => Truth.NotMet,
                    _ when Noted(w, "closed") => Truth.NotMet,
                    _ when Noted(w, "open") => Truth.Met,
                    _ => Truth.Unknown,
                }
        );

    public static bool Fracture(State state, Instant now) =>
        Any(state, now, w => Kleene.Of(w.Nature == WoundNature.Fracture || Noted(w, "fracture") || Noted(w, "broken"))) == Truth.Met;

    public static bool Eye(State state, Instant now) =>
        Any(state, now, w => Kleene.Of(w.Region == BodyRegion.Head && (Noted(w, "eye ") || Ends(w, "eye") || Noted(w, "eyeball"))))
        == Truth.Met;

    public static bool Burn(State state, Instant now) => Any(state, now, w => Kleene.Of(w.Nature == WoundNature.Burn)) == Truth.Met;

    public static bool Amputation(State state, Instant now) =>
        Any(state, now, w => Kleene.Of(w.Nature is WoundNature.Amputation or WoundNature.PartialAmputation)) == Truth.Met;

    /// <summary>A wound bleeds, by the newest look; unknown where a bleeding wound that no tourniquet is for was never looked at.</summary>
    public static Truth Bleeding(CasualtyView casualty)
    {
        var (state, now) = (casualty.State, casualty.Now);
        var tied = Enum.GetValues<Limb>()
            .Where(l => casualty.Clock(l) is not null)
            .SelectMany(l => LimbWounds.Treated(l, state, now))
            .ToHashSet();
        return Any(
            state,
            now,
            w =>
                Current.Of(state.ChecksOf(w.Wound), now, d => Reading.Of(Wire.Word(d.As<Payload.BleedingChecked>().Bleeding), d.When))
                    is { IsEmpty: false } looks
                    ? Kleene.Of(looks.Any(l => l.Word == Wire.Word(Records.Bleeding.Active)))
                : w.Nature is WoundNature.Bleeding or WoundNature.Amputation or WoundNature.PartialAmputation && !tied.Contains(w.Wound)
                    ? Truth.Unknown
                : Truth.NotMet
        );
    }

    /// <summary>Bled so that a tourniquet was put on it, seen to bleed on, or bled at an attempt.</summary>
    public static bool BledSeverely(State state, Instant now) =>
        state
            .Of(Kind.TourniquetTightened)
            .Any(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Why is TighteningReason.Bleeding or null)
        || state
            .Of(Kind.BleedingChecked)
            .Any(b => b.When.Earliest <= now && b.As<Payload.BleedingChecked>().Bleeding == Records.Bleeding.Active)
        || state.Of(Kind.AttemptEnded).Any(e => e.When.Earliest <= now && e.As<Payload.AttemptEnded>().Outcome == AttemptOutcome.Bled);

    /// <summary>Entries that say when the casualty came to harm, or that it was before.</summary>
    public static IEnumerable<Dated> Injuries(State state, Instant now) =>
        state
            .Of(Kind.InjuryStated)
            .Concat(state.Of(Kind.WoundFound))
            .Concat(state.Of(Kind.TourniquetTightened))
            .Where(e => e.When.Earliest <= now);

    /// <summary>The earliest that any of them can have been: the worse side for whatever has a limit. Null where there is none.</summary>
    public static Instant? EarliestInjury(State state, Instant now) => Injuries(state, now).Select(d => (Instant?)d.When.Earliest).Min();

    private static Truth Any(State state, Instant now, Func<Payload.WoundFound, Truth> asks) =>
        state
            .Of(Kind.WoundFound)
            .Where(w => w.When.Earliest <= now)
            .Aggregate(Truth.NotMet, (t, w) => t.Or(asks(w.As<Payload.WoundFound>())));

    private static bool Noted(Payload.WoundFound wound, string word) =>
        wound.Note?.Contains(word, StringComparison.OrdinalIgnoreCase) == true;

    private static bool Ends(Payload.WoundFound wound, string word) =>
        wound.Note?.TrimEnd().EndsWith(word, StringComparison.OrdinalIgnoreCase) == true;
}
