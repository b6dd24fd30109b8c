using NodaTime;

namespace Farhold.Verdicts;

/// <summary>Bleeding: comes before every verdict.</summary>
internal static class AtOnce
{
    /// <summary>Id of the task that is about the bleeding of one wound, whose name follows.</summary>
    public const string BleedingTask = "bleeding";

    /// <summary>A tight tourniquet that does not stop the bleeding, or leaves a pulse beyond it, is not tight enough.</summary>
    public static IEnumerable<DueTask> Tightening(LimbVerdict limb, State state, Instant now)
    {
        var tightened = state.Of(Kind.TourniquetTightened)
            .Last(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Limb == limb.Limb).When;
        var more = limb.Clock.Tourniquets.Length > 1 ? "add one more beside them" : "add a second tourniquet beside the first";
        var wounds = LimbWounds.Treated(limb.Limb, state, now);
        var bled = state.Of(Kind.BleedingChecked).LastOrDefault(b =>
            b.When.Earliest <= now && wounds.Contains(b.As<Payload.BleedingChecked>().Wound));
        if (bled?.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active && !bled.When.SurelyBefore(tightened))
            yield return Tighten(limb.Limb, bled.When.Earliest, $"still bleeding: tighten further, or {more}");
        var pulse = state.WithSign(SignRead.DistalPulse(limb.Limb)).LastOrDefault(s => s.When.Earliest <= now);
        if (pulse?.As<Payload.SignsTaken>().DistalPulse![limb.Limb] == DistalPulse.Present && !pulse.When.SurelyBefore(tightened))
            yield return Tighten(
                limb.Limb, pulse.When.Earliest, $"a pulse beyond the tourniquet: tighten until it stops, or {more}");
    }

    public static DueTask Tighten(Limb limb, Instant at, string text) =>
        new(at, DueList.Name("tighten", limb), limb, text, ["common"], true) { AtOnce = true, BySeeing = true };

    /// <summary>Wounds that no tourniquet is for: those that bleed, and those nobody has looked at since they were found.</summary>
    /// <remarks>Source: TCCC wording in Shackelford 2015; common practice for neck, groin and armpit.</remarks>
    public static IEnumerable<DueTask> Elsewhere(CasualtyView casualty)
    {
        var (state, now) = (casualty.State, casualty.Now);
        var treated = Enum.GetValues<Limb>().Where(l => casualty.Clock(l) is not null)
            .SelectMany(l => LimbWounds.Treated(l, state, now)).ToHashSet();
        var seen = new HashSet<string>();
        foreach (var found in state.Of(Kind.WoundFound).Where(w => w.When.Earliest <= now))
        {
            var wound = found.As<Payload.WoundFound>();
            if (treated.Contains(wound.Wound) || !seen.Add(wound.Wound))
                continue;
            var last = state.ChecksOf(wound.Wound).LastOrDefault(b => b.When.Earliest <= now);
            var task = $"{BleedingTask}.{wound.Wound}";
            if (last?.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active)
                yield return new(last.When.Earliest, task, wound.Limb, $"bleeding, {Place(wound)}: {Control(wound)}", ["common", "Shackelford-2015"], true)
                {
                    AtOnce = true,
                    BySeeing = true,
                };
            else if (last is null && wound.Nature is WoundNature.Bleeding or WoundNature.Amputation or WoundNature.PartialAmputation)
                yield return new(
                    found.When.Earliest, task, wound.Limb, $"Does it bleed now, {Place(wound)}? If it does: {Control(wound)}",
                    ["common", "Shackelford-2015"], false)
                {
                    BySeeing = true,
                    Leads = true,
                };
        }
    }

    private static string Place(Payload.WoundFound wound) => wound switch
    {
        { Limb: { } limb } => $"the {Say.Limb(limb)}",
        { Region: { } region } => Wire.Word(region) switch { "axilla" => "the armpit", var word => $"the {word}" },
        _ => "the wound",
    };

    /// <summary>How bleeding there is stopped.</summary>
    private static string Control(Payload.WoundFound wound) => wound switch
    {
        { Limb: not null } => "press hard; if that does not stop it, a tourniquet on the skin 5 to 7 cm above the wound, not over a joint.",
        { Region: BodyRegion.Groin or BodyRegion.Axilla } => "pack the wound and press with your body weight.",
        { Region: BodyRegion.Neck } => "pack it and press with the hand; put nothing round the neck.",
        { Region: BodyRegion.Chest or BodyRegion.Abdomen } => "press on the bleeding edge; pack nothing into chest or belly.",
        { Region: BodyRegion.Head } => "press with a dressing; only lightly where the bone gives way.",
        _ => "pack and press hard.",
    };
}
