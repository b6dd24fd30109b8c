using NodaTime;

namespace Farhold.Verdicts;

/// <summary>Has it stopped? Asked after every tightening, and again and again once it has bled under or after a tourniquet.</summary>
internal static class EffectChecks
{
    /// <summary>A check is not called overdue within this time (design).</summary>
    private static readonly Duration Grace = Duration.FromMinutes(1);

    /// <summary>The next check of a limb whose tourniquet is, or may be, tight; null where none is due of it.</summary>
    /// <param name="attempt">Under way on the limb, or null. While pressure has to be held nobody can look under it.</param>
    public static DueTask? Next(Scene scene, AttemptProgress? attempt)
    {
        if (attempt?.Current is { Step.Id: StepId.Hold, NotBefore: { } held } && scene.Now < held)
            return null;
        var plan = scene.Casualty.Protocol.Effect;
        var limb = scene.Clock!.Limb;
        var tightened = scene
            .State.Of(Kind.TourniquetTightened)
            .Last(t => t.When.Earliest <= scene.Now && t.As<Payload.TourniquetTightened>().Limb == limb)
            .When;
        var from = tightened.Latest < scene.Now ? tightened.Latest : scene.Now;
        var bled = LastBled(scene);
        if (bled is { } b && b.Latest > from)
            from = Instant.Min(b.Latest, scene.Now);
        var looked = LastCheck(scene) is { } check && check >= from ? check : (Instant?)null;
        var at =
            looked is null ? from
            : bled is null ? (Instant?)null
            : After(plan, from, looked.Value);
        if (at is not { } due)
            return null;
        return new(due, DueList.Name(TaskNames.Effect, limb), limb, plan.Text, plan.Sources, due + Grace < scene.Now)
        {
            BySeeing = true,
            Leads = due <= scene.Now,
        };
    }

    /// <summary>When the limb last bled under its tourniquet or after it was let go; null where it never did.</summary>
    public static Happened? LastBled(Scene scene)
    {
        var first = scene.Clock!.FirstTightened;
        var wounds = LimbWounds.Treated(scene.Clock.Limb, scene.State, scene.Now);
        Happened? last = null;
        var checks = scene.State.Of(Kind.BleedingChecked);
        for (var i = checks.Length - 1; i >= 0 && checks[i].When.Latest > first.Latest && !(checks[i].When.Latest < last?.Latest); i--)
            if (
                checks[i].When.Earliest <= scene.Now
                && checks[i].As<Payload.BleedingChecked>() is { Bleeding: Bleeding.Active } check
                && wounds.Contains(check.Wound)
            )
                last = checks[i].When;
        foreach (var attempt in scene.Attempts)
            if (
                attempt.Result == AttemptResult.Bled
                && (attempt.Ended ?? attempt.Started) is var failed
                && !(failed.Latest <= last?.Latest)
            )
                last = failed;
        return last;
    }

    private static Instant? LastCheck(Scene scene)
    {
        var wounds = LimbWounds.Treated(scene.Clock!.Limb, scene.State, scene.Now);
        return scene
            .State.Of(Kind.BleedingChecked)
            .LastOrDefault(c => c.When.Latest <= scene.Now && wounds.Contains(c.As<Payload.BleedingChecked>().Wound))
            ?.When.Latest;
    }

    /// <summary>The next time of the plan that is later than the last look.</summary>
    private static Instant? After(EffectPlan plan, Instant from, Instant looked)
    {
        foreach (var check in plan.Checks)
            if (from + check > looked)
                return from + check;
        for (var at = from + plan.Checks[^1] + plan.Every; at <= from + plan.Until; at += plan.Every)
            if (at > looked)
                return at;
        return null;
    }
}
