using System.Globalization;
using System.Text;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>A whole judgement as plain text for a person: what is most urgent first, sources last in each item.</summary>
public static class JudgementText
{
    /// <param name="refused">Why a local protocol that was asked for is not in force: said before any verdict.</param>
    public static string Of(Judgement judgement, IReadOnlyList<Refusal>? refused = null)
    {
        var text = new StringBuilder();
        var now = judgement.At;
        Line(text, 0, VerdictWords.Caution);
        Line(text, 0, VerdictTexts.AsOf(Say.Time(now)));
        foreach (var line in RulesWords.Of(judgement.Rules))
            Line(text, 0, line);
        Section(
            text,
            VerdictTexts.LocalRefused(judgement.Protocol.Id, judgement.Protocol.Version),
            (refused ?? []).Select(r => Plain.Line(r.ToString()))
        );
        Section(text, VerdictTexts.RecordDamaged, judgement.Doubts.Select(d => Plain.Line($"{d.Text} ({d.Id})")));
        Section(text, VerdictTexts.AtOnceHead, judgement.Due.Where(d => d.AtOnce).Select(d => VerdictWords.Of(d, now)));
        foreach (var limb in judgement.Limbs)
            Limb(text, limb, judgement);
        foreach (var limb in judgement.Observed)
            Observed(text, limb, now);
        if (judgement.Limbs.IsEmpty && judgement.Observed.IsEmpty)
            Section(text, VerdictTexts.NoTourniquetHead, [VerdictTexts.NoTourniquetYet]);
        Head(text, VerdictTexts.ShockHead(VerdictWords.Of(judgement.Shock)));
        foreach (var sign in judgement.Shock.Signs.Where(f => f.Against == judgement.Shock.State && f.Against != Truth.NotMet))
            Line(text, 1, Brief(sign));
        Section(text, VerdictTexts.DueHead, judgement.Due.Where(d => !d.AtOnce).Select(d => VerdictWords.Of(d, now)));
        Section(text, VerdictTexts.NotNowHead, judgement.Withheld.Select(w => Plain.Line($"{w.Text} ({w.Name})")));
        Section(
            text,
            VerdictTexts.WeatherHead,
            judgement.Exposure is { } exposure ? [.. exposure.Lines(now), VerdictTexts.SourceLine(Exposure.Source)] : []
        );
        Section(
            text,
            VerdictTexts.OddHead,
            judgement.Remarks.Select(r =>
                Plain.Line(
                    r.About is { } about ? VerdictTexts.OddEntry(string.Create(CultureInfo.InvariantCulture, $"{about}"), r.Text) : r.Text
                )
            )
        );
        return text.ToString();
    }

    private static void Limb(StringBuilder text, LimbVerdict limb, Judgement judgement)
    {
        // Whoever reads no further has read the gravest caution.
        var grave = limb.Act.Cautions is [var first, ..] ? VerdictTexts.HeadCaution(Plain.Line(first)) : "";
        Head(text, $"{Say.Limb(limb.Limb).ToUpperInvariant()}: {VerdictWords.Of(limb.Verdict)} ({Wire.Word(limb.Verdict)}){grave}");
        Line(text, 1, Plain.Line(limb.Act.Said()));
        foreach (var caution in limb.Act.Cautions.Skip(1))
            Line(text, 1, Plain.Line(VerdictTexts.CautionLine(caution)));
        Line(text, 1, VerdictWords.Tight(limb.Clock));
        foreach (var line in VerdictWords.Of(limb.Clock))
            Line(text, 1, line);
        Limits(text, limb, judgement);
        foreach (var change in limb.Act.Changes)
            Line(text, 1, Plain.Line(change));
        Line(text, 1, VerdictTexts.LookAgainBy(Say.Time(limb.Act.LookAgain)));
        if (limb.Attempt is { } attempt)
            foreach (var line in VerdictWords.Of(attempt, judgement.At))
                Line(text, 1, line);
        for (var i = 0; i < limb.CheckFirst.Length; i++)
            Line(text, 1, VerdictTexts.LookNumbered(i + 1, VerdictWords.Look(limb.CheckFirst[i], limb)));
        foreach (var reason in limb.Reasons)
        {
            Line(text, 1, VerdictTexts.Because(VerdictWords.Of(reason), reason.Criterion.Id));
            if (VerdictWords.Values(reason) is { Length: > 0 } values)
                Line(text, 2, values);
            Line(text, 2, VerdictTexts.SourceLine(VerdictWords.Sources(reason.Criterion.Sources, judgement.Protocol)));
        }
    }

    private static void Limits(StringBuilder text, LimbVerdict limb, Judgement judgement)
    {
        foreach (var next in limb.Next)
            Line(text, 1, VerdictWords.Of(next, judgement.At));
        if (limb.Next.IsEmpty)
            Line(text, 1, VerdictWords.LimitPassed(judgement.Protocol));
    }

    private static void Observed(StringBuilder text, ObservedLimb limb, Instant now)
    {
        Head(text, VerdictTexts.WatchHead(Say.Limb(limb.Limb).ToUpperInvariant(), VerdictWords.Of(limb)));
        Line(
            text,
            1,
            VerdictTexts.LoosenedLine(VerdictWords.Tight(limb.Clock), Say.Time(limb.Loosened), Say.Elapsed(limb.Loosened.Until(now)))
        );
        foreach (var line in VerdictWords.Of(limb.Clock))
            Line(text, 1, line);
        if (limb.Attempt is { } attempt && limb.Bleeding != Truth.Met)
            foreach (var line in VerdictWords.Of(attempt, now))
                Line(text, 1, line);
    }

    private static string Brief(Finding finding) => $"{VerdictWords.Values(finding)} ({finding.Criterion.Id})";

    private static void Section(StringBuilder text, string head, IEnumerable<string> lines)
    {
        var all = lines.ToArray();
        if (all.Length == 0)
            return;
        Head(text, head);
        foreach (var line in all)
            Line(text, 1, line);
    }

    private static void Head(StringBuilder text, string head)
    {
        text.Append('\n');
        Line(text, 0, head);
    }

    private static void Line(StringBuilder text, int indent, string line) => text.Append(' ', 2 * indent).Append(line).Append('\n');
}
