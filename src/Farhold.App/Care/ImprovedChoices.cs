using System.Collections.Immutable;
using Farhold.App.Words;

namespace Farhold.App.Care;

/// <summary>What has improved since an attempt bled: after the first one, another may be made then.</summary>
internal sealed class ImprovedChoices(State state, Judgement picture, Texts texts)
{
    public ImmutableArray<QuickGroup> Groups => [.. picture.Limbs.Where(l => Counts(l, state, picture)).Select(l => new QuickGroup(
        Labels.Word(l.Limb), [.. Better.Select(b => new QuickOption(b, _ => new Payload.TaskDone(Task(l.Limb), b)))], Hint: texts.ImprovedHint))];

    /// <summary>One attempt bled, and nothing has allowed another since.</summary>
    public static bool Counts(LimbVerdict limb, State state, Judgement picture) =>
        limb.Findings.Any(f => f.Against == Truth.Met && f.Criterion.Condition.Inputs.Contains(Input.FurtherAttemptAllowed))
        && Attempt.On(limb.Limb, state, picture.At).Count(a => a.Result == AttemptResult.Bled) == 1;

    private static string Task(Limb limb) => $"{TaskNames.Improved}.{Wire.Word(limb)}";

    private string[] Better => [texts.ImprovedLight, texts.ImprovedSupplies, texts.ImprovedHands];
}
