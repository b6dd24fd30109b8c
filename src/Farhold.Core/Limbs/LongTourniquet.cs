using NodaTime;

namespace Farhold.Limbs;

/// <summary>Whether any limb has been without blood flow for so long that its muscle may harm the kidneys once it flows again.</summary>
public static class LongTourniquet
{
    private static readonly Duration Long = Duration.FromHours(2);

    public static Truth At(State state, Instant now)
    {
        var any = Truth.NotMet;
        foreach (var limb in Enum.GetValues<Limb>())
            if (LimbClock.Of(limb, state, now) is { } clock)
                any = any.Or(Kleene.Of(clock.Occluded.Max >= Long));
        return any;
    }
}
