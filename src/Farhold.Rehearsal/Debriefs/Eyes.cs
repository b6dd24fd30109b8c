using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>A limb's verdict from an instant on, in seconds from the scenario's start.</summary>
/// <param name="Verdict">Null where no tourniquet on it is tight.</param>
/// <param name="CheckFirst">Inputs that were open, the most decisive first.</param>
/// <param name="Forbids">Ids of the criteria that spoke against it.</param>
public sealed record VerdictAt(double At, Verdict? Verdict, ImmutableArray<string> CheckFirst, ImmutableArray<string> Forbids);

/// <summary>What the engine said of a limb as time passed, by one pair of eyes.</summary>
public sealed record Sight(Limb Limb, ImmutableArray<VerdictAt> Turns)
{
    /// <summary>What was said at a time, in seconds; null before anything was.</summary>
    public VerdictAt? Of(double at) => Turns.LastOrDefault(t => t.At <= at);

    /// <summary>What was said just before a time.</summary>
    public VerdictAt? Before(double at) => Turns.LastOrDefault(t => t.At < at);

    /// <summary>The first time, from the start on, at which a verdict was given or stood.</summary>
    public double? First(Verdict verdict) =>
        Of(0)?.Verdict == verdict ? 0 : Turns.Where(t => t.Verdict == verdict && t.At >= 0).Select(t => (double?)t.At).FirstOrDefault();
}

/// <summary>Three replays over one axis of time, all by the engine that judges real records.</summary>
internal static class Eyes
{
    private const double Minute = 60;

    /// <summary>
    /// The all-seeing eye has looked for so long when the trainee arrives, in seconds (design: two looks, ten minutes apart).
    /// </summary>
    private const double Ahead = 900;

    private const string Truth = "truth";

    /// <summary>By what had been written down by then: judged at each entry, and once a minute.</summary>
    public static ImmutableArray<Sight> Known(RehearsalSession session, IEnumerable<Entry> entries, Rulebook rules) =>
        Along(session, [.. entries.Select(e => (e.Recorded, e))], rules, 0);

    /// <summary>By all that the record knows at the end, at the same times.</summary>
    public static ImmutableArray<Sight> Hindsight(RehearsalSession session, IEnumerable<Entry> entries, Rulebook rules)
    {
        var record = new CareRecord(entries, []);
        var times = Times(session, record.Entries.Select(e => e.Recorded), 0);
        return Sights(session, times.Select(t => (t, Judge.At(record, rules, session.At(t)))));
    }

    /// <summary>By a record that somebody who sees everything would write once a minute.</summary>
    public static ImmutableArray<Sight> AllSeeing(RehearsalSession session, IEnumerable<Entry> entries, Rulebook rules)
    {
        var from = Math.Max(session.Frames.Count == 0 ? 0 : session.Frames[0].At, -Ahead);
        var lines = new List<(double At, Payload What)>();
        // What is no matter of truth (kit, help, advice, who watches, an attempt begun) is taken from the record as it is.
        foreach (var entry in entries)
            if (IsOfScene(entry.Payload))
                lines.Add((from, entry.Payload));
            else if (
                entry.Payload
                is Payload.ContactTried
                    or Payload.AdviceReceived
                    or Payload.QuestionAsked
                    or Payload.QuestionTaken
                    or Payload.AttemptStarted
                    or Payload.AttemptEnded
                    or Payload.TaskDone
            )
                lines.Add((session.SecondsAt(entry.Recorded), entry.Payload));
        lines.AddRange(session.Truth.OfType<TruthLine.Began>().SelectMany(b => Deeds(b).Select(d => (Math.Max(d.At, from), d.Payload))));
        lines.AddRange(session.Frames.Where(f => f.At >= from).SelectMany(f => Frame(session, f).Select(p => (f.At, p))));
        // Numbered in order of time: a device whose entries went back in time would be in doubt.
        return Along(
            session,
            [
                .. lines
                    .OrderBy(l => l.At)
                    .Select(
                        (l, i) =>
                            (
                                session.At(l.At),
                                EntryWriting.Write(new(Truth, i + 1), Happened.At(session.At(l.At)), session.At(l.At), Truth, l.What)
                            )
                    ),
            ],
            rules,
            from
        );
    }

    /// <summary>What was so before anybody looked: who, which wounds, which kit and help.</summary>
    internal static bool IsOfScene(Payload payload) =>
        payload is Payload.CasualtyOpened or Payload.WoundFound or Payload.SuppliesStated or Payload.HelpExpected;

