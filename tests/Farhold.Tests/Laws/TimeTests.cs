using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>Time is an interval, and every limit is judged on the side that is worse for the casualty.</summary>
/// <remarks>
/// A realisation is one course of events that fits the record. Its clock is found here by walking through the events, not
/// by the code under test. Tourniquets that move between limbs are left out: a tourniquet that turns up on another
/// limb stays tight on the first by rule, and which limb a slackening is about then depends on the order; there only the
/// worse side is promised, and that is a law of its own below.
/// </remarks>
public class TimeTests
{
    private static readonly Gen<double[]> Fractions = Gen.Frequency((1, Gen.OneOf(0.0, 1.0).Array[32]), (3, Gen.Double[0, 1].Array[32]));

    [Fact]
    public void Every_course_of_events_that_fits_lies_within_the_clock() =>
        Gen.Select(Gens.Record, Fractions)
            .Sample(
                (written, fractions) =>
                {
                    var state = OnOneLimbEach(written.Record.Readings[0]);
                    var real = Told.Realised(state, i => fractions[i % 32]);
                    foreach (var limb in Enum.GetValues<Limb>())
                    {
                        if (LimbClock.Of(limb, state, written.Now) is not { } clock || Walk(limb, real, written.Now) is not { } walked)
                            continue;
                        Assert.InRange(walked.Since, clock.SinceFirstTightened.Min, clock.SinceFirstTightened.Max);
                        Assert.InRange(walked.Occluded, clock.Occluded.Min, clock.Occluded.Max);
                        if (walked.Stretch is { } stretch)
                            Assert.True(
                                clock.Tight != Truth.NotMet && stretch <= clock.CurrentStretch.Max && stretch >= clock.CurrentStretch.Min,
                                $"{stretch} outside {clock.CurrentStretch.Min} to {clock.CurrentStretch.Max}"
                            );
                        else
                            Assert.NotEqual(Truth.Met, clock.Tight);
                    }
                },
                iter: Gens.Cases(2_500)
            );

    [Fact]
    public void No_course_of_events_is_past_the_limit_where_an_attempt_is_called_for() =>
        Gen.Select(Gens.Record, Gens.Protocol, Fractions)
            .Sample(
                (written, protocol, fractions) =>
                {
                    var state = written.Record.Readings[0];
                    var real = Told.Realised(state, i => fractions[i % 32]);
                    return Told.Limbs(state, protocol, written.Now)
                        .Where(l => l.Verdict == Verdict.Attempt)
                        .All(l =>
                            LimbClock.Of(l.Limb, real, written.Now) is not { } clock
                            || clock.SinceFirstTightened.Max < protocol.Clock.Limit
                            || (WasLongLoose(clock) && clock.Occluded.Max < protocol.Clock.Limit)
                        );
                },
                iter: Gens.Cases(2_000)
            );

    [Fact]
    public void The_earliest_and_the_latest_first_tightening_are_possible() =>
        Gens.Record.Sample(
            written =>
            {
                var state = written.Record.Readings[0];
                foreach (var limb in Enum.GetValues<Limb>())
                {
                    if (LimbClock.Of(limb, state, written.Now) is not { } clock)
                        continue;
                    var early = Walk(limb, Told.Realised(state, _ => 0), written.Now)!.Value;
                    Assert.Equal(clock.SinceFirstTightened.Max, early.Since);
                    if (Walk(limb, Told.Realised(state, _ => 1), written.Now) is { } late)
                        Assert.Equal(clock.SinceFirstTightened.Min, late.Since);
                }
            },
            iter: Gens.Cases(2_000)
        );

    [Fact]
    public void From_six_hours_on_the_worse_side_there_is_no_attempt() =>
        Gens.StrangeRecord.Sample(
            written =>
                written
                    .Judged()
                    .Limbs.All(l =>
                        l.Clock.SinceFirstTightened.Max < Duration.FromHours(6)
                        || l.Verdict == Verdict.LeaveOn
                        || (WasLongLoose(l.Clock) && l.Clock.Occluded.Max < Duration.FromHours(6))
                    ),
            iter: Gens.Cases(2_000)
        );

