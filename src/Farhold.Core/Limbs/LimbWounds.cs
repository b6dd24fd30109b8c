using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>The wounds of one limb that a tourniquet there is about.</summary>
public static class LimbWounds
{
    /// <summary>Names of the wounds that tourniquets on the limb name; where none does, of all wounds found on the limb.</summary>
    public static ImmutableArray<string> Treated(Limb limb, State state, Instant now)
    {
        var named = state.Of(Kind.TourniquetTightened)
            .Where(t => t.When.Earliest <= now)
            .Select(t => t.As<Payload.TourniquetTightened>())
            .Where(t => t.Limb == limb && t.Wound is not null)
            .Select(t => t.Wound!).Distinct().ToImmutableArray();
        return named.IsEmpty
            ? [.. Found(state, now).Where(w => w.As<Payload.WoundFound>().Limb == limb)
                .Select(w => w.As<Payload.WoundFound>().Wound).Distinct()]
            : named;
    }

    /// <summary>Everything that was said of the limb's wounds and of those treated by its tourniquets.</summary>
    public static IEnumerable<Dated> On(Limb limb, State state, Instant now)
    {
        var treated = Treated(limb, state, now);
        return Found(state, now).Where(w =>
            w.As<Payload.WoundFound>() is var found && (found.Limb == limb || treated.Contains(found.Wound)));
    }

    private static IEnumerable<Dated> Found(State state, Instant now) =>
        state.Of(Kind.WoundFound).Where(w => w.When.Earliest <= now);
}
