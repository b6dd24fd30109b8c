using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>What has improved since an attempt bled: after the first one, another may be made then.</summary>
internal sealed class ImprovedChoices(State state, Judgement picture, Texts texts)
{
    public ImmutableArray<QuickGroup> Groups =>
        [
            .. picture
                .Limbs.Where(l => Counts(l, state, picture))
                .Select(l => new QuickGroup(
                    texts.Word(l.Limb),
                    [.. Better.Select(b => new QuickOption(b.Shown, _ => new Payload.TaskDone(Task(l.Limb), b.Recorded)))],
                    Hint: texts.ImprovedHint
                )),
        ];

    /// <summary>One attempt bled, and nothing has allowed another since.</summary>
    public static bool Counts(LimbVerdict limb, State state, Judgement picture) =>
        limb.Findings.Any(f => f.Against == Truth.Met && f.Criterion.Condition.Inputs.Contains(Input.FurtherAttemptAllowed))
        && Attempt.On(limb.Limb, state, picture.At).Count(a => a.Result == AttemptResult.Bled) == 1;

    private static string Task(Limb limb) => $"{TaskNames.Improved}.{Wire.Word(limb)}";

    private (string Recorded, string Shown)[] Better =>
        [
            (texts.Recorded.ImprovedLight, texts.ImprovedLight),
            (texts.Recorded.ImprovedSupplies, texts.ImprovedSupplies),
            (texts.Recorded.ImprovedHands, texts.ImprovedHands),
        ];
}
