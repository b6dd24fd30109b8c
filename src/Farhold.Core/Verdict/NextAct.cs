using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>What to do next on a limb, what would change the verdict, and when to look again.</summary>
/// <param name="Text">One sentence, from the criterion that decides.</param>
/// <param name="Changes">What would change the verdict, a sentence for each reason; empty where nothing does.</param>
/// <param name="LookAgain">Never later than a quarter of an hour from now.</param>
/// <param name="Cautions">To be read before an attempt.</param>
public sealed record NextAct(
    string Text, ImmutableArray<string> Sources, ImmutableArray<string> Changes, Instant LookAgain, ImmutableArray<string> Cautions)
{
    /// <summary>The longest until the next look, whatever the verdict (design).</summary>
    private static readonly Duration Longest = Duration.FromMinutes(15);

    public static NextAct For(LimbVerdict limb)
    {
        if (limb.Scene is not { } scene)
            return new("", [], [], Instant.MinValue, []);
        var texts = new Evaluating(scene.Casualty.Protocol.Freshness.SetItems(scene.Casualty.Protocol.CareFreshness), scene, scene.Casualty.Evaluating);
        var (text, sources) = Decisive(limb, scene, texts);
        return new(
            text, sources,
            limb.Verdict == Verdict.Attempt ? [] : [.. limb.Reasons.Select(r => r.Criterion.Change).OfType<string>().Distinct()],
            Again(scene.Casualty), limb.Verdict == Verdict.Attempt ? [.. CautionsOf(limb, scene, texts)] : []);
    }

    private static (string Text, ImmutableArray<string> Sources) Decisive(LimbVerdict limb, Scene scene, Evaluating texts)
    {
        if (limb.Verdict == Verdict.Attempt)
            return (First(scene.Casualty.Protocol.AttemptActs, texts) ?? VerdictWords.Of(limb.Verdict), []);
        var reasons = limb.Reasons.ToArray();
        var decisive = reasons.FirstOrDefault(r => r.Against == Truth.Met) ?? reasons.FirstOrDefault();
        return decisive is null ? (VerdictWords.Of(limb.Verdict), [])
            : (decisive.Against == Truth.Met && First(decisive.Criterion.Acts, texts) is { } act ? act : Look(decisive, scene), decisive.Criterion.Sources);
    }

    private static string Look(Finding finding, Scene scene)
    {
        if (finding.Criterion.Condition.Inputs.Contains(Input.ClearLooks) && ClearLooks.SecondDue(scene.Casualty) is { } second)
            return second <= scene.Now
                ? "Second look now: take all the signs of shock again."
                : $"Second look at {Say.Time(second)}: take all the signs of shock again.";
        var look = finding.Criterion.Look ?? finding.Needs?.Look ?? "";
        return look.Length == 0 ? finding.Criterion.Text : char.ToUpperInvariant(look[0]) + look[1..] + (look[^1] is '?' or '.' ? "" : ".");
    }

    private static string? First(ImmutableArray<ConditionalText> acts, Evaluating texts) =>
        acts.FirstOrDefault(a => a.When is null || texts.Of(a.When).State == Truth.Met)?.Text;

    /// <summary>Those of the protocol, then every finding that gave way, with the reason.</summary>
    private static IEnumerable<string> CautionsOf(LimbVerdict limb, Scene scene, Evaluating texts)
    {
        foreach (var caution in scene.Casualty.Protocol.Cautions)
            if (caution.When is null || texts.Of(caution.When).State == Truth.Met)
                yield return caution.Text;
        foreach (var lifted in limb.Findings.Where(f => f.Lifted != Lift.None))
            yield return $"{lifted.Criterion.Text} {Because(lifted.Lifted)}";
        var soft = scene.Casualty.Soft;
        foreach (var sign in limb.Findings.Where(f => soft.Lifted != Lift.None && soft.Met.Contains(f.Criterion.Id)))
            yield return $"{sign.Criterion.Text} {Because(soft.Lifted)}";
    }

    private static string Because(Lift lift) => lift switch
    {
        Lift.Advice => "Advice given since allows the attempt all the same.",
        Lift.Unreached => "Nobody can be reached, and the looks stayed steady: it alone does not forbid the attempt. Stop if anything gets worse.",
        _ => "",
    };

    /// <summary>When the newest look goes stale, or the second one may be taken.</summary>
    private static Instant Again(CasualtyView casualty)
    {
        var next = ClearLooks.SecondDue(casualty)
            ?? casualty.Looks.Last?.When.Earliest + Duration.Min(casualty.Looks.Fresh, Longest)
            ?? casualty.Now;
        return Instant.Min(Instant.Max(next, casualty.Now), casualty.Now + Longest);
    }
}
