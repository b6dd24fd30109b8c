using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>What the next hands are advised to do.</summary>
public enum Advised
{
    /// <summary>A limb bleeds under its tourniquet, or again since it was loosened.</summary>
    Tighten,

    /// <summary>A loosened limb nobody has looked at since.</summary>
    Look,

    LeaveOn,

    /// <summary>Leave it on: surgery or a clinic is near.</summary>
    AwaitHelp,

    /// <summary>Leave it on until what is open is known.</summary>
    CheckFirst,

    Convert,

    /// <summary>A loosened limb that does not bleed: leave it so, and watch it.</summary>
    Watch,

    /// <summary>A warning sign of the casualty or a limb.</summary>
    Warned,
}

/// <summary>What is recommended for one limb or for the casualty, from verdict and warning signs; never from what is due.</summary>
/// <param name="Limb">Null where it is about the casualty.</param>
/// <param name="Text">One or two sentences.</param>
public sealed record Recommendation(Limb? Limb, Advised Act, string Text)
{
    private const int MostOpen = 4;

    /// <summary>Limbs in the order in which they are told, then warning signs, met ones first.</summary>
    public static ImmutableArray<Recommendation> All(CareFacts facts) =>
        [
            .. facts.Limbs.Select(l => l.Verdict is { } verdict ? Tied(l, verdict, facts) : Loosened(l, l.Observed!, facts)),
            .. facts.Warnings.Where(w => w.State == Truth.Met).Select(Warned),
            .. facts.Judgement.ShockLastKnown == Truth.Met && !facts.Warnings.Any(w => w is { State: Truth.Met, Rule.Id: "shock" })
                ? (Recommendation[])[new(null, Advised.Warned, HandOverTexts.TreatForShock)]
                : [],
        ];

    /// <summary>Warning signs of which the record does not tell whether they are there; empty: of all it does.</summary>
    public static ImmutableArray<string> Open(CareFacts facts) =>
        [
            .. facts
                .Warnings.Where(w => w.State == Truth.Unknown)
                .Select(w => w.Rule.Id + (w.Limb is { } limb ? $" ({Say.Limb(limb)})" : "")),
        ];

    private static Recommendation Tied(LimbFact limb, LimbVerdict verdict, CareFacts facts)
    {
        var name = Say.Limb(limb.Limb);
        var on = HandOverTexts.TightenedAgo(Say.Elapsed(limb.SinceFirstTightened));
        var bleeds = facts.Wounds.FirstOrDefault(w => w.Bleeds && w.IsOn(limb));
        if (bleeds is not null && verdict.Verdict != Verdict.Attempt)
            return new(limb.Limb, Advised.Tighten, Plain.Line(HandOverTexts.TightenOrSecond(name, bleeds.Name, on)));
        return verdict.Verdict switch
        {
            Verdict.LeaveOn => new(
                limb.Limb,
                Advised.LeaveOn,
                Plain.Line(HandOverTexts.LeaveOn(name, on, UnderWay(verdict), Standing(verdict)))
            ),
            Verdict.AwaitHelp => new(limb.Limb, Advised.AwaitHelp, Plain.Line(HandOverTexts.LeaveOnHelpNear(name, on))),
            Verdict.CheckFirst => new(limb.Limb, Advised.CheckFirst, Plain.Line(HandOverTexts.LeaveOnForNow(name, on, Unsettled(verdict)))),
            Verdict.Attempt => new(
                limb.Limb,
                Advised.Convert,
                Plain.Line(
                    verdict.Attempt is null
                        ? HandOverTexts.TryToConvert(name, on, Cautions(verdict))
                        : HandOverTexts.GoOnWithAttempt(name, on)
                )
            ),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static string UnderWay(LimbVerdict verdict) => verdict.Attempt is null ? "" : HandOverTexts.StopAttempt;

    /// <summary>What stands against an attempt.</summary>
    private static string Standing(LimbVerdict verdict) =>
        verdict.Act.Decides?.Criterion.Text ?? string.Join(' ', verdict.Reasons.Take(1).Select(r => r.Criterion.Text));

    private static string Unsettled(LimbVerdict verdict)
    {
        var asks = verdict.Reasons.Where(r => r.Against == Truth.Met).Select(r => r.Criterion.Text).Distinct().ToArray();
        var open = verdict.CheckFirst.Select(i => InputWords.Name(i.Name)).Distinct().ToArray();
        var more = open.Length > MostOpen ? HandOverTexts.MoreOpen(Say.Number(open.Length - MostOpen)) : "";
        return string.Join(
            ' ',
            [.. asks.Take(1), .. open.Length == 0 ? [] : (string[])[HandOverTexts.NotKnown(string.Join(", ", open.Take(MostOpen)), more)]]
        );
    }

    private static string Cautions(LimbVerdict verdict) => string.Concat(verdict.Act.Cautions.Take(2).Select(c => " " + c));

    /// <summary>A limb that was without blood for the whole window or longer is watched as after a crush: JTS crush guideline.</summary>
    private static Recommendation Loosened(LimbFact limb, ObservedLimb observed, CareFacts facts)
    {
        var name = Say.Limb(limb.Limb);
        if (observed.Bleeding == Truth.Met)
            return new(limb.Limb, Advised.Tighten, HandOverTexts.TightenAgain(name));
        var after =
            limb.Occluded.Max >= facts.Judgement.Protocol.Clock.Window ? HandOverTexts.WatchAsCrush(Say.Elapsed(limb.Occluded)) : "";
        return observed.Bleeding == Truth.Unknown
            ? new(limb.Limb, Advised.Look, HandOverTexts.LookAtWoundNow(name, after))
            : new(limb.Limb, Advised.Watch, HandOverTexts.LeaveLoosened(name, after));
    }

    private static Recommendation Warned(WarningFinding warning)
    {
        var where = warning.Limb is { } limb ? $"{char.ToUpperInvariant(Say.Limb(limb)[0])}{Say.Limb(limb)[1..]}: " : "";
        return new(warning.Limb, Advised.Warned, Plain.Line($"{where}{warning.Rule.Text} {FirstSentence(warning.Rule.Do)}"));
    }

    private static string FirstSentence(string text) =>
        text.IndexOf(". ", StringComparison.Ordinal) is var end and > 0 ? text[..(end + 1)] : text;
}
