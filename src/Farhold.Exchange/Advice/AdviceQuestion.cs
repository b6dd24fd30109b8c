using System.Collections.Immutable;
using Farhold.Exchange.HandOver;

namespace Farhold.Exchange.Advice;

/// <summary>What advice is asked for; <c>soft-sign</c> and the like on the wire.</summary>
public enum AskFor
{
    /// <summary>An attempt to convert the tourniquet on a limb.</summary>
    Attempt,

    /// <summary>One after the first window.</summary>
    Late,

    /// <summary>One after one that bled.</summary>
    Further,

    /// <summary>One although a soft sign of shock stands.</summary>
    SoftSign,

    /// <summary>What to do while something stands that no yes lifts.</summary>
    Guide,

    /// <summary>A drug, which the carer names.</summary>
    Drug,

    /// <summary>In the carer's own words.</summary>
    Other,
}

/// <summary>The one question of a call.</summary>
/// <param name="Limb">Null where it is about the casualty as a whole.</param>
/// <param name="Text">As it is asked; of a drug, and in own words, what the carer entered.</param>
public sealed record AdviceQuestion(AskFor For, Limb? Limb, string Text)
{
    /// <summary>What can be asked now: first what the verdicts ask for, then what else of each limb, then the open questions.</summary>
    public static ImmutableArray<AdviceQuestion> Offered(CareFacts facts) =>
        [
            .. facts
                .Limbs.Where(l => l.Verdict is not null)
                .SelectMany(l => Of(l).Select((kind, rank) => (Question: About(kind, l, facts), Rank: rank)))
                .OrderBy(o => o.Rank > 0)
                .Select(o => o.Question),
            new(AskFor.Drug, null, ""),
            new(AskFor.Other, null, ""),
        ];

    /// <summary>A question of a kind, of the first limb that has it; null where no limb does.</summary>
    /// <param name="limb">Null: whichever comes first.</param>
    /// <param name="text">Own words, for a drug and for what is asked freely.</param>
    public static AdviceQuestion? Named(CareFacts facts, AskFor kind, Limb? limb, string? text) =>
        Offered(facts).FirstOrDefault(q => q.For == kind && (limb is null || q.Limb is null || q.Limb == limb)) is not { } question ? null
        : question.Limb is null ? question with { Text = Asked(kind, text) }
        : question;

    /// <summary>A drug or words of the carer's own, as a question.</summary>
    public static string Asked(AskFor kind, string? text) =>
        (kind, text?.Trim()) switch
        {
            (AskFor.Drug, { Length: > 0 } drug) => Plain.Line(AdviceTexts.MayGive(drug)),
            (AskFor.Drug, _) => AdviceTexts.MayGiveADrug,
            (_, { Length: > 0 } own) => Plain.Line(own),
            _ => AdviceTexts.WhatAdvise,
        };

    /// <summary>What may be asked of a tied limb; first what stands in the way.</summary>
    private static IEnumerable<AskFor> Of(LimbFact limb)
    {
        var verdict = limb.Verdict!;
        var kinds = new List<AskFor>();
        if (verdict.Findings.Any(AdviceCall.IsFast))
            kinds.Add(AskFor.Guide);
        if (verdict.Findings.Any(f => f.Against != Truth.NotMet && f.Criterion.Condition.Inputs.Contains(Input.FurtherAttemptAllowed)))
            kinds.Add(AskFor.Further);
        if (SoftSigns(verdict).Any())
            kinds.Add(AskFor.SoftSign);
        if (verdict.Findings.Any(f => f.Against != Truth.NotMet && f.Criterion.Condition.Inputs.Contains(Input.Oversight)))
            kinds.Add(AskFor.Late);
        return kinds.Append(AskFor.Attempt);
    }

    private static IEnumerable<Finding> SoftSigns(LimbVerdict verdict) =>
        verdict.Findings.Where(f => f.Criterion.Role == Role.Soft && f.State == Truth.Met);

    private static AdviceQuestion About(AskFor kind, LimbFact limb, CareFacts facts)
    {
        var name = Say.Limb(limb.Limb);
        var tried = limb.Attempts.Count(a => a.Result == AttemptResult.Bled);
        return new(
            kind,
            limb.Limb,
            kind switch
            {
                AskFor.Late => AdviceTexts.MayConvertLate(name, Say.Elapsed(limb.SinceFirstTightened)),
                AskFor.Further => AdviceTexts.MayTryFurther(name, tried < 2 ? AdviceTexts.OneAttempt : Say.Number(tried)),
                AskFor.Guide => AdviceTexts.WhatAdviseWhile(
                    name,
                    string.Join(" ", limb.Verdict!.Findings.Where(AdviceCall.IsFast).Select(f => f.Criterion.Text))
                ),
                AskFor.SoftSign => AdviceTexts.MayConvertAlthough(
                    name,
                    string.Join(" ", SoftSigns(limb.Verdict!).Select(f => f.Criterion.Text))
                ),
                _ => AdviceTexts.MayConvert(name),
            }
        );
    }
}
