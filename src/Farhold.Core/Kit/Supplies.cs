using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Kit;

/// <summary>Items of the pack that the decision asks about, by the names <c>supplies.stated</c> uses.</summary>
public static class Supplies
{
    public const string PressureDressing = "pressure-dressing";
    public const string ElasticBandage = "elastic-bandage";

    private const string Cloth = "cloth";

    /// <summary>Anything to pack a wound with; the same words as a packing's material.</summary>
    public static IReadOnlyList<string> PackingItems => Wire.Words<PackingMaterial>();

    /// <summary>All that the decision asks about, each once.</summary>
    public static ImmutableArray<string> Asked => [.. PackingItems, PressureDressing, ElasticBandage];

    /// <summary>Whether there is something to pack with: haemostatic gauze, plain gauze or clean cloth.</summary>
    /// <param name="limb">What was packed into its wounds since the last attempt that failed is at hand; null: whatever limb it is
    /// for.</param>
    public static Truth CanPack(KitList kit, State state, Instant now, Limb? limb = null) =>
        Kleene.Of(InUse(limb, state, now).Packed).Or(PackingItems.Aggregate(Truth.NotMet, (t, item) => t.Or(Left(kit, item, state, now))));

    /// <summary>
    /// Whether there is something to press with: a pressure dressing, an elastic bandage, or a strip of cloth that the packing does
    /// not need. One strip is enough where there is gauze, or the wound is packed; else it takes two.
    /// </summary>
    /// <param name="limb">As in <see cref="CanPack"/>.</param>
    public static Truth CanPress(KitList kit, State state, Instant now, Limb? limb = null)
    {
        var (packed, pressed) = InUse(limb, state, now);
        var gauze = PackingItems.Where(item => item != Cloth).Aggregate(Kleene.Of(packed), (t, item) => t.Or(Left(kit, item, state, now)));
        var strip = Left(kit, Cloth, state, now, 2).Or(Left(kit, Cloth, state, now).And(gauze));
        return Kleene.Of(pressed).Or(Left(kit, PressureDressing, state, now)).Or(Left(kit, ElasticBandage, state, now)).Or(strip);
    }

    /// <summary>
    /// Whether at least so many whole pieces are left for certain, by the same count as <see cref="Stock"/>. Unknown if never counted,
    /// or if the uses may have eaten up what was counted (a pack may hold several pieces).
    /// </summary>
    /// <exception cref="ArgumentException">The kit list has no such item.</exception>
    /// <param name="pieces">How many it takes.</param>
    public static Truth Left(KitList kit, string item, State state, Instant now, int pieces = 1)
    {
        var known = kit.Named(item) ?? throw new ArgumentException($"The kit list has no {item}.", nameof(item));
        return Stock.Of(known, state, now) is not { } stock ? Truth.Unknown
            : stock.MostCounted < pieces ? Truth.NotMet
            : Kleene.Of(stock.Left.Low >= pieces).Or(Truth.Unknown);
    }

    /// <summary>What surely was put on the wounds of a limb since the last attempt there that failed.</summary>
    private static (bool Packed, bool Pressed) InUse(Limb? limb, State state, Instant now)
    {
        if (limb is not { } on)
            return (false, false);
        var wounds = LimbWounds.Treated(on, state, now);
        var failed = Attempt.On(on, state, now).LastOrDefault(a => a.Result == AttemptResult.Bled);
        var since = failed?.Ended ?? failed?.Started;
        bool Counts(Dated entry, string wound) =>
            entry.When.Latest <= now && wounds.Contains(wound) && (since is not { } failure || failure.SurelyBefore(entry.When));
        return (
            state.Of(Kind.WoundPacked).Any(e => Counts(e, e.As<Payload.WoundPacked>().Wound)),
            state
                .Of(Kind.DressingApplied)
                .Any(e => e.As<Payload.DressingApplied>() is { Dressing: DressingKind.Pressure } d && Counts(e, d.Wound))
        );
    }
}
