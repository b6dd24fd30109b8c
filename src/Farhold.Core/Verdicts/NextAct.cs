using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>What to do next on a limb, what would change the verdict, and when to look again.</summary>
/// <param name="Text">One sentence, from the criterion that decides; the time it may have to wait for is <see cref="NotBefore"/>.</param>
/// <param name="Changes">What would change the verdict, a sentence for each reason; empty where nothing does.</param>
/// <param name="LookAgain">Never later than a quarter of an hour from now.</param>
/// <param name="Cautions">To be read before an attempt.</param>
public sealed record NextAct(
    string Text,
    ImmutableArray<string> Sources,
    ImmutableArray<string> Changes,
    Instant LookAgain,
    ImmutableArray<string> Cautions
)
{
    /// <summary>The longest until the next look, whatever the verdict (design).</summary>
    private static readonly Duration Longest = Duration.FromMinutes(15);

    /// <summary>When the second look is due, where that is what is missing; null: at once.</summary>
    public Instant? NotBefore { get; init; }

    /// <summary>The finding that the sentence is from; null where nothing stands against an attempt.</summary>
    public Finding? Decides { get; init; }

    /// <summary>What the sentence asks to find out before all else; null where it begins with what the finding says.</summary>
    public Input? Asks { get; init; }

    /// <summary>The sentence, with the time it has to wait for.</summary>
    /// <param name="zone">For that time; null: UTC.</param>
    public string Said(DateTimeZone? zone = null) => NotBefore is { } at ? VerdictTexts.NotBefore(Text, Say.Time(at, zone)) : Text;

    public static NextAct For(LimbVerdict limb)
    {
        if (limb.Scene is not { } scene)
            return new("", [], [], Instant.MinValue, []);
        var texts = new CriterionEvaluator(scene.Casualty.CareFreshness, scene, scene.Casualty.Evaluator);
        var because = Decisive(limb);
        var second = because is null ? null : SecondLook(because, scene.Casualty);
        var asks = second is null ? AskedFirst(limb, because) : null;
        return new(
            second is not null ? VerdictTexts.SecondLook
                : asks is null ? Sentence(limb.Verdict, because, scene, texts)
                : because!.Against != Truth.Met ? Whole(asks.Look)
                : $"{Whole(asks.Look)} {Sentence(limb.Verdict, because, scene, texts)}",
            because?.Criterion.Sources ?? [],
            limb.Verdict == Verdict.Attempt ? [] : [.. YesInPart(scene), .. ChangesOf(limb, because)],
            Again(scene.Casualty),
            limb.Verdict == Verdict.Attempt ? [.. CautionsOf(limb, scene, texts)] : []
        )
        {
            NotBefore = second > scene.Now ? second : null,
            Decides = because,
            Asks = asks,
        };
    }

    /// <summary>
    /// What has to be asked before a soft sign that stands can come to anything: looks without an age, or without the pressure or the
    /// refill that stands for it, are not whole, and the usual round of signs never makes them so.
    /// </summary>
    private static Input? AskedFirst(LimbVerdict limb, Finding? because)
    {
        if (because?.Needs is { } needs && (needs == Input.RateSilent || needs == Input.AgeYears))
            return Input.AgeYears;
        if (because is not { Against: Truth.Met, Criterion: { Group: Criterion.ShockGroup, IsStrongSign: false } })
            return null;
        var open = limb
            .Findings.Where(f =>
                f.State == Truth.Unknown && (f.Criterion.IsSign || f.Criterion.Condition.Inputs.Contains(Input.RateSilent))
            )
            .SelectMany(f => f.Trace.Leaves)
            .Select(l => l.Needs)
            .ToHashSet();
        return open.Contains(Input.AgeYears) || open.Contains(Input.RateSilent) ? Input.AgeYears
            : open.Contains(Input.Systolic) || open.Contains(Input.ShockIndex) ? Input.Systolic
            : null;
    }

    /// <summary>
    /// For all that stands against an attempt; for what nobody has looked at yet only the first, or the list would hide it.
    /// </summary>
    private static ImmutableArray<string> ChangesOf(LimbVerdict limb, Finding? because)
    {
        var texts = limb
            .Reasons.Where(r => r.Against == Truth.Met)
            .Select(r => r.Criterion.Change)
            .DefaultIfEmpty(because?.Criterion.Change)
            .OfType<string>()
            .Distinct()
            .ToImmutableArray();
        return texts.IsEmpty && limb.Verdict == Verdict.CheckFirst ? [VerdictTexts.ChangedByAnswers] : texts;
    }

    /// <summary>
    /// What stands against an attempt; but while advice on it is waited for, or can't be had, first what can be looked at.
    /// </summary>
    private static Finding? Decisive(LimbVerdict limb)
    {
        if (limb.Verdict == Verdict.Attempt)
            return null;
        var reasons = limb.Reasons.ToArray();
        var standing = reasons.FirstOrDefault(r => r.Against == Truth.Met);
        var open = reasons.Where(r => r.Against == Truth.Unknown);
        if (limb.Scene?.Casualty is not { Advice.Tried: true } casualty || standing is not { Criterion.AdviceLifts: true })
            return standing ?? open.FirstOrDefault();
        return open.FirstOrDefault(r => !(SecondLook(r, casualty) > casualty.Now)) ?? standing;
    }

    /// <summary>When the second look may be taken, where it is what the finding waits for.</summary>
    private static Instant? SecondLook(Finding because, CasualtyView casualty) =>
        because.Against != Truth.Met && because.Criterion.Condition.Inputs.Contains(Input.ClearLooks)
            ? ClearLooks.SecondDue(casualty)
            : null;

    private static string Sentence(Verdict verdict, Finding? because, Scene scene, CriterionEvaluator texts) =>
        because switch
        {
            null when verdict == Verdict.Attempt => First(scene.Casualty.Protocol.AttemptActs, texts) ?? VerdictWords.Of(verdict),
            null => VerdictWords.Of(verdict),
            { Against: Truth.Met } when First(because.Criterion.Acts, texts) is { } act => act,
            _ => Look(because),
        };

    private static string Look(Finding finding)
    {
        var look = finding.Criterion.Look ?? finding.Needs?.Look ?? "";
        return look.Length == 0 ? finding.Criterion.Text : Whole(look);
    }

    private static string Whole(string look) => char.ToUpperInvariant(look[0]) + look[1..] + (look[^1] is '?' or '.' ? "" : ".");

    private static string? First(ImmutableArray<ConditionalText> acts, CriterionEvaluator texts) =>
        acts.FirstOrDefault(a => a.When is null || texts.Of(a.When).State == Truth.Met)?.Text;

    /// <summary>Those of the protocol, what the adviser said, then every finding that gave way, with the reason.</summary>
    private static IEnumerable<string> CautionsOf(LimbVerdict limb, Scene scene, CriterionEvaluator texts)
    {
        foreach (var caution in scene.Casualty.Protocol.Cautions)
            if (caution.When is null || texts.Of(caution.When).State == Truth.Met)
                yield return caution.Text;
        foreach (var said in scene.Casualty.Advice.Words)
            yield return Plain.Line(VerdictTexts.KeepToAdvice(said));
        foreach (var said in YesInPart(scene))
            yield return said;
        foreach (var lifted in limb.Findings.Where(f => f.Lifted != Lift.None))
            yield return $"{lifted.Criterion.Text} {Because(lifted.Lifted)}";
        var soft = scene.Casualty.Soft;
        foreach (var sign in limb.Findings.Where(f => soft.Lifted != Lift.None && soft.Met.Contains(f.Criterion.Id)))
            yield return $"{sign.Criterion.Text} {Because(soft.Lifted)}";
    }

    /// <summary>A yes that the local protocol lets count for a part only, or for nothing.</summary>
    private static IEnumerable<string> YesInPart(Scene scene) =>
        scene.Casualty.Advice.InPart.Select(yes => AllowanceWords.InPart(yes.From, yes.Office, scene.Casualty.Protocol));

    private static string Because(Lift lift) =>
        lift switch
        {
            Lift.Advice => VerdictTexts.BecauseAdvised,
            Lift.Unreached => VerdictTexts.BecauseUnreached,
            _ => "",
        };

    /// <summary>When the newest look goes stale, or the second one may be taken.</summary>
    private static Instant Again(CasualtyView casualty)
    {
        var next =
            ClearLooks.SecondDue(casualty)
            ?? casualty.Looks.Last?.When.Earliest + Duration.Min(casualty.Looks.Fresh, Longest)
            ?? casualty.Now;
        return Instant.Min(Instant.Max(next, casualty.Now), casualty.Now + Longest);
    }
}
