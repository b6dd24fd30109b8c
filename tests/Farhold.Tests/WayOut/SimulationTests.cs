using CsCheck;

namespace Farhold.Tests.WayOut;

public class SimulationTests
{
    private static readonly Gen<string> Time = Gen.Select(Gen.Int[0, 300], Gen.Int[0, 300], Gen.Int[0, 900])
        .Select((low, up, more) => $"\"low\":{low},\"likely\":{low + up},\"high\":{low + up + more}");

    private static readonly Gen<string> Travel = Gen.OneOf(
        Time.Select(t => $$"""{"mode":"wait",{{t}}}"""),
        Gen.Select(Gen.Int[0, 12], Gen.Int[0, 900], Gen.Bool)
            .Select(
                (km, up, stop) =>
                    $$"""{"mode":"walk","distanceKm":{{km}},"ascentM":{{Math.Min(up, 1000 * km)}},"dark":"{{(stop ? "stop" : "allowed")}}"}"""
            ),
        Gen.Select(Gen.Int[0, 9], Gen.Int[2, 24], Gen.Bool)
            .Select(
                (km, bearers, stop) =>
                    $$"""{"mode":"carry","distanceKm":{{km}},"bearers":{{bearers}},"dark":"{{(stop ? "stop" : "allowed")}}"}"""
            ),
        Gen.Select(Time, Time, Gen.Bool)
            .Select(
                (t, hold, day) =>
                    $$"""{"mode":"aircraft",{{t}},"window":"{{(day ? "daylight" : "any")}}","hold":{"probability":0.3,{{hold}} } }"""
            )
    );

    private static readonly Gen<string> Leg = Gen.OneOf(
        Travel,
        Travel,
        Gen.Select(Travel, Travel).Select((a, b) => $$"""{"branches":[{"probability":0.6,"legs":[{{a}}]},{"legs":[{{b}}]}]}"""),
        Gen.Select(Travel, Travel).Select((a, b) => $$"""{"first":[{"probability":0.7,"legs":[{{a}}]},{"legs":[{{b}}]}]}"""),
        Gen.Select(Travel, Travel).Select((a, b) => $$"""{"all":[{"legs":[{{a}}]},{"legs":[{{b}}]}]}""")
    );

    private static readonly Gen<Plan> Plan = Gen.Select(Leg.Array[1, 4], Gen.Int[0, 10])
        .Select(
            (legs, rho) =>
                SomePlan.Of(
                    string.Join(",", legs),
                    FormattableString.Invariant($"\"correlation\":{rho / 10.0},\"from\":{{\"lat\":1,\"lon\":2}},")
                )
        );

    [Fact]
    public void A_later_start_never_arrives_earlier() =>
        Gen.Select(Plan, Gen.Int[1, 2000])
            .Sample(
                (p, minutes) =>
                {
                    var later = p with { Start = p.Start + Duration.FromMinutes(minutes) };
                    var (before, after) = (SomePlan.Seconds(p, SomePlan.Nights, 50), SomePlan.Seconds(later, SomePlan.Nights, 50));
                    Assert.All(before.Zip(after), pair => Assert.True(pair.Second + (minutes * 60) >= pair.First - 1e-6, $"{pair}"));
                },
                iter: 100
            );

    [Fact]
    public void One_more_leg_never_shortens() =>
        Gen.Select(Plan, Plan, Gen.Int[0, 9])
            .Sample(
                (p, other, at) =>
                {
                    var added = other.Legs[0] is Travel t
                        ? t with
                        {
                            Slot = 400,
                        }
                        : ((Choice)other.Legs[0]).Ways[0].Legs[0] with
                        {
                            Slot = 400,
                        };
                    var longer = p with { Legs = p.Legs.Insert(at % (p.Legs.Length + 1), added) };
                    Assert.All(
                        SomePlan.Seconds(p, SomePlan.Nights, 50).Zip(SomePlan.Seconds(longer, SomePlan.Nights, 50)),
                        pair => Assert.True(pair.Second >= pair.First - 1e-6, $"{pair}")
                    );
                },
                iter: 100
            );

    [Fact]
    public void Darkness_never_helps() =>
        Gen.Select(Plan, Gen.Double[0, 200], Gen.Double[0, 20])
            .Sample(
                (p, from, hours) =>
                {
                    var more = (Some.At("00:00") + Duration.FromHours(from), Some.At("00:00") + Duration.FromHours(from + hours));
                    var darker = Darkness.Of(SomePlan.Nights.Stretches.Append(more), SomePlan.Nights.KnownUntil);
                    Assert.All(
                        SomePlan.Seconds(p, SomePlan.Nights, 50).Zip(SomePlan.Seconds(p, darker, 50)),
                        pair => Assert.True(pair.Second >= pair.First - 1e-6, $"{pair}")
                    );
                },
                iter: 100
            );

