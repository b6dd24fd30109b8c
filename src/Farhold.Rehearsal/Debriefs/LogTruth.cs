using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>One number in three layers.</summary>
/// <param name="At">When it was logged, in seconds.</param>
public sealed record LoggedSign(double At, string Sign, double Logged, double Shown, double True);

/// <summary>How true the log is: against what was seen, and what was seen against what was.</summary>
public sealed record LogTruth(ImmutableArray<LoggedSign> Numbers, ImmutableArray<Remark> Remarks)
{
    /// <summary>Design: a look older than this is not what an entry is about, in seconds.</summary>
    private const double LookBefore = 600;

    /// <summary>Numbers are rounded when they are typed.</summary>
    private const double Rounding = 0.51;

    /// <summary>Mean of |shown − true| over true, 0 to 1; 0 where nothing was logged.</summary>
    public double LookError => Numbers.IsEmpty ? 0 : Numbers.Average(n => Math.Abs(n.Shown - n.True) / Math.Max(1, Math.Abs(n.True)));

    /// <summary>Mean of |logged − shown| over shown.</summary>
    public double LogError => Numbers.IsEmpty ? 0 : Numbers.Average(n => Math.Abs(n.Logged - n.Shown) / Math.Max(1, Math.Abs(n.Shown)));

    internal static LogTruth Of(DebriefScene scene)
    {
        var numbers = ImmutableArray.CreateBuilder<LoggedSign>();
        var remarks = ImmutableArray.CreateBuilder<Remark>();
        foreach (var entry in scene.Own)
        {
            var at = scene.At(entry);
            foreach (var (name, kind, wound, logged, read) in Signs(entry.Payload))
            {
                var look = scene.Session.Shown.LastOrDefault(s =>
                    s.Kind == kind && (wound is null || s.Wound == wound) && IsBehind(scene, s, at)
                );
                look ??= kind == LookKind.BleedingBelow ? Above(scene, wound, at) : null;
                if (look is null)
                {
                    remarks.Add(new(Fault.NeverLooked, at, DebriefTexts.Never(name)));
                    continue;
                }

                var (shown, real) = (read(look.Shown), read(look.True));
                if (shown is null || Differs(logged, shown))
                    remarks.Add(new(Fault.LoggedWrongly, at, DebriefTexts.Wrong(name, InWords(logged), LookWords.Say(look.Shown))));
                if (logged is double value && shown is double seen && real is double truly)
                    numbers.Add(new(at, name, value, seen, truly));
            }

            // What was before they came, a trainee can only write down afterwards.
            if (scene.After(Math.Max(0, scene.Session.SecondsAt(entry.Happened.Latest)), at) is var late and > LookBefore)
                remarks.Add(
                    new(Fault.WrittenLate, at, DebriefTexts.Late(Plain.Line(EntryText.Of(entry.Payload)), DebriefWords.Span(late)))
                );
        }

        return new(numbers.ToImmutable(), [.. remarks, .. LoggedDeeds.Remarks(scene)]);
    }

    private static string InWords(object logged) => logged is double number ? Say.Number(number) : LookWords.Word($"{logged}");

    private static ShownLook? Above(DebriefScene scene, string? wound, double at) =>
        scene.Session.Shown.LastOrDefault(s => s.Kind == LookKind.Bleeding && s.Wound == wound && IsBehind(scene, s, at));

    /// <summary>Whether an entry of that time can be about a look.</summary>
    private static bool IsBehind(DebriefScene scene, ShownLook look, double at) =>
        look.At <= at + scene.Slack && scene.After(look.At, at) <= LookBefore;

    private static bool Differs(object logged, object shown) =>
        logged is double a && shown is double b ? Math.Abs(a - b) > Rounding : !Equals(logged, shown);

    /// <summary>What of an entry a look stands behind.</summary>
    private static IEnumerable<(string Name, LookKind Kind, string? Wound, object Logged, Func<Shown, object?> Read)> Signs(Payload payload)
    {
        if (payload is Payload.BleedingChecked check)
        {
            yield return (
                DebriefWords.Bleeding,
                LookKind.BleedingBelow,
                check.Wound,
                Wire.Word(check.Bleeding),
                s => s is Shown.Bleeds(var seen) ? Wire.Word(seen) : null
            );
            yield break;
        }

        if (payload is not Payload.SignsTaken signs)
            yield break;
        if (signs.HeartRate is { } rate)
            yield return (InputWords.Name("heartRate"), LookKind.Pulse, null, rate, Number);
        if (signs.RespiratoryRate is { } breaths)
            yield return (InputWords.Name("breathRate"), LookKind.Breaths, null, breaths, Number);
        if (signs.Systolic is { } systolic)
            yield return (InputWords.Name("systolic"), LookKind.Pressure, null, systolic, s => s is Shown.Pressures p ? p.Systolic : null);
        if (signs.CapillaryRefillS is { } refill)
            yield return (InputWords.Name("capillaryRefillS"), LookKind.Refill, null, refill, Number);
        if (signs.TemperatureC is { } celsius)
            yield return (InputWords.Name("temperatureC"), LookKind.Temperature, null, celsius, Number);
        if (signs.Mental is { } mental)
            yield return (InputWords.Name("mental"), LookKind.Mental, null, Wire.Word(mental), Word);
        if (signs.RadialPulse is { } wrist)
            yield return (InputWords.Name("radialPulse"), LookKind.Wrist, null, Wire.Word(wrist), Word);

        static object? Number(Shown shown) => shown is Shown.Number(var value) ? value : null;
        static object? Word(Shown shown) => shown is Shown.CannotTell ? null : ShownText.Write(shown);
    }
}

