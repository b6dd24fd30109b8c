using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>Something that may change the outcome.</summary>
/// <param name="Expires">The input whose value gets too old, or null.</param>
/// <param name="Tail">What is said after the names of inputs that get too old together.</param>
internal sealed record Cause(string Text, bool IsEntry, string? Expires = null, string Tail = "");

/// <summary>An instant with all that may change the outcome at it or just after it.</summary>
internal sealed record Moment(Instant At, ImmutableArray<Cause> Causes);

/// <summary>Finds every instant at which an outcome can change, from record and protocol.</summary>
internal static class Moments
{
    private static readonly ImmutableArray<string> SignInputs =
    [
        "heartRate",
        "breathRate",
        "systolic",
        "spo2",
        "temperatureC",
        "capillaryRefillS",
        "mental",
        "radialPulse",
        "dizzy",
        "pale",
        "cool",
        "clammy",
        "shockIndex",
    ];

    /// <summary>In order of time.</summary>
    public static IEnumerable<Moment> Of(CareRecord record, Protocol protocol)
    {
        var limits = protocol.Criteria.SelectMany(c => Durations(c.Condition)).Distinct().ToArray();
        return record
            .Readings.SelectMany(state => All(state, protocol, limits))
            .GroupBy(m => m.At)
            .OrderBy(g => g.Key)
            .Select(g => new Moment(g.Key, [.. g.Select(m => m.Cause).Distinct()]));
    }

    private static IEnumerable<(Instant At, Cause Cause)> All(State state, Protocol protocol, (Input Input, Duration Limit)[] limits)
    {
        var ends = new SortedSet<Instant>();
        foreach (var entry in state.All)
        {
            if (TurnsClocks(entry.What))
                ends.UnionWith([entry.When.Earliest, entry.When.Latest]);
            yield return (entry.When.Latest, Entry(entry, ""));
            if (!entry.When.IsInstant)
                yield return (entry.When.Earliest, Entry(entry, VerdictTexts.CauseAtEarliest));
            foreach (var expiry in Expiries(entry, protocol))
                yield return expiry;
            foreach (var of in Help(entry, protocol.Clock.Soon))
                yield return of;
            foreach (var of in Rules(entry, protocol))
                yield return of;
        }

        // Between two ends every clock runs evenly, so where it stands at an end tells when it reaches a limit.
        foreach (var limb in Enum.GetValues<Limb>())
        foreach (var at in ends)
            if (LimbClock.Of(limb, state, at) is { } clock)
                foreach (var reached in Reached(clock, Attempt.On(limb, state, at), at, limits))
                    yield return reached;
    }

    private static IEnumerable<(Instant At, Cause Cause)> Reached(
        LimbClock clock,
        ImmutableArray<Attempt> attempts,
        Instant at,
        (Input Input, Duration Limit)[] limits
    )
    {
        var failed = attempts.LastOrDefault(a => a.Result == AttemptResult.Bled);
        foreach (var (input, limit) in limits)
        {
            if (input == Input.TimeOn && clock.Tight != Truth.NotMet && clock.Stretches.Length > 1)
                foreach (var end in (Duration[])[clock.Occluded.Max, clock.Occluded.Min])
                    if (end <= limit)
                        yield return (
                            at + (limit - end),
                            new(VerdictTexts.CauseWithoutBlood(Say.Limb(clock.Limb), Say.Duration(limit)), false)
                        );
            Elapsed? elapsed = input.Name switch
            {
                "sinceFirstTightened" or "timeOn" => clock.SinceFirstTightened,
                "occluded" when clock.Tight != Truth.NotMet => clock.Occluded,
                "currentStretch" when clock.Tight != Truth.NotMet => clock.CurrentStretch,
                "sinceFailedAttempt" => (failed?.Ended ?? failed?.Started)?.Until(at),
                _ => null,
            };
            if (elapsed is not { } known)
                continue;
            var cause = new Cause($"{Say.Limb(clock.Limb)}: {Say.Duration(limit)} {InputWords.Name(input.Name)}", false);
            foreach (var end in (Duration[])[known.Max, known.Min])
                if (end <= limit)
                    yield return (at + (limit - end), cause);
        }
    }