    [Fact]
    public void Striking_a_way_never_brings_the_first_forward() =>
        Gen.Select(Travel, Travel, Travel)
            .Sample(
                (a, b, c) =>
                {
                    var three = SomePlan.Of(
                        $$"""{"first":[{"legs":[{{a}}]},{"legs":[{{b}}]},{"legs":[{{c}}]}]}""",
                        "\"from\":{\"lat\":1,\"lon\":2},"
                    );
                    var two = three.Mapped(l => l is Choice choice ? choice with { Ways = choice.Ways.RemoveAt(2) } : l);
                    Assert.All(
                        SomePlan.Seconds(three, SomePlan.Nights, 50).Zip(SomePlan.Seconds(two, SomePlan.Nights, 50)),
                        pair => Assert.True(pair.Second >= pair.First, $"{pair}")
                    );
                },
                iter: 100
            );

    [Fact]
    public void More_bearers_never_slow_a_carry()
    {
        for (var people = 2; people < 24; people++)
        {
            var (few, more) = (Carry(people), Carry(people + 1));
            Assert.All(few.Zip(more), pair => Assert.True(pair.Second <= pair.First));
        }

        static double[] Carry(int people) =>
            SomePlan.Seconds(SomePlan.Of($$"""{"mode":"carry","distanceKm":4,"bearers":{{people}}}"""), SomePlan.Nights, 50);
    }

    [Fact]
    public void Steps_change_no_digit() =>
        Gen.Select(Plan, Gen.Int[1, 700], Gen.ULong)
            .Sample(
                (p, step, seed) =>
                {
                    var compiled = CompiledPlan.Of(p, SomePlan.Nights);
                    var limits = new SamplingLimits(1500, 5000, 0.001, 0.0001);
                    var whole = new Simulation(compiled, new Rng(seed), limits).Run(TestContext.Current.CancellationToken);
                    var stepped = new Simulation(compiled, new Rng(seed), limits);
                    while (!stepped.Step(step).Finished) { }

                    for (var place = 0; place < compiled.Places.Length; place++)
                        Assert.Equal(whole.SecondsTo(place).ToArray(), stepped.SecondsTo(place).ToArray());
                },
                iter: 10
            );

    [Fact]
    public void The_same_seed_gives_the_same_digits_and_another_seed_others()
    {
        Assert.Equal(SomePlan.Seconds(SomePlan.RidgeHut, SomePlan.Nights), SomePlan.Seconds(SomePlan.RidgeHut, SomePlan.Nights));
        Assert.NotEqual(
            SomePlan.Seconds(SomePlan.RidgeHut, SomePlan.Nights, seed: 2),
            SomePlan.Seconds(SomePlan.RidgeHut, SomePlan.Nights)
        );
    }

    [Fact]
    public void Sampling_goes_on_until_precise_or_at_the_limit()
    {
        var wide = CompiledPlan.Of(SomePlan.Of("""{"mode":"wait","p10":10,"p90":900}"""), null);
        Assert.Equal(20_000, new Simulation(wide, new Rng(1), new(1000, 20_000, 0.001)).Run(TestContext.Current.CancellationToken).Done);
        var narrow = CompiledPlan.Of(SomePlan.Of("""{"mode":"wait","p10":100,"p90":101}"""), null);
        Assert.Equal(1000, new Simulation(narrow, new Rng(1), new(1000, 20_000, 0.001)).Run(TestContext.Current.CancellationToken).Done);
        // A deadline in the middle needs 10,000 trials for a standard error of 0.005.
        var deadline = new[] { Some.At("09:40") + Duration.FromSeconds(30) };
        Assert.Equal(
            16_000,
            new Simulation(narrow, new Rng(1), new(1000, 90_000, 0.01), deadline).Run(TestContext.Current.CancellationToken).Done
        );
    }

