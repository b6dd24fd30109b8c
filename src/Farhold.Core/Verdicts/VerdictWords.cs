using NodaTime;

namespace Farhold.Verdicts;

/// <summary>Parts of a judgement as sentences. All of them are rendered from the evaluation tree.</summary>
public static class VerdictWords
{
    /// <summary>Stands on the first screen and on every print.</summary>
    public static string Caution => VerdictTexts.FirstCaution;

    /// <summary>The verdict in two or three words, to be read at arm's length; <see cref="Of(Verdict)"/> says what it means.</summary>
    public static string Head(Verdict verdict) =>
        verdict switch
        {
            Verdict.LeaveOn => VerdictTexts.ShortLeaveOn,
            Verdict.AwaitHelp => VerdictTexts.ShortAwaitHelp,
            Verdict.CheckFirst => VerdictTexts.ShortCheckFirst,
            Verdict.Attempt => VerdictTexts.ShortAttempt,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>The verdict in one line.</summary>
    public static string Of(Verdict verdict) =>
        verdict switch
        {
            Verdict.LeaveOn => VerdictTexts.LeaveOn,
            Verdict.AwaitHelp => VerdictTexts.AwaitHelp,
            Verdict.CheckFirst => VerdictTexts.CheckFirst,
            Verdict.Attempt => VerdictTexts.Attempt,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary><c>SHOCK SUSPECTED</c> and the like.</summary>
    public static string Of(ShockPicture shock) =>
        shock.State switch
        {
            Truth.Met => VerdictTexts.ShockSuspected,
            Truth.NotMet => VerdictTexts.ShockNoSigns,
            _ => VerdictTexts.ShockUnknown,
        };

    /// <summary>A criterion with what stands against it: its sentence, then whether that is so, and whether it gave way.</summary>
    public static string Of(Finding finding) =>
        $"{State(finding)}: {finding.Criterion.Text}{(Of(finding.Lifted) is { } lifted ? " " + lifted : "")}";

    /// <summary>Why something does not stand against an attempt although it is met; null where it does.</summary>
    public static string? Of(Lift lift) =>
        lift switch
        {
            Lift.Advice => VerdictTexts.LiftedByAdvice,
            Lift.Unreached => VerdictTexts.LiftedUnreached,
            _ => null,
        };

    /// <summary>
    /// The sentence of a criterion is true, not true, or nobody knows; what counts only once measured is not called untrue before.
    /// </summary>
    public static string State(Finding finding) =>
        finding.State switch
        {
            Truth.Met => VerdictTexts.Yes,
            Truth.NotMet when !finding.Used.Any() => VerdictTexts.NotMeasured,
            Truth.NotMet => VerdictTexts.NotSo,
            _ => VerdictTexts.NotKnown,
        };

    /// <summary>Those of its values that make a criterion what it is, with their age; all of them where none does by itself.</summary>
    public static string Telling(Finding finding)
    {
        var used = string.Join("; ", Deciding(finding.Trace, finding.State).SelectMany(l => l.Used).Distinct().Select(u => u.Said));
        return used.Length > 0 ? Plain.Line(used) : Values(finding);
    }

    /// <summary>The leaves that are what the whole is; under a denial those that are the contrary.</summary>
    private static IEnumerable<Trace> Deciding(Trace trace, Truth state) =>
        trace switch
        {
            _ when trace.State != state => [],
            { Parts.IsEmpty: true } => [trace],
            { Condition: Condition.Not } => trace.Parts.SelectMany(p => Deciding(p, state.Not())),
            _ => trace.Parts.SelectMany(p => Deciding(p, state)),
        };

    /// <summary>The values a criterion used, with their age; says so where there are none.</summary>
    public static string Values(Finding finding)
    {
        var used = string.Join("; ", finding.Used.Select(u => u.Said));
        return used.Length > 0 ? Plain.Line(used)
            : finding.Needs is { } needs ? VerdictTexts.NeverRecorded(InputWords.Name(needs.Name))
            : "";
    }

    /// <summary>Titles of the sources, each with how well it is known.</summary>
    public static string Sources(IEnumerable<string> keys, Protocol protocol) =>
        Plain.Line(
            string.Join(
                "; ",
                keys.Select(k =>
                    !protocol.Sources.TryGetValue(k, out var s) ? k
                    : s.Known == s.Title ? s.Title
                    : $"{s.Title} [{s.Known}]"
                )
            )
        );

    /// <summary>What to do to learn an input, and how it stands now.</summary>
    public static string Look(Input input, LimbVerdict limb)
    {
        var last = limb.Findings.SelectMany(f => f.Trace.Leaves).SelectMany(l => l.Used).FirstOrDefault(u => u.Input == input.Name)
            is { } used
            ? used.Said
            : VerdictTexts.InputNotKnown(InputWords.Name(input.Name));
        return Plain.Line($"{(input.Look.Length > 0 ? input.Look : InputWords.Name(input.Name))} ({last})");
    }

    /// <summary>Since when the limb has been without flow, as ranges.</summary>
    public static IEnumerable<string> Of(LimbClock clock)
    {
        yield return VerdictTexts.FirstTightened(Say.Time(clock.FirstTightened), Say.Elapsed(clock.SinceFirstTightened));
        yield return VerdictTexts.WithoutBlood(Say.Elapsed(clock.Occluded))
            + (clock.Tight == Truth.NotMet ? "" : VerdictTexts.AtAStretch(Say.Elapsed(clock.CurrentStretch)));
    }

    /// <summary><c>tourniquets t1, t2 tight</c>; says where that is not known.</summary>
    public static string Tight(LimbClock clock)
    {
        var names = clock.Tourniquets.IsEmpty
            ? VerdictTexts.NoTourniquet
            : (clock.Tourniquets.Length == 1 ? VerdictTexts.TourniquetNamed : VerdictTexts.TourniquetsNamed)
                + string.Join(", ", clock.Tourniquets);
        return Plain.Line(
            clock.Tight switch
            {
                Truth.Met => VerdictTexts.NamesTight(names),
                Truth.Unknown => VerdictTexts.NamesPerhapsTight(names),
                _ => clock.Tourniquets.IsEmpty ? VerdictTexts.NamesOff(names) : VerdictTexts.NamesLoose(names),
            }
        );
    }

    /// <summary><c>2031-05-04 03:50 UTC, in 27 min: the first window ends</c>.</summary>
    public static string Of(ClockEvent next, Instant now) =>
        VerdictTexts.ClockEvent(Say.Time(next.At), Say.Duration(next.At - now), What(next));

    /// <summary>What the clock brings, without its time.</summary>
    public static string What(ClockEvent next)
    {
        var dash = next.What.IndexOf('-', StringComparison.Ordinal);
        return (dash < 0 ? next.What : next.What[..dash]) switch
        {
            "window" => VerdictTexts.WindowEnds(Hours(next.What[(dash + 1)..])),
            "limit" => VerdictTexts.LimitReached(Hours(next.What[(dash + 1)..])),
            _ => next.What,
        };
    }

    public static string LimitPassed(Protocol protocol) => VerdictTexts.LimitPassed(Say.Duration(protocol.Clock.Limit));

    /// <summary><c>2h30</c> becomes <c>2 h 30</c>.</summary>
    private static string Hours(string brief) => brief.Replace("h", " h ", StringComparison.Ordinal).TrimEnd();

    /// <summary>The step of an attempt to be done now.</summary>
    public static IEnumerable<string> Of(AttemptProgress progress, Instant now)
    {
        yield return Plain.Line(
            VerdictTexts.AttemptUnderWay(Say.Time(progress.Attempt.Started), progress.Attempt.Wound, progress.Attempt.Tourniquet)
        );
        if (progress.Current is not { } current)
        {
            yield return VerdictTexts.AttemptStepsDone;
            yield break;
        }

        var number = progress.Steps.IndexOf(current) + 1;
        yield return Plain.Line(VerdictTexts.AttemptStep(number, progress.Steps.Length, Wire.Word(current.Step.Id), current.Step.Text));
        foreach (var before in current.Before)
            yield return Plain.Line(VerdictTexts.AttemptBefore(before));
        if (current.Gate is { } gate)
            yield return Plain.Line(VerdictTexts.AttemptNotBefore(gate));
        if (current.NotBefore is { } notBefore && notBefore > now)
            yield return VerdictTexts.AttemptGoOn(Say.Time(notBefore), Say.Duration(notBefore - now));
    }

    /// <summary>
    /// Late enough to be called overdue. Within a minute of its time a thing is due now, and a check that was never made is a first check
    /// until its interval has gone by once (design).
    /// </summary>
    public static bool IsLate(DueTask due, Instant now) => due.Overdue && now - due.At >= Duration.FromMinutes(1) && !IsFirst(due, now);

    /// <summary>Asked for since more than a minute, and never done yet; late by a whole interval it is overdue like any other.</summary>
    public static bool IsFirst(DueTask due, Instant now) =>
        due is { Overdue: true, First: true } && now - due.At >= Duration.FromMinutes(1) && now - due.At < (due.Every ?? Duration.Zero);

    /// <summary><c>OVERDUE by 10 min, since 2031-05-04 03:05 UTC</c> and the task's sentence.</summary>
    public static string Of(DueTask due, Instant now)
    {
        var when = due switch
        {
            { AtOnce: true } => VerdictTexts.DueAtOnce,
            _ when IsLate(due, now) => VerdictTexts.DueOverdue(Say.Duration(now - due.At), Say.Time(due.At)),
            _ when IsFirst(due, now) => VerdictTexts.DueFirstCheck(Say.Time(due.At)),
            _ when due.At <= now => VerdictTexts.DueNow,
            _ => VerdictTexts.DueLater(Say.Time(due.At), Say.Duration(due.At - now)),
        };
        return Plain.Line($"{when}{(due.Limb is { } limb ? $", {Say.Limb(limb)}" : "")}: {due.Said()} ({due.Task})");
    }

    /// <param name="zone">For the time it names; null: UTC.</param>
    public static string Of(ObservedLimb limb, DateTimeZone? zone = null) =>
        limb.Bleeding switch
        {
            Truth.Met => VerdictTexts.ObservedBleeding(Say.Time(limb.BledAgain!.Value, zone)),
            Truth.NotMet => VerdictTexts.ObservedDry,
            _ => VerdictTexts.ObservedUnseen,
        };
}
