using CsCheck;

namespace Farhold.Physiology.Tests.Rehearsal;

public class RehearsalRunTests
{
    private static readonly RehearsalWound Leg = new("w1", WoundKind.LimbArtery, 320);

    private static readonly Gen<Act> AnyAct = Gen.OneOf(
        Gen.Bool.Select(loose => (Act)new Act.Tighten(loose)),
        Gen.Const((Act)new Act.Slacken()),
        Gen.Bool.Select(h => (Act)new Act.Pack("w1", h ? PackingGauze.Haemostatic : PackingGauze.Plain)),
        Gen.Const((Act)new Act.Dress("w1")),
        Gen.Const((Act)new Act.Press("w1")),
        Gen.Const((Act)new Act.Release("w1")),
        Gen.Double[0, 10].Select(p => (Act)new Act.Hurt(p)),
        Gen.Double[0.1, 0.9].Select(i => (Act)new Act.Cover(i, 0, 40))
    );

    private static readonly Gen<(int Step, Act? Act, LookKind Look)[]> Deeds = Gen.Select(
            Gen.Int[0, 2_400],
            Gen.OneOf(AnyAct.Select(a => (Act?)a), AnyAct.Select(a => (Act?)a), Gen.Const((Act?)null)),
            Gen.OneOf(Gen.Const(LookKind.Pulse), Gen.Const(LookKind.Pressure), Gen.Const(LookKind.Bleeding), Gen.Const(LookKind.Mental)),
            (step, act, look) => (step, act, look)
        )
        .Array[0, 12]
        .Select(d => d.OrderBy(x => x.Item1).ToArray());

    [Fact]
    public void The_same_acts_and_seed_give_the_same_truth_however_time_is_cut() =>
        Gen.Select(Deeds, Gen.ULong, Gen.Int[1, 300], Gen.Int[1, 300])
            .Sample((deeds, seed, one, other) => Same(Play(deeds, seed, one), Play(deeds, seed, other)), iter: Cases.Of(100));

    /// <summary>So that a what-if differs by what was done, and not by how often somebody counted a pulse.</summary>
    [Fact]
    public void One_more_look_changes_nothing_else() =>
        Gen.Select(Deeds, Gen.ULong, Gen.Int[0, 2_400])
            .Sample(
                (deeds, seed, at) =>
                {
                    var more = deeds.Append((at, null, LookKind.Refill)).OrderBy(d => d.Item1).ToArray();
                    var (without, with) = (Play(deeds, seed, 60), Play(more, seed, 60));
                    return without.Simulation.State.SequenceEqual(with.Simulation.State)
                        && without.Truth.SequenceEqual(with.Truth.Where(e => !OfRefill(e)));
                },
                iter: Cases.Of(100)
            );

    [Fact]
    public void Another_time_draws_the_same_for_the_attempt()
    {
        var (early, late) = (Converted(5_400, 3), Converted(7_200, 3));
        Assert.Equal(Hold(early), Hold(late));

        static double Hold(RehearsalRun run) =>
            run.Truth.OfType<TruthEvent.Drawn>().Single(d => d.Name.EndsWith("attempt:1/hold", StringComparison.Ordinal)).Value;
    }

    [Fact]
    public void An_act_takes_its_time_and_works_bit_by_bit()
    {
        var run = Started(Leg);
        var done = run.Begin(new Act.Tighten());
        Assert.InRange(done, 20, 60);
        Assert.Equal(0, done % 0.5);
        run.Advance((int)done);
        var half = run.Simulation.Conditions;
        Assert.InRange(half.ArterialOcclusion, 0.45, 0.55);
        run.Advance((int)done + 2);
        Assert.Equal((1.0, 1.0), (run.Simulation.Conditions.ArterialOcclusion, run.Simulation.Conditions.VenousOcclusion));
        Assert.Equal(0, run.Simulation.WoundFlow(0));
    }

    [Fact]
    public void Somebody_untrained_takes_a_minute_longer()
    {
        var slow = new RehearsalRun(Models.Current, "c1", new(), new(), [Leg], 71, isTrained: false);
        Assert.Equal(60, slow.Begin(new Act.Tighten()) - Started(Leg).Begin(new Act.Tighten()));
    }

    [Fact]
    public void A_hand_on_the_wound_slows_it_until_it_is_taken_off()
    {
        var run = Started(Leg);
        run.Advance(2);
        var open = run.Simulation.WoundFlow(0);
        run.Begin(new Act.Press("w1"));
        run.Advance(10);
        Assert.True(run.Simulation.WoundFlow(0) < 0.1 * open);
        run.Begin(new Act.Release("w1"));
        run.Advance(10);
        Assert.True(run.Simulation.WoundFlow(0) > 0.5 * open);
    }

    [Fact]
    public void What_holds_is_decided_by_the_wound_and_a_failure_bleeds()
    {
        var fails = Converted(5_400, 3, Leg with { Difficulty = 0.9999 });
        var failed = Assert.Single(fails.Truth.OfType<TruthEvent.Failed>());
        Assert.InRange(failed.At, 5_400, 5_400 + 700);
        var holds = Converted(5_400, 3, Leg with { Difficulty = 0.0001 });
        Assert.Empty(holds.Truth.OfType<TruthEvent.Failed>());
        Assert.True(fails.Simulation.Levels.LostVolume > holds.Simulation.Levels.LostVolume + 100);
        Assert.True(holds.Simulation.WoundFlow(0) < 1);
    }

