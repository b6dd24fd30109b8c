using NodaTime;

namespace Farhold.App.Now;

/// <summary>Where what the decision asks for next on a limb is done: where a look is taken, a thing said or advice asked for.</summary>
/// <param name="ofInput">Where a value is looked at.</param>
internal sealed class LimbActs(State state, Judgement picture, Texts texts, Func<Input, Step> ofInput)
{
    public Step Of(LimbVerdict limb) =>
        limb switch
        {
            { Attempt: not null } => new(texts.AttemptGoOn, Goes: AttemptOn(limb.Limb)),
            { Verdict: Verdict.Attempt } => new(texts.QuickAttempt, Goes: AttemptOn(limb.Limb)),
            { Act.Asks: { } input } => ofInput(input),
            { Act.Decides: { } finding } => Of(finding, limb.Limb),
            _ => Why(limb.Limb),
        };

    /// <summary>The limb that comes before this one, and where it is seen to; null where none does.</summary>
    public Step? OtherLimb(Limb? than) =>
        picture
            .Limbs.Where(l => l.Limb != than && (l.Attempt is not null || l.Verdict == Verdict.Attempt))
            .Select(l => (Limb?)l.Limb)
            .Concat(picture.Observed.Where(w => w.Limb != than).OrderByDescending(w => w.Loosened.Latest).Select(w => (Limb?)w.Limb))
            .FirstOrDefault()
            is { } other
            ? new(texts.OtherLimbFirst(texts.Within(other)), Goes: AttemptOn(other))
            : null;

    /// <summary>Try to reach advice; or enter it, while somebody who was reached is answering.</summary>
    public Step Advice =>
        Contact is { } tried && tried.As<Payload.ContactTried>().Reached && IsOpen(tried)
            ? new(texts.LogAdvice, Goes: AskPlace)
            : new(texts.QuickContact, Opens: Quick.Contact);

    public Step Why(Limb limb) => new(texts.Reassess, Goes: "why/" + Wire.Word(limb));

    /// <summary>Where a call for advice is worded, and its answer read back.</summary>
    public const string AskPlace = "ask";

    public static string AttemptOn(Limb limb) => "attempt/" + Wire.Word(limb);

    private Step Of(Finding finding, Limb limb)
    {
        var inputs = finding.Criterion.Condition.Inputs.ToHashSet();
        if (finding.Against != Truth.Met)
            return ofInput(finding.Needs ?? finding.Criterion.Condition.Inputs.First());
        if (inputs.Contains(Input.OtherLimbFirst))
            return OtherLimb(limb) ?? Why(limb);
        if (inputs.Contains(Input.BleedingElsewhere))
            return Elsewhere;
        if (inputs.Contains(Input.WatchAble))
            return IsMoveAhead ? new(texts.QuickMoved, Opens: Quick.Moved) : ofInput(Input.WatchAble);
        foreach (var input in (Input[])[Input.Bleeding, Input.Packing, Input.PressureDressing, Input.HelpSoon])
            if (inputs.Contains(input))
                return ofInput(input);
        if (inputs.Contains(Input.TimeOn) || inputs.Contains(Input.WoundNature))
            return Why(limb);
        var ofSigns = finding.Criterion.Group == "shock";
        return ofSigns && (WasAsked || finding.Criterion.Role == Role.Asks) ? ofInput(Input.ClearLooks) : Advice;
    }

    /// <summary>
    /// A wound to log that somebody saw bleeding; else a look at those that are logged; else a new look over the casualty.
    /// </summary>
    private Step Elsewhere
    {
        get
        {
            var seen = state
                .Of(Kind.CasualtyLookedOver)
                .LastOrDefault(d => d.As<Payload.CasualtyLookedOver>().BleedingElsewhere is not null);
            var isSeen = seen?.As<Payload.CasualtyLookedOver>().BleedingElsewhere == true;
            var found = state.Of(Kind.WoundFound);
            return isSeen && !found.Any(w => w.When.Latest >= seen!.When.Earliest) ? new(texts.QuickWound, Opens: Quick.Wound)
                : isSeen && found.All(w => LastLook(w.As<Payload.WoundFound>().Wound) is not (null or Bleeding.Active))
                    ? new(texts.QuickLookedOver, Opens: Quick.LookedOver)
                : new(texts.QuickBleeding, Opens: Quick.Bleeding);
        }
    }

    private Bleeding? LastLook(string wound) =>
        state.Of(Kind.BleedingChecked).Select(d => d.As<Payload.BleedingChecked>()).LastOrDefault(c => c.Wound == wound)?.Bleeding;

    private bool IsMoveAhead =>
        state.Of(Kind.CasualtyMoved) is [.., var last] && last.As<Payload.CasualtyMoved>().Phase == MovePhase.AboutTo;

    private Dated? Contact => state.Of(Kind.ContactTried).LastOrDefault(d => d.When.Latest <= picture.At);

    /// <summary>Within the time that a try counts somebody was asked, or gave advice.</summary>
    private bool WasAsked =>
        (Contact is { } tried && IsWithin(tried, picture.Protocol.Advice.Tried))
        || state.Of(Kind.AdviceReceived).Any(a => a.When.Latest <= picture.At && IsWithin(a, picture.Protocol.Advice.Tried));

    private bool IsOpen(Dated tried) =>
        IsWithin(tried, picture.Protocol.Advice.Unanswered)
        && !state.Of(Kind.AdviceReceived).Any(a => a.When.Earliest <= picture.At && !a.When.SurelyBefore(tried.When));

    private bool IsWithin(Dated entry, Duration time) => entry.When.Until(picture.At).Max <= time;
}
