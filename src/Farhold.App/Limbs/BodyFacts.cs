using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Limbs;

/// <summary>What the figure shows of one limb.</summary>
/// <param name="On">Null where no tourniquet is on it; unknown: perhaps tight.</param>
/// <param name="Since">First tightened, or loosened since.</param>
/// <param name="Bleeding">The worst of its wounds when last looked at; null where none was.</param>
/// <param name="Pulse">Below the tourniquet when last felt.</param>
/// <param name="Looked">Somebody looked at it, or something was found on it.</param>
public sealed record LimbFacts(
    Limb Limb,
    Truth? On,
    Happened? Since,
    bool Wounded,
    bool Severed,
    Bleeding? Bleeding,
    bool Dressed,
    DistalPulse? Pulse,
    bool Looked
)
{
    public bool IsArm => Limb is Limb.LeftArm or Limb.RightArm;

    public static LimbFacts For(Limb limb, State state, Judgement picture, FirstLook look)
    {
        var now = picture.At;
        var wounds = LimbWounds.On(limb, state, now).Select(w => w.As<Payload.WoundFound>()).ToArray();
        var names = wounds.Select(w => w.Wound).ToHashSet();
        var tight = picture.Limbs.FirstOrDefault(l => l.Limb == limb)?.Clock;
        var loose = picture.Observed.FirstOrDefault(o => o.Limb == limb);
        return new(
            limb,
            tight?.Tight ?? (loose is null ? null : Truth.NotMet),
            tight?.FirstTightened ?? loose?.Loosened,
            wounds.Length > 0,
            wounds.Any(w => w.Nature != WoundNature.Bleeding),
            Seen.Bleeding(names, state, now),
            state.Of(Kind.DressingApplied).Any(d => d.When.Earliest <= now && names.Contains(d.As<Payload.DressingApplied>().Wound)),
            Seen.Pulse(limb, state, now),
            wounds.Length > 0 || tight is not null || loose is not null || Seen.Looked(limb, null, state, look, now)
        );
    }

    /// <summary>In a few words each, the gravest first.</summary>
    public ImmutableArray<string> Words(Texts texts, Instant now) =>
        [
            .. On is { } on && Since is { } since
                ?
                [
                    on switch
                    {
                        Truth.Met => texts.BodyTight(Unbroken(since.Until(now).Max)),
                        Truth.Unknown => texts.BodyMaybeTight(Unbroken(since.Until(now).Max)),
                        _ => texts.BodyLoose(Unbroken(since.Until(now).Min)),
                    },
                ]
                : (string[])[],
            .. Severed ? [texts.BodySevered] : (string[])[],
            .. Wounded ? [Seen.Word(Bleeding, texts)] : (string[])[],
            .. Dressed ? [texts.BodyDressed] : (string[])[],
            .. Pulse is { } pulse ? [pulse == DistalPulse.Present ? texts.BodyPulse : texts.BodyNoPulse] : (string[])[],
        ];

    private static string Unbroken(Duration span) => ShortSpan.Text(span).Replace(' ', '\u00a0');
}

/// <summary>What the figure shows of one region of trunk or head.</summary>
public sealed record RegionFacts(BodyRegion Region, bool Wounded, Bleeding? Bleeding, bool Dressed, bool Looked)
{
    public static RegionFacts For(BodyRegion region, State state, FirstLook look, Instant now)
    {
        var names = state
            .Of(Kind.WoundFound)
            .Where(w => w.When.Earliest <= now && w.As<Payload.WoundFound>().Region == region)
            .Select(w => w.As<Payload.WoundFound>().Wound)
            .ToHashSet();
        return new(
            region,
            names.Count > 0,
            Seen.Bleeding(names, state, now),
            state.Of(Kind.DressingApplied).Any(d => d.When.Earliest <= now && names.Contains(d.As<Payload.DressingApplied>().Wound)),
            names.Count > 0 || Seen.Looked(null, region, state, look, now)
        );
    }

    public ImmutableArray<string> Words(Texts texts) =>
        [.. Wounded ? [Seen.Word(Bleeding, texts)] : (string[])[], .. Dressed ? [texts.BodyDressed] : (string[])[]];
}

/// <summary>What was seen of wounds and regions, up to a moment.</summary>
internal static class Seen
{
    /// <summary>The worst of the newest looks at these wounds; null where none was looked at, or one was not.</summary>
    public static Bleeding? Bleeding(IReadOnlySet<string> wounds, State state, Instant now)
    {
        var newest = new Dictionary<string, Bleeding>();
        foreach (var look in state.Of(Kind.BleedingChecked))
            if (look.When.Earliest <= now && look.As<Payload.BleedingChecked>() is var seen && wounds.Contains(seen.Wound))
                newest[seen.Wound] = seen.Bleeding;
        var worst = newest.Count == 0 ? (Bleeding?)null : newest.Values.Max();
        return newest.Count == wounds.Count || worst == Farhold.Records.Bleeding.Active ? worst : null;
    }

    public static string Word(Bleeding? bleeding, Texts texts) =>
        bleeding switch
        {
            Farhold.Records.Bleeding.Active => texts.BodyBleeds,
            Farhold.Records.Bleeding.Oozing => texts.BodyOozes,
            Farhold.Records.Bleeding.None => texts.BodyDry,
            _ => texts.BodyWound,
        };

    public static DistalPulse? Pulse(Limb limb, State state, Instant now)
    {
        DistalPulse? newest = null;
        foreach (var entry in state.Of(Kind.SignsTaken))
            if (
                entry.When.Earliest <= now
                && entry.As<Payload.SignsTaken>().DistalPulse is { } felt
                && felt.TryGetValue(limb, out var pulse)
            )
                newest = pulse;
        return newest;
    }

    /// <summary>An answer of its own, or the part of the first look that it belongs to.</summary>
    public static bool Looked(Limb? limb, BodyRegion? region, State state, FirstLook look, Instant now) =>
        state
            .Of(Kind.RegionLooked)
            .Any(l => l.When.Earliest <= now && l.As<Payload.RegionLooked>() is var p && p.Limb == limb && p.Region == region)
        || region switch
        {
            BodyRegion.Chest => look[LookStep.Breathing].Found != Truth.Unknown,
            BodyRegion.Head => look[LookStep.Head].Found != Truth.Unknown,
            BodyRegion.Abdomen or BodyRegion.Pelvis => look[LookStep.Belly].Found != Truth.Unknown,
            _ => IsBleedingLookWhole(state, look, now),
        };

    // That one limb was found bleeding does not say that the others were looked at: that nothing else bleeds does.
    private static bool IsBleedingLookWhole(State state, FirstLook look, Instant now) =>
        look[LookStep.Bleeding].Found == Truth.NotMet
        || state
            .Of(Kind.CasualtyLookedOver)
            .Any(l => l.When.Earliest <= now && l.As<Payload.CasualtyLookedOver>().BleedingElsewhere == false);
}