/// <summary>Looks that the tasks of the protocol asked for and that did not come, and signs too old to begin with.</summary>
internal static class Looks
{
    /// <summary>In seconds: signs of the start of an attempt.</summary>
    internal const double Fresh = 900;

    /// <summary>Nobody is blamed for a quarter of an interval.</summary>
    private const double Patience = 1.25;

    public static IEnumerable<Remark> Remarks(DebriefScene scene)
    {
        foreach (var begun in scene.Own.Where(e => e.Payload is Payload.AttemptStarted))
        {
            var age = Age(scene, scene.At(begun));
            if (age is null)
                yield return new(Fault.SignsTooOld, scene.At(begun), DebriefTexts.OldNone);
            else if (age > Fresh)
                yield return new(Fault.SignsTooOld, scene.At(begun), DebriefTexts.Old(DebriefWords.Span(age.Value)));
        }

        foreach (
            var gap in Gaps(
                scene,
                "signs",
                [.. scene.Own.Where(e => e.Payload is Payload.SignsTaken { HeartRate: not null }).Select(scene.At)],
                0,
                scene.Session.Time
            )
        )
            yield return new(Fault.SignsMissing, gap.From, DebriefTexts.SignsGap(DebriefWords.Span(gap.To - gap.From)));
        foreach (var limb in scene.Session.Scenario.Limbs)
        {
            var looks = scene.On(limb).SelectMany(w => Watching.Looks(scene, w.Name, 0)).Order().ToArray();
            var loose = scene
                .Session.Truth.OfType<TruthLine.Began>()
                .Where(b => b.Act is Act.Slacken slack && slack.Limb == Wire.Word(limb))
                .Select(b => b.At)
                .Append(scene.Session.Time)
                .Min();
            foreach (var gap in Gaps(scene, "tourniquet", looks, 0, loose))
                yield return new(
                    Fault.LimbNotLookedAt,
                    gap.From,
                    DebriefTexts.LimbGap(Say.Limb(limb), DebriefWords.Span(gap.To - gap.From))
                );
        }
    }

    /// <summary>Seconds from the newest signs to a time; null where there are none.</summary>
    internal static double? Age(DebriefScene scene, double at) =>
        scene
            .Own.Where(e => e.Payload is Payload.SignsTaken { HeartRate: not null } && scene.At(e) <= at)
            .Select(e => (double?)(at - scene.At(e)))
            .Min();

    private static IEnumerable<(double From, double To)> Gaps(DebriefScene scene, string task, double[] done, double from, double to)
    {
        if (scene.Rules.Protocol.Tasks.FirstOrDefault(t => t.Id == task)?.Every is not { } every)
            yield break;
        var last = from;
        foreach (var at in done.Where(d => d > from && d < to).Append(to))
        {
            if (at - last > Patience * every.TotalSeconds)
                yield return (last, at);
            last = at;
        }
    }
}

/// <summary>What the scenario's author expects.</summary>
internal static class Expected
{
    public static IEnumerable<Remark> Remarks(DebriefScene scene, ImmutableArray<Sight> known) =>
        scene
            .Session.Scenario.Expect.Where(e => !IsMet(scene, known, e))
            .Select(e => new Remark(Fault.ExpectationMissed, e.By ?? scene.Session.Time, DebriefTexts.Expected(e.Text)));

    private static bool IsMet(DebriefScene scene, ImmutableArray<Sight> known, Expectation expected)
    {
        var by = expected.By ?? scene.Session.Time;
        if (expected.Entry is { } kind)
            return scene.Own.Any(e => Kinds.Of(e.Payload) == kind && scene.At(e) <= by);
        if (expected.Verdict is { } verdict)
            return known.Any(s => s.First(verdict) <= by);
        return scene.Session.Met(expected);
    }
}
