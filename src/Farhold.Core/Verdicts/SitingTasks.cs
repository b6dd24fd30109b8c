using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>What is due about where a tourniquet sits: look, then re-site it.</summary>
internal static class SitingTasks
{
    /// <summary>Design: bleeding and breathing come first; the look costs a minute.</summary>
    private static readonly Duration Settled = Duration.FromMinutes(10);

    private static readonly ImmutableArray<string> Sources = ["TCCC", "Holcomb-2023", "design"];

    /// <summary>
    /// Not while it bleeds or an attempt is under way; not in shock, and not past the time limit, where a limb is better left alone
    /// (design).
    /// </summary>
    public static IEnumerable<DueTask> Of(IEnumerable<LimbVerdict> limbs, CasualtyView casualty)
    {
        var (state, now) = (casualty.State, casualty.Now);
        foreach (var limb in limbs)
        {
            var on = limb.Clock.SinceFirstTightened;
            if (limb.Attempt is not null || on.Max >= casualty.Protocol.Clock.Limit || limb.Clock.Tight != Truth.Met)
                continue;
            if (ReSiting.Of(limb.Limb, state, now) is not { } act)
                continue;
            var at = limb.Clock.FirstTightened.Earliest + Settled;
            if (act.Step == ReSitingStep.Look)
                yield return Task(TaskNames.Site, Look, at);
            else if (act.Step != ReSitingStep.SecondOn || casualty.Shock.State == Truth.NotMet)
                yield return Task(TaskNames.ReSite, Text(act, on.Max >= casualty.Protocol.Clock.Window), Instant.Min(at, now));

            DueTask Task(string name, string text, Instant when) =>
                new(when, DueList.Name(name, limb.Limb), limb.Limb, text, Sources, when < now) { BySeeing = true };
        }
    }

    private static string Look => VerdictTexts.SitingLook;

    private static string Text(ReSiting act, bool late) =>
        act.Step switch
        {
            ReSitingStep.SecondOn => VerdictTexts.ReSiteBecause(string.Join(VerdictTexts.ReSiteAnd, act.First.Because))
                + (late ? VerdictTexts.ReSiteAdviceFirst : "")
                + VerdictTexts.ReSiteSecond,
            ReSitingStep.Check => VerdictTexts.ReSiteStopped,
            ReSitingStep.SlackenFirst => VerdictTexts.ReSiteSlacken,
            _ => VerdictTexts.ReSiteAlone,
        };
}
