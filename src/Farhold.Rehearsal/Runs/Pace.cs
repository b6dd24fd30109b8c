using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rehearsal.Runs;

/// <summary>How fast a rehearsal may run, and how far it may jump. Whoever shows it has the clock.</summary>
public static class Pace
{
    private static readonly Duration Instantly = Duration.FromNanoseconds(1);

    /// <summary>Seconds of the scenario to one of the wall.</summary>
    public static readonly ImmutableArray<int> Rates = [1, 4, 15, 60];

    /// <summary>The rate to go on with: what needs a hand or an eye at once makes it real time.</summary>
    /// <param name="since">What has happened since it was last asked.</param>
    /// <param name="picture">What the record on the phone comes to now.</param>
    public static int After(int rate, IEnumerable<Happening> since, Judgement picture) =>
        since.Any(h => h.Kind != HappeningKind.Looked) || IsAttempting(picture) ? 1 : rate;

    /// <summary>
    /// The next thing that the trainee can know of: what is due, what the clock brings, a turn of the verdict, an inject.
    /// </summary>
    /// <remarks>
    /// Let time pass up to it with <c>stop</c>: what comes by a condition is in no calendar. While an attempt is under way it is the
    /// next second, since every step of it is done at its own pace.
    /// </remarks>
    /// <returns>In seconds from the start, after now, and what it is; null where it is none of the trainee's to know.</returns>
    public static (double At, string? What) Next(RehearsalSession session, Rulebook rules)
    {
        var record = new CareRecord(session.Record, []) { Writer = RehearsalSession.Device };
        var now = session.Now;
        var picture = Judge.At(record, rules, now);
        if (IsAttempting(picture))
            return (session.Time + 1, null);
        var due = picture.Due.Where(d => d.At > now).Select(d => (d.At, (string?)d.Said()));
        var clock = picture.Limbs.SelectMany(l => l.Next).Where(n => n.At > now).Select(n => (n.At, (string?)VerdictWords.What(n)));
        var known = due.Concat(clock).Concat(Turn(record, rules, picture)).Select(n => (At: session.SecondsAt(n.At), What: n.Item2));
        (double At, string? What) next = (session.NextTime, null);
        foreach (var one in known.Where(n => n.At > session.Time))
            if (one.At < next.At || next.At <= session.Time)
                next = one;
        return next.At > session.Time ? next : (session.Time + 1, null);
    }

    /// <summary>The first instant at which the outcome differs, were nobody to log anything more.</summary>
    private static IEnumerable<(Instant At, string? What)> Turn(CareRecord record, Rulebook rules, Judgement picture)
    {
        var before = Outcome.Of(picture);
        foreach (var moment in Moments.Of(record, rules.Protocol).Where(m => m.At > picture.At))
        {
            var after = Outcome.Of(Judge.At(record, rules, moment.At + Instantly));
            if (after.Equals(before))
                continue;
            yield return (moment.At, string.Join("; ", after.Since(before)));
            yield break;
        }
    }

    private static bool IsAttempting(Judgement picture) =>
        picture.Limbs.Any(l => l.Attempt is not null) || picture.Observed.Any(o => o.Attempt is not null);
}
