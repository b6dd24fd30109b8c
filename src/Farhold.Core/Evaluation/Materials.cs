namespace Farhold.Evaluation;

/// <summary>Whether packing and dressing are in place already: materials are judged before they are used only.</summary>
internal static class Materials
{
    public static Truth ToPackWith(Scene scene) =>
        IsPacked(scene) ? Truth.Met : Supplies.CanPack(scene.Casualty.Rules.Kit, scene.State, scene.Now);

    public static Truth ToPressWith(Scene scene) =>
        IsDressed(scene)
            ? Truth.Met
            : Supplies.CanPress(scene.Casualty.Rules.Kit, scene.State, scene.Now, IsPacked(scene) ? scene.Clock?.Limb : null);

    private static bool IsPacked(Scene scene) => Has(scene, Kind.WoundPacked, d => d.As<Payload.WoundPacked>().Wound);

    private static bool IsDressed(Scene scene) =>
        Has(scene, Kind.DressingApplied, d => d.As<Payload.DressingApplied>() is { Dressing: DressingKind.Pressure } p ? p.Wound : null);

    /// <summary>On every wound the tourniquet is for, surely since the last attempt that bled.</summary>
    private static bool Has(Scene scene, Kind kind, Func<Dated, string?> wound)
    {
        if (scene.Clock is not { Limb: var limb })
            return false;
        var treated = LimbWounds.Treated(limb, scene.State, scene.Now);
        var failed = scene.LastFailed is { } f ? f.Ended ?? f.Started : (Happened?)null;
        var done = scene
            .State.Of(kind)
            .Where(d => d.When.Latest <= scene.Now && !(failed is { } bled && !bled.SurelyBefore(d.When)))
            .Select(wound)
            .OfType<string>()
            .ToHashSet();
        return !treated.IsEmpty && treated.All(done.Contains);
    }
}
