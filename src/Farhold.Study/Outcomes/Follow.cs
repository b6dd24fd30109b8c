namespace Farhold.Study.Outcomes;

/// <summary>What a policy led to, in hours since tightening; infinity is never. It serves every hour of evacuation.</summary>
internal readonly record struct PolicyCourse(double DiesAt, double ReleasedAt, double TiedAgainAt, bool OnSecond, bool Failed)
{
    public static readonly PolicyCourse Tied = new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity, false, false);
}

/// <summary>What came of one casualty by the time of care.</summary>
internal readonly record struct CareOutcome(bool BledToDeath, bool DiedAtRelease, bool LimbLost, bool Palsy)
{
    public bool Died => BledToDeath || DiedAtRelease;

    /// <summary>A death counts alone.</summary>
    public double Harm(Weights weights) => Died ? weights.Death : (LimbLost ? weights.Limb : 0) + (Palsy ? weights.Palsy : 0);
}

/// <summary>Follows one casualty under one policy.</summary>
/// <remarks>
/// A limb that is tied off again counts all its time since the first tightening, as if it had never been loose: the worse side. A second
/// bleed may last as long as the limit less what bled before it, as if nothing had been made up since: the worse side too.
/// </remarks>
internal static class Follow
{
    /// <param name="limits">Null: <see cref="StudyInput.DeathPerFailure"/> and <see cref="StudyInput.DeathPerRebleed"/> decide.</param>
    public static PolicyCourse Of(Policy policy, InputValues v, in Luck luck, bool needed, LimitTable? limits, int casualty)
    {
        if (limits?.IsDead(casualty, needed) == true)
            return PolicyCourse.Tied with { DiesAt = 0 };
        if (policy.AttemptH is not { } at)
            return PolicyCourse.Tied;
        var (bled, failed, second) = (0.0, false, false);
        var share = v.HoldScores[
            !needed ? 2
            : policy.Gauze == Gauze.Plain ? 1
            : 0
        ];
        while ((v.SameWound * luck.Difficulty) + (v.OwnChance * (second ? luck.SecondHold : luck.Hold)) >= share)
        {
            failed = true;
            var after = v[StudyInput.FailsWithinMin] * (second ? luck.SecondFails : luck.Fails);
            var dies = Bleeds(
                policy,
                v,
                second ? luck.Second : luck.First,
                at,
                after,
                StudyInput.DeathPerFailure,
                needed,
                limits,
                casualty,
                ref bled
            );
            if (!double.IsInfinity(dies))
                return new(dies, double.PositiveInfinity, double.PositiveInfinity, second, true);
            if (second || !policy.SecondTry)
                return PolicyCourse.Tied with { Failed = true };
            (second, at) = (true, at + Policy.Gap);
        }

        var moved = v[StudyInput.MoveAfterH] * luck.Move;
        var halves = v[StudyInput.RebleedHalvesH];
        var again = v[StudyInput.Rebleed] * (halves > 0 ? Math.Pow(2, -moved / halves) : 1) * (needed ? 1 : v[StudyInput.RebleedNotNeeded]);
        if (luck.Rebleeds >= again)
            return new(double.PositiveInfinity, at, double.PositiveInfinity, second, failed);
        var late = Bleeds(policy, v, luck.Late, at, 60 * moved, StudyInput.DeathPerRebleed, needed, limits, casualty, ref bled);
        return new(late, at, at + moved, second, failed);
    }

    /// <summary>When it kills, in hours; infinity where it is caught in time.</summary>
    /// <param name="since">Minutes from slackening to the bleed.</param>
    /// <param name="bled">Minutes bled before, and after it.</param>
    private static double Bleeds(
        Policy policy,
        InputValues v,
        in BleedLuck luck,
        double at,
        double since,
        StudyInput share,
        bool needed,
        LimitTable? limits,
        int casualty,
        ref double bled
    )
    {
        var hour = at + (since / 60);
        if (limits is null)
            return luck.Dies < v[share] ? hour : double.PositiveInfinity;
        var caught = Caught(policy.Watch, v, luck, since);
        var limit = limits.At(casualty, needed, hour);
        var left = (limit * v[StudyInput.TimeToDeath]) - bled;
        bled += caught;
        return caught >= left ? hour + (Math.Max(left, 0) / 60) : double.PositiveInfinity;
    }

    /// <summary>Minutes from the first blood to a tight tourniquet.</summary>
    internal static double Caught(Watch watch, InputValues v, in BleedLuck luck, double since)
    {
        var (every, missing) = (watch.Every(since), v[StudyInput.MissedLook]);
        var missed = missing <= 0 ? 0 : Math.Min(20, Math.Floor(Math.Log(luck.Missed) / Math.Log(missing)));
        return ((luck.Phase + missed) * every) + (v[StudyInput.ReactionMin] * (0.5 + luck.Reaction));
    }

    /// <param name="policy">Its place among the study's.</param>
    /// <param name="care">Place of the hour of evacuation.</param>
    public static CareOutcome At(StudyPlan plan, int policy, int care, in PolicyCourse course, InputValues v, in Luck luck, bool needed)
    {
        var hour = plan.Evacuation[care];
        var bled = course.DiesAt <= hour;
        var opened = course.ReleasedAt < hour;
        var loose = opened && !(course.TiedAgainAt <= hour);
        var released = course.OnSecond ? v.Released[policy].Second : v.Released[policy].First;
        var tied = loose ? released : v.AtCare[care];
        var died = !bled && ((opened && luck.Release < released.ReleaseDeath) || (!loose && luck.Release < v.AtCare[care].ReleaseDeath));
        var artery = needed && luck.Artery < v[StudyInput.ArteryDecides];
        return new(
            bled,
            died,
            luck.Limb < (artery ? v.ByArtery[care] : tied.LimbLost),
            luck.Palsy < tied.Palsy && luck.Lasting < v[StudyInput.PalsyLasting]
        );
    }
}