    [Fact]
    public void Knowing_a_first_tightening_less_exactly_never_makes_for_an_attempt() =>
        Gen.Select(Gens.Record, Gen.Int[1, 200], Gen.Int[1, 60])
            .Sample(
                (written, earlier, later) =>
                {
                    var state = written.Record.Readings[0];
                    var vague = State.Of(
                        state.All.Select(d =>
                            d.What is Payload.TourniquetTightened
                                ? d with
                                {
                                    When = new(d.When.Earliest - Duration.FromMinutes(earlier), d.When.Latest),
                                }
                                : d
                        )
                    );
                    var before = Told.Limbs(state, ShippedProtocol.Protocol, written.Now).ToDictionary(l => l.Limb);
                    return Told.Limbs(vague, ShippedProtocol.Protocol, written.Now)
                        // A vaguer time can take the limb out of a clinic's reach: then there is nothing to wait for, or to ask about it,
                        // any more;
                        // and it can hold up the limb that this one waited for.
                        .All(l =>
                            l.Verdict != Verdict.Attempt
                            || !before.TryGetValue(l.Limb, out var v)
                            || v.Verdict == Verdict.Attempt
                            || v.Reasons.All(r => r.Criterion.Role == Role.Awaits || r.Criterion.Id == "limbs.one")
                        );
                },
                iter: Gens.Cases(2_000)
            );

    [Fact]
    public void Tourniquets_that_move_are_never_reckoned_shorter_than_any_course_of_events() =>
        Gen.Select(Gens.Record, Fractions)
            .Sample(
                (written, fractions) =>
                {
                    var state = written.Record.Readings[0];
                    var real = Told.Realised(state, i => fractions[i % 32]);
                    return Enum.GetValues<Limb>()
                        .All(limb =>
                            LimbClock.Of(limb, state, written.Now) is not { } clock
                            || Walk(limb, real, written.Now) is not { } walked
                            || walked.Since <= clock.SinceFirstTightened.Max
                        );
                },
                iter: Gens.Cases(2_000)
            );

    /// <summary>Flow ran for two hours between two tightenings: then advice may count the time without flow instead.</summary>
    private static bool WasLongLoose(LimbClock clock) =>
        clock.Stretches.Zip(clock.Stretches.Skip(1)).Any(s => s.Second.From - s.First.To >= Duration.FromHours(2));

    /// <summary>Each tourniquet stays on the limb it was first put on.</summary>
    private static State OnOneLimbEach(State state)
    {
        var limbs = new Dictionary<string, Limb>();
        return State.Of(
            state.All.Select(d =>
                d.What is not Payload.TourniquetTightened t
                    ? d
                    : d with
                    {
                        What = t with { Limb = limbs.TryGetValue(t.Tourniquet, out var limb) ? limb : limbs[t.Tourniquet] = t.Limb },
                    }
            )
        );
    }

    /// <summary>Goes through what happened up to now, one after the other, as a person with a stop-watch would.</summary>
    /// <returns>Null where nothing was tightened yet; no stretch where nothing is tight.</returns>
    private static (Duration Since, Duration Occluded, Duration? Stretch)? Walk(Limb limb, State real, Instant now)
    {
        var mine = real.Of(Kind.TourniquetTightened)
            .Select(t => t.As<Payload.TourniquetTightened>())
            .Where(t => t.Limb == limb)
            .Select(t => t.Tourniquet)
            .ToHashSet();
        var tight = new HashSet<string>();
        Instant? first = null,
            since = null;
        var occluded = Duration.Zero;
        foreach (var happening in real.All.Where(d => d.When.Latest <= now).OrderBy(d => d.When.Latest))
        {
            var was = tight.Count > 0;
            switch (happening.What)
            {
                case Payload.TourniquetTightened t when t.Limb == limb:
                    first ??= happening.When.Latest;
                    tight.Add(t.Tourniquet);
                    break;
                case Payload.TourniquetSlackened { Tourniquet: var name } when mine.Contains(name):
                    tight.Remove(name);
                    break;
                case Payload.TourniquetRemoved { Tourniquet: var name } when mine.Contains(name):
                    tight.Remove(name);
                    break;
            }

            if (!was && tight.Count > 0)
                since = happening.When.Latest;
            if (was && tight.Count == 0)
                occluded += happening.When.Latest - since!.Value;
        }

        if (first is not { } begun)
            return null;
        return tight.Count > 0 ? (now - begun, occluded + (now - since!.Value), now - since.Value) : (now - begun, occluded, null);
    }
}
