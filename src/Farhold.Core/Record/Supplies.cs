using NodaTime;

namespace Farhold;

/// <summary>Items of the pack that the decision asks about, by the names <c>supplies.stated</c> uses.</summary>
public static class Supplies
{
    public const string PressureDressing = "pressure-dressing";

    /// <summary>Anything to pack a wound with; the same words as a packing's material.</summary>
    public static IReadOnlyList<string> Packing => Wire.Words<PackingMaterial>();

    /// <summary>
    /// Whether at least one piece is left: stated, less one for every use since. Unknown if never stated, or if the uses
    /// have eaten up what was stated (a pack may hold several pieces).
    /// </summary>
    public static Truth Left(string item, State state, Instant now)
    {
        var stated = state.Of(Kind.SuppliesStated)
            .LastOrDefault(s => s.When.Latest <= now && s.As<Payload.SuppliesStated>().Item == item);
        if (stated is null)
            return Truth.Unknown;
        var count = stated.As<Payload.SuppliesStated>().Count;
        if (count == 0)
            return Truth.NotMet;
        var used = state.Of(Kind.WoundPacked).Concat(state.Of(Kind.DressingApplied))
            .Count(u => Item(u.What) == item && u.When.Earliest <= now && u.When.Latest >= stated.When.Earliest);
        return count > used ? Truth.Met : Truth.Unknown;
    }

    private static string? Item(Payload use) => use switch
    {
        Payload.WoundPacked packed => Wire.Word(packed.Material),
        Payload.DressingApplied { Dressing: DressingKind.Pressure } => PressureDressing,
        _ => null,
    };
}