    [Fact]
    public void Tight_again_before_it_fails_nothing_fails()
    {
        var run = Converted(5_400, 3, Leg with { Difficulty = 0.9999 }, then: r => r.Begin(new Act.Tighten()));
        Assert.Empty(run.Truth.OfType<TruthEvent.Failed>());
    }

    /// <summary>Over many wounds the share that holds is the one asked for, within three standard errors.</summary>
    [Theory]
    [InlineData(0.667)]
    [InlineData(0.143)]
    [InlineData(0.968)]
    public void The_share_that_holds_is_the_one_asked_for(double share)
    {
        const int Wounds = 20_000;
        var draws = new NamedDraws(5);
        var held = Enumerable.Range(0, Wounds).Count(i => Holds(draws, i, 1, share));
        Assert.InRange((double)held / Wounds, share - Error(), share + Error());

        double Error() => 3 * Math.Sqrt(share * (1 - share) / Wounds);
    }

    /// <summary>What failed once is more likely to fail again, and does not always.</summary>
    [Fact]
    public void A_second_attempt_shares_the_wound()
    {
        var draws = new NamedDraws(6);
        var failed = Enumerable.Range(0, 20_000).Where(i => !Holds(draws, i, 1, 0.667)).ToArray();
        var again = failed.Count(i => Holds(draws, i, 2, 0.667)) / (double)failed.Length;
        Assert.InRange(again, 0.2, 0.5);
    }

    [Fact]
    public void A_harder_wound_never_holds_where_an_easier_one_fails() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.999], Gen.Double[0, 1])
            .Sample(
                (one, other, attempt, share) =>
                    !RehearsalWound.Holds(share, Math.Max(one, other), attempt, 0.8)
                    || RehearsalWound.Holds(share, Math.Min(one, other), attempt, 0.8),
                iter: Cases.Of(10_000)
            );

    [Fact]
    public void Fluids_run_in_over_their_time_and_stop()
    {
        var run = Started(Leg with { Bleed = 0 });
        Assert.Equal(600, run.Begin(new Act.Infuse(new(0, 0.38, 0.0372, 0.55, 20), 450, 10)));
        Assert.Throws<InvalidOperationException>(() => run.Begin(new Act.Infuse(new(), 1, 1)));
        var before = run.Simulation.Levels.RedCellVolume;
        run.Advance(1_300);
        Assert.Equal(450 * 0.38, run.Simulation.Levels.RedCellVolume - before, 1e-6);
        Assert.Equal(0, run.Simulation.Conditions.Infusion.Rate);
        run.Begin(new Act.Drink(200, Salts: true));
        run.Advance(600);
        Assert.InRange(run.Simulation.Levels.GutVolume, 1, 199);
        Assert.Equal(0, run.Simulation.Conditions.Drinking);
    }

    [Fact]
    public void A_wound_nobody_knows_and_two_of_one_name_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Started(Leg).Begin(new Act.Pack("w2", PackingGauze.Plain)));
        Assert.Throws<ArgumentException>(() => Started(Leg).Begin(LookKind.Bleeding));
        Assert.Throws<ArgumentException>(() => Started(Leg).Begin(LookKind.Pulse, "w1"));
        Assert.Throws<ArgumentException>(() => Started(Leg, Leg));
    }

    private static bool Holds(NamedDraws draws, int wound, int attempt, double share) =>
        RehearsalWound.Holds(share, draws.Uniform($"{wound}/difficulty"), draws.Uniform($"{wound}/{attempt}/hold"), 0.8);

    private static RehearsalRun Started(params RehearsalWound[] wounds) =>
        new(Models.Current, "c1", new(), new() { NociceptiveBlock = 0.8 }, [.. wounds], 71);

    /// <summary>Tied at once; packed, dressed and let out so that this is done at a time; then half an hour.</summary>
    private static RehearsalRun Converted(int at, ulong seed, RehearsalWound? wound = null, Action<RehearsalRun>? then = null)
    {
        var run = new RehearsalRun(Models.Current, "c1", new(), new() { NociceptiveBlock = 0.8, Pain = 5 }, [wound ?? Leg], seed);
        run.Begin(new Act.Tighten());
        run.Advance(2 * (at - 400));
        Until(run.Begin(new Act.Pack("w1", PackingGauze.Plain)));
        Until(run.Begin(new Act.Dress("w1")));
        Until(at - 60);
        Until(run.Begin(new Act.Slacken()));
        then?.Invoke(run);
        run.Advance(3_600);
        return run;

        void Until(double time) => run.Advance((int)(2 * (time - run.Time)));
    }

    private static RehearsalRun Play((int Step, Act? Act, LookKind Look)[] deeds, ulong seed, int chunk)
    {
        var run = new RehearsalRun(Models.Current, "c1", new(), new() { NociceptiveBlock = 0.8 }, [Leg], seed);
        var made = 0;
        foreach (var (step, act, look) in deeds)
        {
            To(step);
            if (act is not null)
                run.Begin(act);
            else
                run.Begin(look, look == LookKind.Bleeding ? "w1" : null);
        }

        To(3_000);
        return run;

        void To(int step)
        {
            for (; made < step; made += Math.Min(chunk, step - made))
                run.Advance(Math.Min(chunk, step - made));
        }
    }

    private static bool Same(RehearsalRun one, RehearsalRun other) =>
        one.Truth.SequenceEqual(other.Truth) && one.Simulation.State.SequenceEqual(other.Simulation.State);

    private static bool OfRefill(TruthEvent of) =>
        of switch
        {
            TruthEvent.Looked l => l.Look.Kind == LookKind.Refill,
            TruthEvent.Drawn d => d.Name.Contains("look:Refill", StringComparison.Ordinal),
            _ => false,
        };
}
