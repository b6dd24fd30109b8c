using CsCheck;

namespace Farhold.Physiology.Tests.Rehearsal;

/// <summary>Three layers: what is true, what a look shows, what is logged.</summary>
public class LookTests
{
    private static readonly RehearsalWound Leg = new("w1", WoundKind.LimbArtery, 320);

    [Fact]
    public void Nothing_is_shown_before_its_time_and_then_it_is_of_that_moment()
    {
        var run = Started(1);
        var look = run.Begin(LookKind.Pressure);
        Assert.Equal(60, look.ReadyAt);
        run.Advance(119);
        Assert.Empty(run.Shown);
        run.Advance(1);
        var (seen, shown) = Assert.Single(run.Shown);
        Assert.Equal(look, seen);
        var now = run.Simulation.Vitals();
        var pressures = Assert.IsType<Shown.Pressures>(shown);
        Assert.InRange(pressures.Systolic, now.SystolicPressure - 6, now.SystolicPressure + 6);
        Assert.InRange(pressures.Diastolic, now.DiastolicPressure - 6, now.DiastolicPressure + 6);
        Assert.Equal(0, pressures.Systolic % 2);
    }

    /// <summary>The bounds are of the reference: 3 % of a pulse, one breath, 0.4 s; and half of what is rounded to.</summary>
    [Fact]
    public void A_look_is_off_by_no_more_than_it_may_be() =>
        Gen.ULong.Sample(
            seed =>
            {
                var run = Started(seed);
                foreach (var kind in (LookKind[])[LookKind.Pulse, LookKind.Breaths, LookKind.Refill])
                    run.Begin(kind);
                run.Advance(120);
                var looked = run.Truth.OfType<TruthEvent.Looked>().ToArray();
                return looked.Length == 3
                    && looked.All(l =>
                    {
                        var (truth, shown) = (((Shown.Number)l.Truth).Value, ((Shown.Number)l.Shown).Value);
                        var most = l.Look.Kind switch
                        {
                            LookKind.Pulse => (0.03 * (truth + 1)) + 1,
                            LookKind.Breaths => 2,
                            _ => 0.9,
                        };
                        return Math.Abs(shown - truth) <= most;
                    });
            },
            iter: Cases.Of(200)
        );

    [Fact]
    public void Looks_of_another_seed_are_off_otherwise_and_the_truth_is_the_same()
    {
        var pulses = Enumerable.Range(0, 40).Select(seed => Counted((ulong)seed)).ToArray();
        Assert.True(pulses.Select(p => p.Shown).Distinct().Count() > 1);
        Assert.Single(pulses.Select(p => p.Truth).Distinct());

        static (double Shown, double Truth) Counted(ulong seed)
        {
            var run = Started(seed);
            run.Begin(LookKind.Pulse);
            run.Advance(30);
            var looked = Assert.Single(run.Truth.OfType<TruthEvent.Looked>());
            return (((Shown.Number)looked.Shown).Value, ((Shown.Number)looked.Truth).Value);
        }
    }

    [Fact]
    public void Without_a_pulse_at_the_wrist_neither_rate_nor_pressure_can_be_told()
    {
        var run = Started(1, Leg with { Bleed = 1_000 });
        while (run.Simulation.Vitals().SystolicPressure > 50)
            run.Advance(2);
        run.Begin(LookKind.Pulse);
        run.Begin(LookKind.Pressure);
        run.Advance(120);
        Assert.Equal(2, run.Shown.Count());
        Assert.All(run.Shown, s => Assert.IsType<Shown.CannotTell>(s.Shown));
    }

    [Theory]
    [InlineData(0.99, BleedingSeen.None)]
    [InlineData(1, BleedingSeen.Oozing)]
    [InlineData(15, BleedingSeen.Oozing)]
    [InlineData(15.01, BleedingSeen.Active)]
    public void Flow_has_a_word(double flow, BleedingSeen word) => Assert.Equal(word, Observation.Word(Models.Current.Looks, flow));

    /// <summary>What nobody sees is not nothing: under the edge it is seen at once, from above when it has soaked through.</summary>
    [Fact]
    public void A_dressing_hides_bleeding_until_it_is_soaked()
    {
        var run = Started(1, Leg with { Kind = WoundKind.TrunkArtery });
        run.Begin(new Act.Dress("w1"));
        run.Advance(122);
        Assert.Equal((BleedingSeen.None, BleedingSeen.Active), Seen());
        var truth = run.Truth.OfType<TruthEvent.Looked>().First(l => l.Look.Kind == LookKind.Bleeding).Truth;
        Assert.Equal(BleedingSeen.Active, ((Shown.Bleeds)truth).Seen);
        run.Advance(240);
        Assert.Equal((BleedingSeen.Active, BleedingSeen.Active), Seen());

        (BleedingSeen Above, BleedingSeen Below) Seen()
        {
            run.Begin(LookKind.Bleeding, "w1");
            run.Begin(LookKind.BleedingBelow, "w1");
            run.Advance(10);
            var last = run.Shown.TakeLast(2).Select(s => ((Shown.Bleeds)s.Shown).Seen).ToArray();
            return (last[0], last[1]);
        }
    }

    [Fact]
    public void A_number_is_followed_from_truth_by_what_was_shown_to_what_was_logged()
    {
        Look pulse = new(LookKind.Pulse, null, 0, 15),
            again = new(LookKind.Pulse, null, 100, 115),
            breaths = new(LookKind.Breaths, null, 120, 150);
        TruthEvent[] truth =
        [
            new TruthEvent.Looked(15, pulse, new Shown.Number(98), new Shown.Number(100)),
            new TruthEvent.Looked(115, again, new Shown.CannotTell(), new Shown.Number(120)),
            new TruthEvent.Looked(150, breaths, new Shown.Number(20), new Shown.Number(21)),
        ];
        LoggedNumber[] logged =
        [
            new(LookKind.Breaths, 18, 5, 10), // before anybody had counted
            new(LookKind.Pulse, 89, 20, 75), // digits turned round, a minute late
        ];
        var (readings, never) = Reading.Join(truth, logged);
        Assert.Equal(2, readings.Length); // what could not be told is no number
        Assert.Equal((-2.0, -9.0, 5.0, 60.0), (readings[0].LookError, readings[0].LogError, readings[0].TimeError, readings[0].Delay));
        Assert.Equal((-1.0, null), (readings[1].LookError, readings[1].LogError));
        Assert.Equal(logged[0], Assert.Single(never));
    }

    private static RehearsalRun Started(ulong seed, RehearsalWound? wound = null) =>
        new(Models.Current, "c1", new(), new() { NociceptiveBlock = 0.8 }, [wound ?? Leg], seed);
}