    private static IEnumerable<(Instant At, Cause Cause)> Help(Dated entry, Duration soon)
    {
        if (entry.What is not Payload.HelpExpected help)
            yield break;
        foreach (
            var (name, at) in new (string, Instant?)[] { (VerdictTexts.HelpLikely, help.Likely), (VerdictTexts.HelpLatest, help.Latest) }
        )
        {
            if (at is not { } time)
                continue;
            yield return (time, new(VerdictTexts.CauseHelpPassed(name), false));
            yield return (time - soon, new(VerdictTexts.CauseHelpLeft(Say.Duration(soon), name), false));
        }
    }

    /// <summary>What the rules of the decision let begin or end some time after an entry.</summary>
    private static IEnumerable<(Instant At, Cause Cause)> Rules(Dated entry, Protocol protocol)
    {
        foreach (var at in (Instant[])[entry.When.Earliest, entry.When.Latest])
            switch (entry.What)
            {
                case Payload.AdviceReceived advice:
                    yield return (advice.Until ?? at + protocol.Advice.Lasts, new(VerdictTexts.CauseAdviceEnded, false));
                    break;
                case Payload.ContactTried:
                    yield return (at + protocol.Advice.Unanswered, new(VerdictTexts.CauseNoAnswer, false));
                    yield return (at + protocol.Advice.Tried, new(VerdictTexts.CauseTryOld, false));
                    break;
                case Payload.TourniquetSlackened or Payload.TourniquetRemoved:
                    yield return (at + protocol.Attempts.Held, new(VerdictTexts.CauseOtherHeld, false));
                    break;
                case Payload.AttemptStarted:
                    yield return (at + LimbJudge.Longest, new(VerdictTexts.CauseAttemptLong, false));
                    break;
                case Payload.CasualtyMoved:
                    yield return (at + Observation.MoveAhead, new(VerdictTexts.CauseMovePassed, false));
                    break;
                case Payload.TourniquetTightened:
                    yield return (at + protocol.Clock.Longest.Window - protocol.Looks.Closing, new(VerdictTexts.CauseWindowCloses, false));
                    foreach (var lead in protocol.Attempts.Lead.Values)
                        yield return (at + protocol.Clock.Limit - lead, new(VerdictTexts.CauseNoTime, false));
                    break;
                case Payload.DrugGiven:
                    yield return (at + SignReadings.Sedated, new(VerdictTexts.CauseDrugOver, false));
                    break;
            }
    }

    private static IEnumerable<(Instant At, Cause Cause)> Expiries(Dated entry, Protocol protocol) =>
        from input in Fed(entry.What)
        where protocol.Freshness.ContainsKey(input)
        let fresh = protocol.Freshness[input]
        select (entry.When.Earliest + fresh, new Cause("", false, input, VerdictTexts.OlderThan(Say.Duration(fresh))));

    private static bool TurnsClocks(Payload payload) =>
        payload
            is Payload.TourniquetTightened
                or Payload.TourniquetSlackened
                or Payload.TourniquetRemoved
                or Payload.AttemptStarted
                or Payload.AttemptEnded;

    /// <summary>The inputs that an entry may tell of and that get too old.</summary>
    private static ImmutableArray<string> Fed(Payload payload) =>
        payload switch
        {
            Payload.SignsTaken => SignInputs,
            Payload.BleedingChecked => ["bleeding"],
            Payload.WatchStated => ["watchAble"],
            Payload.HelpExpected => ["helpWithin"],
            Payload.CasualtyLookedOver => ["bleedingElsewhere", "trunkWound", "breathingHard", "veryCold"],
            Payload.RegionLooked => ["bleedingElsewhere", "trunkWound"],
            _ => [],
        };

    private static Cause Entry(Dated entry, string how) =>
        new(Plain.Line($"{EntryText.Of(entry.What)}{how} ({entry.By}, {entry.Id})"), true);

    private static IEnumerable<(Input Input, Duration Limit)> Durations(Condition condition) =>
        condition switch
        {
            Condition.All all => all.Parts.SelectMany(Durations),
            Condition.Any any => any.Parts.SelectMany(Durations),
            Condition.Not not => Durations(not.Part),
            Condition.Compare { Input.Type: InputType.Duration } compare => [(compare.Input, Duration.FromSeconds(compare.Limit))],
            _ => [],
        };
}
