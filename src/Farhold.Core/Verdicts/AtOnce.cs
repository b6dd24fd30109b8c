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
        var tightened = state
            .Of(Kind.TourniquetTightened)
            .Last(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Limb == limb.Limb)
            .When;
        var more = limb.Clock.Tourniquets.Length > 1 ? VerdictTexts.OneMoreBeside : VerdictTexts.SecondBeside;
        var wounds = LimbWounds.Treated(limb.Limb, state, now);
        var bled = state
            .Of(Kind.BleedingChecked)
            .LastOrDefault(b => b.When.Earliest <= now && wounds.Contains(b.As<Payload.BleedingChecked>().Wound));
        if (bled?.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active && !bled.When.SurelyBefore(tightened))
            yield return Tighten(limb.Limb, bled.When.Earliest, VerdictTexts.TightenStillBleeding(more));
        var pulse = state.WithSign(SignRead.DistalPulse(limb.Limb)).LastOrDefault(s => s.When.Earliest <= now);
        if (pulse?.As<Payload.SignsTaken>().DistalPulse![limb.Limb] == DistalPulse.Present && !pulse.When.SurelyBefore(tightened))
            yield return Tighten(limb.Limb, pulse.When.Earliest, VerdictTexts.TightenPulseBelow(more));
    }

    public static DueTask Tighten(Limb limb, Instant at, string text) =>
        new(at, DueList.Name("tighten", limb), limb, text, ["common"], true) { AtOnce = true, BySeeing = true };

    /// <summary>Wounds that no tourniquet is for: those that bleed, and those nobody has looked at since they were found.</summary>
    /// <remarks>Source: TCCC wording in Shackelford 2015; common practice for neck, groin and armpit.</remarks>
    public static IEnumerable<DueTask> Elsewhere(CasualtyView casualty)
    {
        var (state, now) = (casualty.State, casualty.Now);
        var treated = Enum.GetValues<Limb>()
            .Where(l => casualty.Clock(l) is not null)
            .SelectMany(l => LimbWounds.Treated(l, state, now))
            .ToHashSet();
        var seen = new HashSet<string>();
        foreach (var found in state.Of(Kind.WoundFound).Where(w => w.When.Earliest <= now))
        {
            var wound = found.As<Payload.WoundFound>();
            if (treated.Contains(wound.Wound) || !seen.Add(wound.Wound))
                continue;
            var last = state.ChecksOf(wound.Wound).LastOrDefault(b => b.When.Earliest <= now);
            var task = $"{BleedingTask}.{wound.Wound}";
            if (last?.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active)
                yield return new(
                    last.When.Earliest,
                    task,
                    wound.Limb,
                    VerdictTexts.BleedingAtPlace(Place(wound), LookQuestions.Control(wound.Limb, wound.Region)),
                    ["common", "Shackelford-2015"],
                    true
                )
                {
                    AtOnce = true,
                    BySeeing = true,
                };
            else if (last is null && wound.Nature is WoundNature.Bleeding or WoundNature.Amputation or WoundNature.PartialAmputation)
                yield return new(
                    found.When.Earliest,
                    task,
                    wound.Limb,
                    VerdictTexts.DoesItBleed(Place(wound), LookQuestions.Control(wound.Limb, wound.Region)),
                    ["common", "Shackelford-2015"],
                    false
                )
                {
                    BySeeing = true,
                    Leads = true,
                };
        }
    }

    /// <summary>An airway that was not free when last looked at. Common practice: without it the rest does not count.</summary>
    public static IEnumerable<DueTask> Airway(CasualtyView casualty)
    {
        if (FirstLook.At(casualty.State, casualty.Now)[LookStep.Airway] is { Found: Truth.Met, When: { } when })
            yield return new(when.Earliest, "airway", null, VerdictTexts.AirwayNotFree(LookQuestions.AirwayAct), ["common"], true)
            {
                AtOnce = true,
                BySeeing = true,
            };
    }

    private static string Place(Payload.WoundFound wound) =>
        wound switch
        {
            { Limb: { } limb } => VerdictTexts.PlaceLimb(Say.Limb(limb)),
            { Region: BodyRegion.Axilla } => VerdictTexts.PlaceArmpit,
            { Region: { } region } => VerdictTexts.PlaceRegion(Say.Word(region)),
            _ => VerdictTexts.PlaceWound,
        };
}
