using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>The answer for one limb. Ordered from the one that risks something now to the most cautious.</summary>
public enum Verdict
{
    /// <summary>Everything required is known and met: pack, dress, slacken, watch.</summary>
    Attempt,

    /// <summary>Nothing forbids an attempt, but higher care is expected soon enough that it gains nothing.</summary>
    AwaitHelp,

    /// <summary>Something the decision depends on is unknown or stale.</summary>
    CheckFirst,

    /// <summary>A contraindication is met, the time limit has passed, or the last attempt showed the tourniquet is needed.</summary>
    LeaveOn,
}

/// <summary>
/// What the clock brings next, on the side that is worse for the casualty. <paramref name="What"/> such as <c>limit-6h</c>.
/// </summary>
public sealed record ClockEvent(Instant At, string What);

/// <summary>The verdict for a limb whose tourniquet is, or may be, tight.</summary>
/// <param name="Findings">Every criterion, in the order of the protocol.</param>
/// <param name="CheckFirst">What to look at, most decisive first; empty unless the verdict says so.</param>
/// <param name="Attempt">The attempt under way, or null.</param>
public sealed record LimbVerdict(
    LimbClock Clock,
    Verdict Verdict,
    ImmutableArray<Finding> Findings,
    ImmutableArray<Input> CheckFirst,
    ImmutableArray<ClockEvent> Next,
    AttemptProgress? Attempt
)
{
    public Limb Limb => Clock.Limb;

    /// <summary>What was looked at; null in a verdict put together by hand.</summary>
    internal Scene? Scene { get; init; }

    /// <summary>What to do next on this limb, as the protocol says.</summary>
    public NextAct Act => act ??= NextAct.For(this);

    /// <summary>The findings that decide the verdict, in the order of the protocol.</summary>
    public IEnumerable<Finding> Reasons =>
        Findings.Where(f =>
            Verdict switch
            {
                Verdict.LeaveOn => f.Criterion.Role is not (Role.Awaits or Role.Asks) && f.Weighs == Truth.Met,
                Verdict.AwaitHelp => f.Criterion.Role == Role.Awaits && f.Against == Truth.Met,
                Verdict.CheckFirst => f.Criterion.Role == Role.Awaits ? f.Against == Truth.Unknown : f.Weighs == Truth.Unknown,
                Verdict.Attempt => f.Criterion.Hard,
                _ => throw new System.Diagnostics.UnreachableException(),
            }
        );

    private NextAct? act;
}

/// <summary>A limb whose tourniquets have all been slackened or removed: nothing to decide, but much to watch.</summary>
/// <param name="Loosened">When the last of them gave way.</param>
/// <param name="Bleeding">Whether the wound bleeds again; unknown if nobody looked since.</param>
/// <param name="BledAgain">When that was seen, if it does.</param>
public sealed record ObservedLimb(LimbClock Clock, Happened Loosened, Truth Bleeding, Happened? BledAgain, AttemptProgress? Attempt)
{
    public Limb Limb => Clock.Limb;
}

/// <summary>Everything Farhold says of a casualty at one instant: a pure function of record, rulebook and instant.</summary>
/// <param name="Doubts">Why the record may not be whole, settled or not.</param>
public sealed record Judgement(
    Instant At,
    Rulebook Rules,
    ImmutableArray<LimbVerdict> Limbs,
    ImmutableArray<ObservedLimb> Observed,
    ShockPicture Shock,
    ImmutableArray<DueTask> Due,
    ImmutableArray<Doubt> Doubts,
    ImmutableArray<Remark> Remarks
)
{
    /// <summary>The one in force, the local one laid over it where there is one.</summary>
    public Protocol Protocol => Rules.Protocol;

    /// <summary>What must not be done now, though the plan has it.</summary>
    public ImmutableArray<WithheldTask> Withheld { get; init; } = [];

    /// <summary>The care plan of one reading of the record, with what is not asked for yet; empty once care has ended.</summary>
    internal ImmutableArray<PlannedTask> Plan { get; init; } = [];

    /// <summary>Why a task must not be done, also while it is not asked for yet; null where it may be.</summary>
    public string? Forbids(string task) =>
        Withheld.FirstOrDefault(w => w.Name == task)?.Text
        ?? Plan.FirstOrDefault(p => p.Name == task && p is { Applies: Truth.NotMet })?.Task.Instead;

    /// <summary>What air and wind do to everybody; null where no weather was stated.</summary>
    public Exposure? Exposure { get; init; }

    /// <summary>Whether tasks come at their closer intervals.</summary>
    public bool Unstable { get; init; }

    /// <summary>Whether shock was suspected by the signs last seen, however old: a sign is lifted by a look, never by time.</summary>
    public Truth ShockLastKnown { get; init; }
}
