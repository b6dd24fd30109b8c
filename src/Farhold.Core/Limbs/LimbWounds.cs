using NodaTime;

namespace Farhold.Limbs;

/// <summary>The wounds of one limb that a tourniquet there is about.</summary>
public static class LimbWounds
{
    /// <summary>Names of the wounds that tourniquets on the limb name; where none does, of all wounds found on the limb.</summary>
    public static WoundNames Treated(Limb limb, State state, Instant now)
    {
        var named = new WoundNames(Named(limb, state, now));
        return named.IsEmpty ? new(Found(limb, state, now)) : named;
    }

    /// <summary>Everything that was said of the limb's wounds and of those treated by its tourniquets.</summary>
    public static IEnumerable<Dated> On(Limb limb, State state, Instant now)
    {
        var treated = Treated(limb, state, now);
        return Found(state, now)
            .Where(w => w.As<Payload.WoundFound>() is var found && (found.Limb == limb || treated.Contains(found.Wound)));
    }

    private static IEnumerable<string> Named(Limb limb, State state, Instant now)
    {
        // Asked many times a judgement: loops, not queries.
        foreach (var entry in state.Of(Kind.TourniquetTightened))
            if (
                entry.When.Earliest <= now
                && entry.As<Payload.TourniquetTightened>() is { Wound: { } wound } tightened
                && tightened.Limb == limb
            )
                yield return wound;
    }

    private static IEnumerable<string> Found(Limb limb, State state, Instant now)
    {
        foreach (var entry in state.Of(Kind.WoundFound))
            if (entry.When.Earliest <= now && entry.As<Payload.WoundFound>() is var found && found.Limb == limb)
                yield return found.Wound;
    }

    private static IEnumerable<Dated> Found(State state, Instant now) => state.Of(Kind.WoundFound).Where(w => w.When.Earliest <= now);
}
