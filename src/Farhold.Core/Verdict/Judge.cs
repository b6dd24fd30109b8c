using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold;

/// <summary>Judges a record by a protocol at an instant. Pure: the same three give the same answer.</summary>
public static class Judge
{
    /// <param name="rhythm">Day and night, and the changes of watch; null: nobody tells, and nothing waits. No verdict depends on it.</param>
    public static Judgement At(CareRecord record, Protocol protocol, Instant now, Rhythm? rhythm = null)
    {
        var doubts = record.Doubts;
        var judged = record.Readings.Select(state => Of(state, doubts, protocol, now, rhythm)).ToImmutableArray();
        var one = judged.Length == 1 ? judged[0] : MostCautious(judged);
        return one with { Doubts = doubts, Remarks = [.. record.Remarks, .. Oddities.Of(record.Readings[0])] };
    }

    /// <summary>Judges one reading of a record.</summary>
    public static Judgement Of(State state, ImmutableArray<Doubt> doubts, Protocol protocol, Instant now, Rhythm? rhythm = null)
    {
        var open = Unsettled(doubts, state, now);
        var casualty = new Evaluating(protocol, new(state, now, null, [], open));
        var shock = Shock(protocol, casualty);
        var limbs = ImmutableArray.CreateBuilder<LimbVerdict>();
        var watched = ImmutableArray.CreateBuilder<WatchedLimb>();
        foreach (var limb in Enum.GetValues<Limb>())
        {
            if (LimbClock.Of(limb, state, now) is not { } clock)
                continue;
            var attempts = Attempt.On(limb, state, now);
            var progress = AttemptProgress.Of(attempts, state, protocol, now);
            if (clock.Tight == Truth.NotMet)
                watched.Add(Watching.Of(clock, state, now, progress));
            else
                limbs.Add(Of(new(state, now, clock, attempts, open), clock, protocol, progress, casualty));
        }

        var stale = shock.Signs.Any(f => f.Trace.Leaves.Any(l => l.Used.Any(u => u.Stale)));
        var lastKnown = stale ? LastKnownShock(state, open, protocol, now) : shock.State;
        var over = state.Of(Kind.CareEnded).Any(e => e.When.Latest <= now);
        var unstable = DueList.IsUnstable(limbs, watched, lastKnown, now);
        var plan = over ? [] : CarePlan.Of(
            state, protocol, limbs.Select(l => l.Clock).Concat(watched.Select(w => w.Clock)), open, unstable, rhythm ?? Rhythm.None, now);
        var due = over ? [] : DueList.Of(state, protocol.Watch, limbs, watched, plan.Where(p => !p.Later), open, now);
        return new(now, protocol, limbs.ToImmutable(), watched.ToImmutable(), shock, due, doubts, [])
        {
            Withheld = [.. CarePlan.Withheld(plan)],
            Unstable = unstable,
            Plan = plan,
        };
    }

    private static LimbVerdict Of(
        Scene scene, LimbClock clock, Protocol protocol, AttemptProgress? progress, Evaluating casualty)
    {
        var evaluating = new Evaluating(protocol, scene, casualty);
        var findings = protocol.Criteria.Select(evaluating.Of).ToImmutableArray();
        var verdict = Decide(findings);
        return new(
            clock,
            verdict,
            findings,
            verdict == Verdict.CheckFirst ? Weighing.Order(findings) : [],
            Next(clock, protocol, scene.Now),
            progress);
    }

    /// <summary>The decision itself.</summary>
    internal static Verdict Decide(ImmutableArray<Finding> findings)
    {
        var (forbidden, soon) = (Truth.NotMet, Truth.NotMet);
        foreach (var finding in findings)
            if (finding.Criterion.Role == Role.Awaits)
                soon = soon.Or(finding.Against);
            else
                forbidden = forbidden.Or(finding.Against);
        return (Forbidden: forbidden, Soon: soon) switch
        {
            { Forbidden: Truth.Met } => Verdict.LeaveOn,
            { Forbidden: Truth.Unknown } => Verdict.CheckFirst,
            { Soon: Truth.Met } => Verdict.AwaitHelp,
            { Soon: Truth.Unknown } => Verdict.CheckFirst,
            _ => Verdict.Attempt,
        };
    }

    private static ShockPicture Shock(Protocol protocol, Evaluating casualty)
    {
        var signs = protocol.Criteria.Where(c => c.Group == "shock").Select(casualty.Of).ToImmutableArray();
        return new(signs.Aggregate(Truth.NotMet, (t, f) => t.Or(f.Against)), signs);
    }

    /// <summary>By the signs last seen, however old.</summary>
    private static Truth LastKnownShock(State state, ImmutableArray<Doubt> doubts, Protocol protocol, Instant now)
    {
        var ageless = protocol with { Freshness = protocol.Freshness.Clear() };
        return Shock(ageless, new(ageless, new(state, now, null, [], doubts))).State;
    }

    /// <summary>The clock counts from the earliest time the limb can have been tightened: the worse side.</summary>
    private static ImmutableArray<ClockEvent> Next(LimbClock clock, Protocol protocol, Instant now) =>
    [
        .. new[] { (protocol.Clock.Window, "window"), (protocol.Clock.Limit, "limit") }
            .Select(e => new ClockEvent(clock.FirstTightened.Earliest + e.Item1, $"{e.Item2}-{Hours(e.Item1)}"))
            .Where(e => e.At > now),
    ];

    private static string Hours(Duration d) => d.Minutes == 0
        ? string.Create(CultureInfo.InvariantCulture, $"{d.TotalHours}h")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(d.TotalHours)}h{d.Minutes:00}");

    /// <summary>The doubts that nobody has surely looked into yet.</summary>
    internal static ImmutableArray<Doubt> Unsettled(ImmutableArray<Doubt> doubts, State state, Instant now) =>
        doubts.IsEmpty ? doubts : [.. doubts.Where(d => !d.CanBeSettled || !state.Of(Kind.TaskDone)
            .Any(t => t.When.Latest <= now && t.As<Payload.TaskDone>().Task == d.Id))];

    /// <summary>Limb by limb the most cautious of several readings of one record.</summary>
    private static Judgement MostCautious(ImmutableArray<Judgement> readings)
    {
        var limbs = readings.SelectMany(j => j.Limbs).GroupBy(l => l.Limb).OrderBy(g => g.Key)
            .Select(g => g.OrderByDescending(l => l.Verdict)
                .ThenByDescending(l => l.Clock.SinceFirstTightened.Max)
                .ThenByDescending(l => l.Clock.Occluded.Max).First()).ToImmutableArray();
        var watched = readings.SelectMany(j => j.Watched).Where(w => limbs.All(l => l.Limb != w.Limb))
            .GroupBy(w => w.Limb).OrderBy(g => g.Key)
            .Select(g => g.OrderByDescending(w => w.Bleeding).First());
        var withheld = readings.SelectMany(j => j.Withheld).DistinctBy(w => w.Name).ToImmutableArray();
        var due = readings.SelectMany(j => j.Due).Where(d => withheld.All(w => w.Name != d.Task))
            .GroupBy(d => d.Task).Select(g => g.MinBy(d => d.At)!);
        return readings[0] with
        {
            Limbs = limbs,
            Watched = [.. watched],
            Shock = readings.Select(j => j.Shock).OrderByDescending(s => s.State).First(),
            Due = [.. DueList.InOrder(due)],
            Withheld = withheld,
            Unstable = readings.Any(j => j.Unstable),
        };
    }
}
