using NodaTime;

namespace Farhold.Verdicts;

/// <summary>Parts of a judgement as sentences. All of them are rendered from the evaluation tree.</summary>
public static class VerdictWords
{
    /// <summary>Stands on the first screen and on every print.</summary>
    public const string Caution = "Get help first. Local protocol and licensed advice come before this tool.";

    /// <summary>The verdict in two or three words, to be read at arm's length; <see cref="Of(Verdict)"/> says what it means.</summary>
    public static string Head(Verdict verdict) => verdict switch
    {
        Verdict.LeaveOn => "Leave it on",
        Verdict.AwaitHelp => "Wait for help",
        Verdict.CheckFirst => "Check first",
        Verdict.Attempt => "Make an attempt",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The verdict in one line.</summary>
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.LeaveOn => "leave the tourniquet on, no attempt to convert it",
        Verdict.AwaitHelp => "leave it on: surgery or a clinic is near",
        Verdict.CheckFirst => "check first, then ask again; leave the tourniquet on until then",
        Verdict.Attempt => "try to convert the tourniquet: pack, dress, slacken, watch",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary><c>SHOCK SUSPECTED</c> and the like.</summary>
    public static string Of(ShockPicture shock) => shock.State switch
    {
        Truth.Met => "suspected",
        Truth.NotMet => "none of the signs asked for",
        _ => "can't be told, signs are missing or too old",
    };

    /// <summary>A criterion with what stands against it: its sentence, then whether that is so, and whether it gave way.</summary>
    public static string Of(Finding finding) =>
        $"{State(finding)}: {finding.Criterion.Text}{(Of(finding.Lifted) is { } lifted ? " " + lifted : "")}";

    /// <summary>Why something does not stand against an attempt although it is met; null where it does.</summary>
    public static string? Of(Lift lift) => lift switch
    {
        Lift.Advice => "Advice allows the attempt all the same.",
        Lift.Unreached => "It gives way where nobody can be reached.",
        _ => null,
    };

    /// <summary>The sentence of a criterion is true, not true, or nobody knows; what counts only once measured is not called untrue before.</summary>
    public static string State(Finding finding) => finding.State switch
    {
        Truth.Met => "yes",
        Truth.NotMet when !finding.Used.Any() => "not measured",
        Truth.NotMet => "not so",
        _ => "not known",
    };

    /// <summary>Those of its values that make a criterion what it is, with their age; all of them where none does by itself.</summary>
    public static string Telling(Finding finding)
    {
        var used = string.Join("; ", Deciding(finding.Trace, finding.State).SelectMany(l => l.Used).Distinct().Select(u => u.Said));
        return used.Length > 0 ? Plain.Line(used) : Values(finding);
    }

    /// <summary>The leaves that are what the whole is; under a denial those that are the contrary.</summary>
    private static IEnumerable<Trace> Deciding(Trace trace, Truth state) => trace switch
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
        return used.Length > 0 ? Plain.Line(used) : finding.Needs is { } needs ? $"{InputWords.Name(needs.Name)} never recorded" : "";
    }

    /// <summary>Titles of the sources, each with how well it is known.</summary>
    public static string Sources(IEnumerable<string> keys, Protocol protocol) => Plain.Line(string.Join("; ", keys.Select(k =>
        !protocol.Sources.TryGetValue(k, out var s) ? k : s.Known == s.Title ? s.Title : $"{s.Title} [{s.Known}]")));

    /// <summary>What to do to learn an input, and how it stands now.</summary>
    public static string Look(Input input, LimbVerdict limb)
    {
        var last = limb.Findings.SelectMany(f => f.Trace.Leaves).SelectMany(l => l.Used).FirstOrDefault(u => u.Input == input.Name) is { } used
            ? used.Said : $"{InputWords.Name(input.Name)} not known";
        return Plain.Line($"{(input.Look.Length > 0 ? input.Look : InputWords.Name(input.Name))} ({last})");
    }

    /// <summary>Since when the limb has been without flow, as ranges.</summary>
    public static IEnumerable<string> Of(LimbClock clock)
    {
        yield return $"first tightened {Say.Time(clock.FirstTightened)}, {Say.Elapsed(clock.SinceFirstTightened)} ago";
        yield return $"without blood flow {Say.Elapsed(clock.Occluded)} in all"
            + (clock.Tight == Truth.NotMet ? "" : $", {Say.Elapsed(clock.CurrentStretch)} at a stretch until now");
    }

