using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>What no record can bring about: an attempt that the rules do not bear out, or one made possible by looking less.</summary>
public class NoAttemptTests
{
    private static readonly Protocol Shipped = ShippedProtocol.Protocol;

    [Fact]
    public void No_entries_reach_an_attempt_without_what_the_rules_ask_of_one()
    {
        var begun = 0;
        Gen.OneOf(Gens.Record, Gens.StrangeRecord)
            .Sample(
                written =>
                {
                    foreach (var limb in written.Judged().Limbs.Where(l => l is { Verdict: Verdict.Attempt, Attempt: null }))
                    {
                        Interlocked.Increment(ref begun);
                        foreach (var state in written.Record.Readings)
                            if (
                                Told.Limbs(state, Shipped, written.Now)
                                    .Any(l => l.Limb == limb.Limb && l is { Verdict: Verdict.Attempt, Attempt: null })
                            )
                                Assert.Empty(new PageInHand(state, limb.Limb, written.Now).Missing());
                    }
                },
                iter: Gens.Cases(6_000)
            );
        Assert.True(begun >= Gens.Cases(100), $"only {begun} attempts");
    }

    /// <summary>
    /// But for what counts when measured; a pressure where "no cuff" was said as well: then nobody measured one; and a sign that was read
    /// twice within one look: then the other reading stands, which nobody can tell from one that was always alone.
    /// </summary>
    [Fact]
    public void A_reading_taken_away_from_a_look_with_a_sign_never_makes_for_an_attempt()
    {
        var looks = 0;
        Gen.Select(Gens.Record, Gen.OneOf(Fields), Gen.Int[0, 99])
            .Sample(
                (written, field, which) =>
                {
                    var state = written.Record.Readings[0];
                    var signed = new CasualtyView(state, ShippedRules.Book.By(Shipped), written.Now, [])
                        .Looks.NewestFirst.Where(l => l.Complete && !l.ShowsNothing)
                        .ToArray();
                    if (
                        signed.Length == 0
                        || (field == "systolic" && state.Of(Kind.SignsTaken).Any(s => s.As<Payload.SignsTaken>().NoPressureCuff == true))
                    )
                        return;
                    var look = signed[which % signed.Length];
                    var end = Instant.Min(look.When.Latest, written.Now);
                    var entries = state
                        .Of(Kind.SignsTaken)
                        .Where(e => e.When.Earliest <= end && e.When.Latest >= end - Duration.FromMinutes(5))
                        .ToArray();
                    var entry = entries[which % entries.Length];
                    if (
                        state
                            .Of(Kind.SignsTaken)
                            .Any(e => e != entry && Near(e, entry) && SignLook.Gives(e.As<Payload.SignsTaken>(), field))
                    )
                        return;
                    Interlocked.Increment(ref looks);
                    NoMilder(state, Without(state, entry, field), written.Now);
                },
                iter: Gens.Cases(4_000)
            );
        Assert.True(looks >= Gens.Cases(300), $"only {looks} looks with a sign");
    }

    /// <summary>"No cuff" never hides a pressure that was measured; only a refill takes its place.</summary>
    [Fact]
    public void Saying_that_there_is_no_cuff_never_makes_for_an_attempt_once_a_pressure_was_measured() =>
        Gen.Select(Gens.StrangeRecord, Gens.Moment)
            .Sample(
                (written, when) =>
                {
                    var state = written.Record.Readings[0];
                    var signs = state
                        .Of(Kind.SignsTaken)
                        .Where(s => s.When.Earliest <= written.Now)
                        .Select(s => s.As<Payload.SignsTaken>())
                        .ToArray();
                    if (signs.Any(s => s.Systolic is not null) && signs.All(s => s.CapillaryRefillS is null))
                        NoMilder(state, Plus(state, when, new Payload.SignsTaken { NoPressureCuff = true }), written.Now);
                },
                iter: Gens.Cases(2_000)
            );

    [Fact]
    public void Left_to_watch_alone_a_casualty_is_never_better_off() =>
        Gens.StrangeRecord.Sample(
            written =>
            {
                var state = written.Record.Readings[0];
                NoMilder(
                    state,
                    State.Of(
                        state.All.Select(d =>
                            d.What is Payload.WatchStated { Able: true } w ? d with { What = w with { Who = Watcher.Casualty } } : d
                        )
                    ),
                    written.Now
                );
            },
            iter: Gens.Cases(1_500)
        );

    [Fact]
    public void Nobody_who_can_watch_a_move_ahead_and_a_no_never_make_for_an_attempt() =>
        Gen.Select(
                Gens.StrangeRecord,
                Gens.Moment,
                Gen.OneOf<Payload>(
                    new Payload.WatchStated(false),
                    new Payload.CasualtyMoved(Movement.Carried, MovePhase.AboutTo),
                    new Payload.AdviceReceived("duty doctor", "leave it on", []),
                    new Payload.BleedingChecked("w1", Bleeding.Active),
                    new Payload.SignsTaken { RadialPulse = RadialPulse.Weak },
                    new Payload.CasualtyLookedOver(VeryCold: true)
                )
            )
            .Sample(
                (written, when, worse) =>
                {
                    var state = written.Record.Readings[0];
                    NoMilder(state, Plus(state, when, worse), written.Now);
                },
                iter: Gens.Cases(3_000)
            );

    private static bool Near(Dated a, Dated b) =>
        Instant.Max(a.When.Latest, b.When.Latest) - Instant.Min(a.When.Earliest, b.When.Earliest) <= Duration.FromMinutes(5);

    private static readonly string[] Fields =
    [
        "heartRate",
        "breathRate",
        "systolic",
        "mental",
        "dizzy",
        "pale",
        "cool",
        "clammy",
        "radialPulse",
    ];

    private static State Without(State state, Dated entry, string field) =>
        State.Of(state.All.Select(d => d == entry ? d with { What = Told.Silenced(d.As<Payload.SignsTaken>(), field) } : d));

    private static State Plus(State state, Instant when, Payload what) =>
        State.Of(state.All.Append(new(new("zz", 1), Happened.At(when), when, "Ane", what)));

    private static void NoMilder(State before, State after, Instant now)
    {
        var known = Told.Limbs(before, Shipped, now).ToDictionary(l => l.Limb, l => l.Verdict);
        Assert.DoesNotContain(
            Told.Limbs(after, Shipped, now),
            l => l.Verdict == Verdict.Attempt && known.TryGetValue(l.Limb, out var v) && v != Verdict.Attempt
        );
    }
}
