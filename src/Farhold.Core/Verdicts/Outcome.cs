using System.Collections.Immutable;

namespace Farhold.Verdicts;

/// <summary>How one limb stands, in the parts whose change is worth telling.</summary>
/// <param name="Verdict">Null where the limb's tourniquets have given way and it is only watched.</param>
/// <param name="BleedsAgain">For a watched limb.</param>
/// <param name="Reasons">Ids of the criteria that decide, in the order of the protocol.</param>
public sealed record LimbOutcome(
    Limb Limb,
    Verdict? Verdict,
    Truth Tight,
    Truth? BleedsAgain,
    ImmutableArray<string> Reasons,
    ImmutableArray<string> CheckFirst
)
{
    public bool Equals(LimbOutcome? other) =>
        other is not null
        && (Limb, Verdict, Tight, BleedsAgain) == (other.Limb, other.Verdict, other.Tight, other.BleedsAgain)
        && Reasons.SequenceEqual(other.Reasons)
        && CheckFirst.SequenceEqual(other.CheckFirst);

    public override int GetHashCode() => HashCode.Combine(Limb, Verdict, Tight, BleedsAgain, Reasons.Length, CheckFirst.Length);
}

/// <summary>What a judgement comes to. Equality compares the content.</summary>
public sealed record Outcome(ImmutableArray<LimbOutcome> Limbs, Truth Shock)
{
    public static readonly Outcome Nothing = new([], Truth.Unknown);

    public static Outcome Of(Judgement judgement) =>
        new(
            [
                .. judgement
                    .Limbs.Select(l => new LimbOutcome(
                        l.Limb,
                        l.Verdict,
                        l.Clock.Tight,
                        null,
                        [.. l.Reasons.Select(r => r.Criterion.Id)],
                        [.. l.CheckFirst.Select(i => i.Name)]
                    ))
                    .Concat(judgement.Observed.Select(w => new LimbOutcome(w.Limb, null, w.Clock.Tight, w.Bleeding, [], [])))
                    .OrderBy(l => l.Limb),
            ],
            judgement.Shock.State
        );

    public bool Equals(Outcome? other) => other is not null && Shock == other.Shock && Limbs.SequenceEqual(other.Limbs);

    public override int GetHashCode() => HashCode.Combine(Shock, Limbs.Length);

    /// <summary>What is different from an earlier outcome, a line each.</summary>
    public IEnumerable<string> Since(Outcome before)
    {
        foreach (var limb in Limbs)
            if (before.Limbs.FirstOrDefault(b => b.Limb == limb.Limb) is var was && !limb.Equals(was))
                yield return Difference(was, limb);
        foreach (var gone in before.Limbs.Where(b => Limbs.All(l => l.Limb != b.Limb)))
            yield return VerdictTexts.OutcomeNoTourniquet(Say.Limb(gone.Limb));
        if (Shock != before.Shock)
            yield return VerdictTexts.OutcomeShock(State(Shock));
    }

    private static string Difference(LimbOutcome? was, LimbOutcome now)
    {
        var tight =
            was?.Tight == now.Tight ? ""
            : now.Tight == Truth.Unknown ? VerdictTexts.OutcomePerhapsTight
            : VerdictTexts.OutcomeTight;
        if (now.Verdict is not { } verdict)
            return VerdictTexts.OutcomeBleeding(
                Say.Limb(now.Limb),
                was is { Verdict: null } ? "" : VerdictTexts.OutcomeLoosened,
                State(now.BleedsAgain!.Value)
            );
        var still = was?.Verdict == verdict ? VerdictTexts.OutcomeStill : "";
        return $"{Say.Limb(now.Limb)}: {still}{Wire.Word(verdict)}{tight}{Why(now)}";
    }

    /// <summary>What forbids or makes wait; of what is open only what is most decisive, it can be all of a protocol.</summary>
    private static string Why(LimbOutcome limb) =>
        limb.Verdict switch
        {
            Farhold.Verdicts.Verdict.LeaveOn or Farhold.Verdicts.Verdict.AwaitHelp => $" ({string.Join(", ", limb.Reasons)})",
            Farhold.Verdicts.Verdict.CheckFirst when limb.CheckFirst.Length > 3 => VerdictTexts.OutcomeLookFirstMore(
                Inputs(limb.CheckFirst.Take(3)),
                Say.Number(limb.CheckFirst.Length - 3)
            ),
            Farhold.Verdicts.Verdict.CheckFirst => VerdictTexts.OutcomeLookFirst(Inputs(limb.CheckFirst)),
            _ => "",
        };

    private static string Inputs(IEnumerable<string> names) => string.Join(", ", names.Select(InputWords.Name));

    private static string State(Truth truth) =>
        truth switch
        {
            Truth.Met => VerdictTexts.Yes,
            Truth.NotMet => VerdictTexts.No,
            _ => VerdictTexts.NotKnown,
        };
}
