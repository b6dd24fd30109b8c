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
        var whole = new Scene(state, now, null, [], open);
        var casualty = new Evaluating(protocol.Freshness, whole);
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

        var over = state.Of(Kind.CareEnded).Any(e => e.When.Latest <= now);
        var unstable = DueList.IsUnstable(limbs, watched, LastKnown(shock, whole), now);
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
        var evaluating = new Evaluating(protocol.Freshness, scene, casualty);
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
        return new(AnyAgainst(signs), signs);
    }

    /// <summary>By the signs last seen, however old: only what rests on an old one is looked at again.</summary>
    private static Truth LastKnown(ShockPicture shock, Scene casualty)
    {
        var ageless = new Evaluating(ImmutableSortedDictionary<string, Duration>.Empty, casualty);
        return AnyAgainst(shock.Signs.Select(f => f.Trace.IsStale ? ageless.Of(f.Criterion) : f));
    }

    private static Truth AnyAgainst(IEnumerable<Finding> findings) => findings.Aggregate(Truth.NotMet, (t, f) => t.Or(f.Against));

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
