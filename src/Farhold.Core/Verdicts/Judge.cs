using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>Judges a record by a rulebook at an instant. Pure: the same three give the same answer.</summary>
public static class Judge
{
    /// <param name="rhythm">Day and night, and the changes of watch; null: nobody tells, and nothing waits. No verdict depends on
    /// it.</param>
    public static Judgement At(CareRecord record, Rulebook rules, Instant now, Rhythm? rhythm = null)
    {
        var doubts = record.Doubts;
        var judged = record.Readings.Select(state => Of(state, doubts, rules, now, rhythm)).ToImmutableArray();
        var one = judged.Length == 1 ? judged[0] : MostCautious(judged);
        return one with
        {
            Doubts = doubts,
            Remarks = [.. record.Remarks, .. Oddities.Of(record.Readings[0]), .. RulesWords.Elsewhere(record.Readings[0], rules.Protocol)],
        };
    }

    /// <summary>Judges one reading of a record.</summary>
    public static Judgement Of(State state, ImmutableArray<Doubt> doubts, Rulebook rules, Instant now, Rhythm? rhythm = null)
    {
        var open = Doubt.Unsettled(doubts, state, now);
        var casualty = new CasualtyView(state, rules, now, open);
        var shock = casualty.Shock;
        var limbs = ImmutableArray.CreateBuilder<LimbVerdict>();
        var watched = ImmutableArray.CreateBuilder<ObservedLimb>();
        foreach (var limb in Enum.GetValues<Limb>())
        {
            if (casualty.Clock(limb) is not { } clock)
                continue;
            var scene = new Scene(casualty, clock, casualty.Attempts(limb));
            var progress = AttemptProgress.Of(scene);
            if (clock.Tight == Truth.NotMet)
                watched.Add(LimbObservation.Of(clock, state, now, progress));
            else
                limbs.Add(LimbJudge.At(scene, progress));
        }

        var verdicts = OneLimbAtATime.Among(limbs.ToImmutable(), watched.ToImmutable(), casualty);
        var over = state.Of(Kind.CareEnded).Any(e => e.When.Latest <= now);
        var lastKnown = ShockPicture.LastKnown(casualty);
        var unstable = DueList.IsUnstable(verdicts, watched, lastKnown, now);
        var plan = over
            ? []
            : CarePlan.Of(casualty, verdicts.Select(l => l.Clock).Concat(watched.Select(w => w.Clock)), unstable, rhythm ?? Rhythm.None);
        var due = over ? [] : DueList.Of(casualty, verdicts, watched, plan.Where(p => !p.Later));
        return new(now, rules, verdicts, watched.ToImmutable(), shock, due, doubts, [])
        {
            Withheld = [.. CarePlan.Withheld(plan)],
            Unstable = unstable,
            ShockLastKnown = lastKnown,
            Plan = plan,
            Exposure = Exposure.At(state, now),
        };
    }

    /// <summary>Limb by limb the most cautious of several readings of one record.</summary>
    private static Judgement MostCautious(ImmutableArray<Judgement> readings)
    {
        var limbs = readings
            .SelectMany(j => j.Limbs)
            .GroupBy(l => l.Limb)
            .OrderBy(g => g.Key)
            .Select(g =>
                g.OrderByDescending(l => l.Verdict)
                    .ThenByDescending(l => l.Clock.SinceFirstTightened.Max)
                    .ThenByDescending(l => l.Clock.Occluded.Max)
                    .First()
            )
            .ToImmutableArray();
        var watched = readings
            .SelectMany(j => j.Observed)
            .Where(w => limbs.All(l => l.Limb != w.Limb))
            .GroupBy(w => w.Limb)
            .OrderBy(g => g.Key)
            .Select(g => g.OrderByDescending(w => w.Bleeding).First());
        var withheld = readings.SelectMany(j => j.Withheld).DistinctBy(w => w.Name).ToImmutableArray();
        var due = readings
            .SelectMany(j => j.Due)
            .Where(d => withheld.All(w => w.Name != d.Task) && !RefusedIn(readings, d))
            .GroupBy(d => d.Task)
            .Select(g => g.MinBy(d => d.At)!);
        return readings[0] with
        {
            Limbs = limbs,
            Observed = [.. watched],
            Shock = readings.Select(j => j.Shock).OrderByDescending(s => s.State).First(),
            Due = [.. DueList.InOrder(due)],
            Withheld = withheld,
            Unstable = readings.Any(j => j.Unstable),
            ShockLastKnown = readings.Max(j => j.ShockLastKnown),
            Exposure = Exposure.Coldest(readings.Select(j => j.Exposure)),
        };
    }

    /// <summary>A prompt for treatment that one reading of the record refuses.</summary>
    private static bool RefusedIn(ImmutableArray<Judgement> readings, DueTask due) =>
        due.Group == TaskGroup.Treat && readings.Any(j => j.Due.All(d => d.Task != due.Task));
}
