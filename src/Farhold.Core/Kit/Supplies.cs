using NodaTime;

namespace Farhold;

/// <summary>Items of the pack that the decision asks about, by the names <c>supplies.stated</c> uses.</summary>
public static class Supplies
{
    public const string PressureDressing = "pressure-dressing";

    /// <summary>Anything to pack a wound with; the same words as a packing's material.</summary>
    public static IReadOnlyList<string> PackingItems => Wire.Words<PackingMaterial>();

    /// <summary>Something to pack a wound with.</summary>
    public static Truth Packing(State state, Instant now) =>
        Wire.Words<PackingMaterial>().Aggregate(Truth.NotMet, (t, item) => t.Or(Left(item, state, now)));

    /// <summary>Something to press with.</summary>
    public static Truth Pressing(State state, Instant now) =>
        new[] { PressureDressing, "elastic-bandage", Wire.Word(PackingMaterial.Cloth) }.Aggregate(Truth.NotMet, (t, item) => t.Or(Left(item, state, now)));

    /// <summary>
    /// Whether at least one whole piece is left for certain, by the same count as <see cref="Stock"/>. Unknown if never counted,
    /// or if the uses may have eaten up what was counted (a pack may hold several pieces).
    /// </summary>
    /// <exception cref="ArgumentException">The kit list has no such item.</exception>
    public static Truth Left(string item, State state, Instant now)
    {
        var kit = ShippedKit.Kit.Named(item) ?? throw new ArgumentException($"The kit list has no {item}.", nameof(item));
        return Stock.Of(kit, state, now) is not { } stock ? Truth.Unknown
            : stock.MostCounted == 0 ? Truth.NotMet
            : Kleene.Of(stock.Left.Low >= 1).Or(Truth.Unknown);
    }
}