    [Fact]
    public void A_step_runs_no_more_trials_than_asked_and_can_be_left()
    {
        var simulation = new Simulation(CompiledPlan.Of(SomePlan.RidgeHut, SomePlan.Nights), new Rng(1));
        Assert.Equal(new SimulationProgress(300, 4096, false), simulation.Step(300));
        Assert.Equal(300, simulation.SecondsToCare.Length);
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() => simulation.Run(cancelled.Token));
    }

    [Fact]
    public void A_leg_that_halts_at_dusk_goes_on_at_dawn()
    {
        // Ten hours of walking by day from 12:00, dark from 20 to 05: eight hours, a night, two hours.
        var seconds = SomePlan.Seconds(
            SomePlan.Of(
                """{"mode":"wait","low":240,"likely":240,"high":240},{"mode":"walk","low":600,"likely":600,"high":600,"dark":"stop"}""",
                "\"from\":{\"lat\":1,\"lon\":2},"
            ),
            SomePlan.Nights,
            3
        );
        Assert.All(seconds, s => Assert.Equal(23, s / 3600, 1e-9));
    }

    [Fact]
    public void Walking_on_in_the_dark_goes_at_its_slower_pace()
    {
        // 40 km by DIN 33466 is 10 h; from 12:00 eight by day, the other two at 0.8: two and a half.
        var seconds = SomePlan.Seconds(
            SomePlan.Of(
                """{"mode":"wait","low":240,"likely":240,"high":240},{"mode":"walk","distanceKm":40,"spread":0,"rule":"din33466"}"""
            ),
            SomePlan.Nights,
            3
        );
        Assert.All(seconds, s => Assert.Equal(14.5, s / 3600, 1e-9));
    }

    [Fact]
    public void Unknown_light_is_timed_as_dark()
    {
        var seconds = SomePlan.Seconds(SomePlan.Of("""{"mode":"walk","distanceKm":4,"spread":0,"rule":"din33466"}"""), null, 3);
        Assert.All(seconds, s => Assert.Equal(75, s / 60, 1e-9));
    }

    [Fact]
    public void Where_it_never_gets_light_what_waits_for_light_never_comes()
    {
        var always = Darkness.Of([(Some.At("00:00"), Some.At("00:00") + Duration.FromDays(3))], Some.At("00:00") + Duration.FromDays(3));
        var flight = SomePlan.Of(
            """{"mode":"aircraft","low":10,"likely":20,"high":30,"window":"daylight"}""",
            "\"from\":{\"lat\":80,\"lon\":2},"
        );
        Assert.All(SomePlan.Seconds(flight, always, 3), s => Assert.Equal(double.PositiveInfinity, s));
    }

    [Fact]
    public void A_plan_that_waits_for_light_refuses_to_run_without_it() =>
        Assert.Throws<ArgumentException>(() =>
            CompiledPlan.Of(SomePlan.Of("""{"mode":"walk","distanceKm":4,"dark":"stop"}""", "\"from\":{\"lat\":1,\"lon\":2},"), null)
        );

    [Fact]
    public void Branches_are_taken_as_often_as_they_are_likely()
    {
        var compiled = CompiledPlan.Of(
            SomePlan.Of(
                """{"branches":[{"probability":0.25,"legs":[{"mode":"wait","p10":1,"p90":2}]},{"legs":[{"mode":"wait","p10":50,"p90":60}]}]}"""
            ),
            null
        );
        var simulation = new Simulation(compiled, new Rng(3), SamplingLimits.Exactly(40_000)).Run(TestContext.Current.CancellationToken);
        var taken = simulation.SecondsTo(1).ToArray().Count(s => !double.IsNaN(s));
        Assert.Equal(40_000, taken + simulation.SecondsTo(2).ToArray().Count(s => !double.IsNaN(s)));
        Assert.InRange(taken, 10_000 - (4 * 87), 10_000 + (4 * 87));
    }

    [Fact]
    public void A_written_plan_reads_back_and_forecasts_the_same() =>
        Plan.Sample(
            p =>
            {
                var again = SomePlan.Read(PlanWriter.Write(p).ToString());
                Assert.Equal(SomePlan.Seconds(p, SomePlan.Nights, 50), SomePlan.Seconds(again, SomePlan.Nights, 50));
                Assert.Equal(PlanWriter.Write(p), PlanWriter.Write(again));
            },
            iter: 100
        );

    [Fact]
    public void The_shipped_plan_is_kept_whole_when_written()
    {
        var again = SomePlan.Read(PlanWriter.Write(SomePlan.RidgeHut).ToString());
        Assert.Equal(SomePlan.RidgeHut.All.OfType<Travel>(), again.All.OfType<Travel>());
        Assert.Equal(
            (SomePlan.RidgeHut.From, SomePlan.RidgeHut.TimeZone, SomePlan.RidgeHut.Title),
            (again.From, again.TimeZone, again.Title)
        );
    }
}