    /// <summary><c>tourniquets t1, t2 tight</c>; says where that is not known.</summary>
    public static string Tight(LimbClock clock)
    {
        var names = clock.Tourniquets.IsEmpty ? "no tourniquet"
            : (clock.Tourniquets.Length == 1 ? "tourniquet " : "tourniquets ") + string.Join(", ", clock.Tourniquets);
        return Plain.Line(clock.Tight switch
        {
            Truth.Met => $"{names} tight",
            Truth.Unknown => $"{names} perhaps tight, it is not known",
            _ => clock.Tourniquets.IsEmpty ? $"{names} on the limb any more" : $"{names} still around the limb, loose",
        });
    }

    /// <summary><c>2031-05-04 03:50 UTC, in 27 min: the first window ends</c>.</summary>
    public static string Of(ClockEvent next, Instant now) =>
        $"{Say.Time(next.At)}, in {Say.Duration(next.At - now)}: {What(next)}";

    /// <summary>What the clock brings, without its time.</summary>
    public static string What(ClockEvent next)
    {
        var dash = next.What.IndexOf('-', StringComparison.Ordinal);
        return (dash < 0 ? next.What : next.What[..dash]) switch
        {
            "window" => $"the window of {Hours(next.What[(dash + 1)..])} since first tightening ends",
            "limit" => $"the time limit of {Hours(next.What[(dash + 1)..])} since first tightening is reached",
            _ => next.What,
        };
    }

    public static string LimitPassed(Protocol protocol) => $"the time limit of {Say.Duration(protocol.Clock.Limit)} has passed";

    /// <summary><c>2h30</c> becomes <c>2 h 30</c>.</summary>
    private static string Hours(string brief) => brief.Replace("h", " h ", StringComparison.Ordinal).TrimEnd();

    /// <summary>The step of an attempt to be done now.</summary>
    public static IEnumerable<string> Of(AttemptProgress progress, Instant now)
    {
        yield return Plain.Line(
            $"attempt under way since {Say.Time(progress.Attempt.Started)} (wound {progress.Attempt.Wound}, tourniquet {progress.Attempt.Tourniquet})");
        if (progress.Current is not { } current)
        {
            yield return "all steps are done: enter how the attempt ended";
            yield break;
        }

        var number = progress.Steps.IndexOf(current) + 1;
        yield return Plain.Line($"step {number} of {progress.Steps.Length}, {Wire.Word(current.Step.Id)}: {current.Step.Text}");
        foreach (var before in current.Before)
            yield return Plain.Line($"before it: {before}");
        if (current.Gate is { } gate)
            yield return Plain.Line($"not before {gate} is ticked off");
        if (current.NotBefore is { } notBefore && notBefore > now)
            yield return $"go on with it at least until {Say.Time(notBefore)}, {Say.Duration(notBefore - now)} more";
    }

    /// <summary>Late enough to be called overdue. Within a minute of its time a thing is due now (design).</summary>
    public static bool IsLate(DueTask due, Instant now) => due.Overdue && now - due.At >= Duration.FromMinutes(1);

    /// <summary><c>OVERDUE since 2031-05-04 03:05 UTC</c> and the task's sentence.</summary>
    public static string Of(DueTask due, Instant now)
    {
        var when = due switch
        {
            { AtOnce: true } => "AT ONCE",
            _ when IsLate(due, now) => $"OVERDUE by {Say.Duration(now - due.At)}, since {Say.Time(due.At)}",
            _ when due.At <= now => "now",
            _ => $"{Say.Time(due.At)}, in {Say.Duration(due.At - now)}",
        };
        return Plain.Line($"{when}{(due.Limb is { } limb ? $", {Say.Limb(limb)}" : "")}: {due.Said()} ({due.Task})");
    }

    /// <param name="zone">For the time it names; null: UTC.</param>
    public static string Of(ObservedLimb limb, DateTimeZone? zone = null) => limb.Bleeding switch
    {
        Truth.Met => $"BLEEDING AGAIN, seen {Say.Time(limb.BledAgain!.Value, zone)}: tighten at once",
        Truth.NotMet => "loosened, no bleeding when last looked at",
        _ => "loosened, nobody has looked at the wound since",
    };
}