    /// <summary>True times: a tourniquet is tight when the tightening is over, loose when the slackening begins.</summary>
    private static IEnumerable<(double At, Payload Payload)> Deeds(TruthLine.Began began)
    {
        switch (began.Act)
        {
            case Act.Tighten { Limb: { } limb, Loose: false }:
                yield return (began.Until, new Payload.TourniquetTightened(limb, Wire.Parse<Limb>(limb)!.Value));
                break;
            case Act.Slacken { Limb: { } limb }:
                yield return (began.At, new Payload.TourniquetSlackened(limb));
                break;
            case Act.Pack(var wound, var gauze):
                yield return (
                    began.Until,
                    new Payload.WoundPacked(
                        wound,
                        gauze == PackingGauze.Haemostatic ? PackingMaterial.HaemostaticGauze : PackingMaterial.PlainGauze
                    )
                );
                break;
            case Act.Dress(var wound):
                yield return (began.Until, new Payload.DressingApplied(wound, DressingKind.Pressure));
                break;
        }
    }

    private static IEnumerable<Payload> Frame(RehearsalSession session, Frame frame)
    {
        var v = frame.Vitals;
        yield return new Payload.SignsTaken
        {
            HeartRate = Math.Round(v.HeartRate),
            RespiratoryRate = Math.Round(v.RespiratoryRate),
            Systolic = Math.Round(v.SystolicPressure),
            Diastolic = Math.Round(v.DiastolicPressure),
            TemperatureC = Math.Round(v.CoreTemperature, 1),
            CapillaryRefillS = Math.Round(Math.Min(v.CapillaryRefill, 20), 1),
            Mental = Wire.Parse<Mental>(Wire.Word(v.Consciousness)),
            Dizzy = v.SystolicPressure < 95,
            Pale = v.Pale,
            Cool = v.ShellTemperature < 30,
            Clammy = v.ColdAndClammy,
            RadialPulse =
                !v.RadialPulse ? RadialPulse.Absent
                : v.SystolicPressure < 90 ? RadialPulse.Weak
                : RadialPulse.Strong,
        };
        for (var i = 0; i < session.Scenario.Wounds.Length; i++)
            yield return new Payload.BleedingChecked(
                session.Scenario.Wounds[i].Name,
                frame.Flow[i] < 1 ? Bleeding.None
                    : frame.Flow[i] <= 15 ? Bleeding.Oozing
                    : Bleeding.Active
            );
        yield return new Payload.CasualtyLookedOver(
            session.Scenario.Wounds.Select((w, i) => w.Limb is null && frame.Flow[i] > 15).Any(b => b),
            session.Scenario.Wounds.Any(w => w.Region is not null),
            v.RespiratoryRate is < 10 or > 29,
            v.CoreTemperature < 34,
            session.Scenario.Casualty.Anticoagulation > 0
        );
        yield return new Payload.WatchStated(true);
    }

    private static ImmutableArray<Sight> Along(
        RehearsalSession session,
        ImmutableArray<(Instant At, Entry Entry)> lines,
        Rulebook rules,
        double from
    )
    {
        var left = new Queue<(Instant At, Entry Entry)>(lines.OrderBy(l => l.At).ThenBy(l => l.Entry.Id));
        var record = new CareRecord([], []);
        var judged = new List<(double, Judgement)>();
        foreach (var at in Times(session, lines.Select(l => l.At), from))
        {
            while (left.Count > 0 && left.Peek().At <= session.At(at))
                record.Add(left.Dequeue().Entry);
            if (record.Count > 0)
                judged.Add((at, Judge.At(record, rules, session.At(at))));
        }

        return Sights(session, judged);
    }

    private static IEnumerable<double> Times(RehearsalSession session, IEnumerable<Instant> entries, double from)
    {
        var minutes = Enumerable.Range(0, (int)Math.Floor((session.Time - from) / Minute) + 1).Select(i => from + (i * Minute));
        return entries.Select(session.SecondsAt).Concat(minutes).Where(t => t >= from && t <= session.Time).Distinct().Order();
    }

    private static ImmutableArray<Sight> Sights(RehearsalSession session, IEnumerable<(double At, Judgement Judged)> judged)
    {
        var turns = session.Scenario.Limbs.ToDictionary(l => l, _ => ImmutableArray.CreateBuilder<VerdictAt>());
        foreach (var (at, picture) in judged)
        foreach (var (limb, list) in turns)
        {
            var verdict = picture.Limbs.FirstOrDefault(l => l.Limb == limb);
            var now = new VerdictAt(
                at,
                verdict?.Verdict,
                [.. verdict?.CheckFirst.Select(i => i.Name) ?? []],
                verdict?.Verdict == Verdict.LeaveOn ? [.. verdict.Reasons.Select(r => r.Criterion.Id)] : []
            );
            if (list.Count == 0 || list[^1].Verdict != now.Verdict || !list[^1].CheckFirst.SequenceEqual(now.CheckFirst))
                list.Add(now);
        }

        return [.. turns.Select(t => new Sight(t.Key, t.Value.ToImmutable()))];
    }
}
