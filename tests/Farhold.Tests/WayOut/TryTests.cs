using CsCheck;

namespace Farhold.Tests.WayOut;

/// <summary>A message that may fail, a leg that closes and turning back, against sums done by hand; luck is not shared there.</summary>
public class TryTests
{
    private const string Alone = "\"weather\":0,\"correlation\":0,";
    private static readonly Instant Start = Some.At("08:00");

    // Ten or forty minutes, even odds, then what is tried: 20 min, six in ten; the other way takes 100.
    private static string Tried(string mode, string closes) =>
        $$"""
            {"branches":[{"probability":0.5,"legs":[{{Wait(10)}}]},{"legs":[{{Wait(40)}}]}]},
            {"try":{"name":"ford","probability":0.6,"legs":[{{Wait(20, mode)}}]},{{closes}}
             "otherwise":{"name":"bridge","legs":[{{Wait(100)}}]} }
            """;

    // By hand. A wait comes back at once: through at 30 with 0.3, failed at 30 and there at 130 with 0.2, and from 40 it is closed at 50,
    // there at 150. On foot the way back takes as long as out: failed at 30 is back at 50, there at 150; turned at 50 is back at 60, there
    // at 160. Closed at 5 nobody sets out: there at 110 and 140. Never closed: 30 and 60 with 0.3 each, 150 and 180 with 0.2.
    [Theory]
    [InlineData("wait", "\"closes\":50,", 31, 0.3)]
    [InlineData("wait", "\"closes\":50,", 129, 0.3)]
    [InlineData("wait", "\"closes\":50,", 131, 0.5)]
    [InlineData("wait", "\"closes\":50,", 149, 0.5)]
    [InlineData("wait", "\"closes\":50,", 151, 1)]
    [InlineData("walk", "\"closes\":50,", 149, 0.3)]
    [InlineData("walk", "\"closes\":50,", 151, 0.5)]
    [InlineData("walk", "\"closes\":50,", 159, 0.5)]
    [InlineData("walk", "\"closes\":50,", 161, 1)]
    [InlineData("walk", "\"closes\":5,", 109, 0)]
    [InlineData("walk", "\"closes\":5,", 111, 0.5)]
    [InlineData("walk", "\"closes\":5,", 141, 1)]
    [InlineData("walk", "", 61, 0.6)]
    [InlineData("walk", "", 151, 0.8)]
    public void What_is_tried_reaches_care_as_often_as_the_sum_says(string mode, string closes, int limit, double chance) =>
        Assert.Equal(chance, Ran(SomePlan.Of(Tried(mode, closes), Alone)).ChanceBefore(After(limit)).Value, 0.018);

    // By hand: 5 + 60 with 0.7; else 5 in vain, 30 to coverage, 5 and 60.
    [Fact]
    public void A_message_that_fails_sends_somebody_to_coverage()
    {
        var plan = SomePlan.Of(
            $$"""
            {"try":{"name":"message","probability":0.7,"legs":[{{Wait(5)}}]},
             "otherwise":{"name":"runner","legs":[{{Wait(30, "walk")}},{{Wait(5)}}]} },{{Wait(60)}}
            """,
            Alone
        );
        var simulation = Ran(plan);
        Assert.Equal(0.7, simulation.ChanceBefore(After(66)).Value, 0.018);
        Assert.Equal(0, simulation.SecondsToCare.ToArray().Count(s => s is > 3901 and < 5999));
        Assert.Equal(1, simulation.ChanceBefore(After(101)).Value);
        var cases = ByCase.Of(simulation);
        Assert.Equal(["message", "runner"], cases.Ways.Select(w => w.Name));
        Assert.Equal(simulation.Done, cases.Ways.Sum(w => w.Share.Hits) + cases.None.Hits);
        Assert.Equal(0.3, cases.Ways[1].Share.Value, 0.018);
    }

    [Fact]
    public void Without_another_way_nothing_arrives_as_often_as_it_fails_or_is_closed()
    {
        var simulation = Ran(
            SomePlan.Of(
                $$"""{"try":{"name":"slope","probability":0.8,"legs":[{{Wait(60, "walk")}}]},"closes":{"low":30,"likely":60,"high":120} }""",
                Alone
            )
        );
        var open = 1 - new Pert(1800, 3600, 7200, 4).Cdf(3600);
        var cases = ByCase.Of(simulation);
        Assert.Equal(1 - (0.8 * open), cases.None.Value, 0.018);
        Assert.Equal("slope", Assert.Single(cases.Ways).Name);
    }

    [Fact]
    public void What_is_sure_and_never_closes_changes_nothing() =>
        Gen.Select(Gen.Double[0.2, 6], Gen.Int[5, 90], Gen.Double[0, 1], Gen.UInt)
            .Sample(
                (km, minutes, rho, seed) =>
                {
                    var carry = FormattableString.Invariant($$"""{"mode":"carry","distanceKm":{{km}},"ascentM":50}""");
                    var plan = SomePlan.Of(
                        $$"""{"mode":"walk","distanceKm":2},{"try":{"legs":[{{carry}}]},"closes":"P30D","onward":{"legs":[{{carry}},{{Wait(minutes)}}]},"otherwise":{"legs":[{{Wait(5)}}]} }""",
                        FormattableString.Invariant($"\"correlation\":{rho},")
                    );
                    var choice = (Choice)plan.Legs[1];
                    var row = plan with { Legs = [plan.Legs[0], .. choice.Ways[0].Legs, .. choice.Ways[1].Legs] };
                    var sure = Seconds(row, seed);
                    Assert.Equal(sure, Seconds(plan.Closing(choice.Slot, null), seed));
                    // Whoever gives out has not got through within a month.
                    Assert.All(sure.Zip(Seconds(plan, seed)), p => Assert.True(p.First == p.Second || double.IsInfinity(p.First)));
                },
                iter: Gens.Cases(30)
            );

    /// <summary>Who knows sooner that it is closed may be sooner on the other way, so this is of getting through.</summary>
    [Fact]
    public void Closing_earlier_or_a_smaller_chance_never_gets_more_through() =>
        Gen.Select(Gen.Int[10, 300], Gen.Int[0, 120], Gen.Double[0.1, 1], Gen.Double[0, 1], Gen.UInt)
            .Sample(
                (closes, earlier, chance, share, seed) =>
                {
                    var later = Seconds(Slope(closes + earlier, chance), seed);
                    Assert.All(Seconds(Slope(closes, chance), seed).Zip(later), pair => Assert.True(pair.First >= pair.Second));
                    var likelier = Seconds(Slope(closes, chance), seed);
                    Assert.All(Seconds(Slope(closes, share * chance), seed).Zip(likelier), pair => Assert.True(pair.First >= pair.Second));
                },
                iter: Gens.Cases(40)
            );

    [Fact]
    public void Splitting_what_is_tried_changes_nothing()
    {
        const string whole = """{"mode":"carry","distanceKm":2,"ascentM":100,"packaging":false}""";
        const string piece = """{"mode":"carry","distanceKm":0.4,"ascentM":20,"packaging":false}""";
        string Legs(string of) =>
            $$"""{"try":{"probability":0.8,"legs":[{{of}}]},"closes":{"p10":60,"p90":300},"otherwise":{"legs":[{{Wait(100)}}]} }""";
        var (one, five) = (Ran(SomePlan.Of(Legs(whole))), Ran(SomePlan.Of(Legs(string.Join(',', Enumerable.Repeat(piece, 5))))));
        Assert.All(one.SecondsToCare.ToArray().Zip(five.SecondsToCare.ToArray()), pair => Assert.Equal(pair.First, pair.Second, 1e-6));
        Assert.InRange(ByCase.Of(one).Ways[0].Share.Value, 0.1, 0.9);
    }

    [Fact]
    public void Bad_weather_closes_both_of_two_fords_together()
    {
        double Both(double weather)
        {
            var ford = $$"""{"try":{"legs":[{{Wait(10, "walk")}}]},"closes":{"low":5,"likely":60,"high":115} }""";
            return 1
                - ByCase
                    .Of(Ran(SomePlan.Of($"{Wait(50)},{ford},{ford}", FormattableString.Invariant($"\"weather\":{weather},"))))
                    .None.Value;
        }

        Assert.True(Both(0.9) > Both(0) + 0.05);
    }

    [Fact]
    public void A_party_that_is_still_at_it_is_forecast_as_filtering_does()
    {
        var plan = SomePlan.Of(
            $$"""{"try":{"legs":[{"mode":"walk","p10":40,"p90":160}]},"closes":{"low":60,"likely":110,"high":220},"otherwise":{"legs":[{{Wait(10)}}]} }""",
            Alone
        );
        var all = Ran(plan, trials: 200_000);
        var (end, other, care) = (all.SecondsTo(1).ToArray(), all.SecondsTo(2).ToArray(), all.SecondsToCare.ToArray());
        // Closed at c, back at 2c and there 10 min later.
        var filtered = care.Where((at, t) => double.IsNaN(other[t]) ? end[t] > 4800 : (at - 600) / 2 > 4800).Order().ToArray();
        var told = Ran(plan, new([new("1.1.1", StageState.Begun, Start)], After(80)), 20_000).SecondsToCare.ToArray();
        Array.Sort(told);
        foreach (var p in (double[])[0.1, 0.25, 0.5, 0.75, 0.9])
            Assert.Equal(filtered[(int)(p * filtered.Length)], told[(int)(p * told.Length)], 0.03 * filtered[filtered.Length / 2]);
    }

    [Fact]
    public void What_is_known_of_it_decides_it()
    {
        var plan = SomePlan.Of(Tried("walk", "\"closes\":600,"), Alone);
        SoFar Known(params LegMark[] marks) => new([new("1.1.1", StageState.Done, After(10)), .. marks], After(45));
        // Through at 30 is through; the plan ends there.
        Assert.All(Ran(plan, Known(new LegMark("2.1.1", StageState.Done, After(30)))).SecondsToCare.ToArray(), s => Assert.Equal(1800, s));
        // Given up at 40, begun at 10: back at 70, there at 170.
        var given = Known(new("2.1.1", StageState.Begun, After(10)), new("2.1.1", StageState.Failed, After(40)));
        Assert.All(Ran(plan, given).SecondsToCare.ToArray(), s => Assert.Equal(170 * 60, s, 1e-6));
    }

    [Fact]
    public void Stages_to_mark_follow_what_became_of_it()
    {
        var plan = SomePlan.Of(
            $$"""{"try":{"legs":[{{Wait(5)}}]},"onward":{"legs":[{{Wait(6)}}]},"otherwise":{"legs":[{{Wait(7)}}]} },{{Wait(8)}}"""
        );
        Assert.Equal(["1.1.1"], Ahead(plan));
        Assert.Equal(["1.2.1"], Ahead(plan, new Payload.StageNoted("1.1.1", StageState.Done)));
        Assert.Equal(["1.3.1"], Ahead(plan, new Payload.StageNoted("1.1.1", StageState.Failed)));
        Assert.Equal(
            ["2"],
            Ahead(plan, new Payload.StageNoted("1.1.1", StageState.Failed), new Payload.StageNoted("1.3.1", StageState.Done))
        );
        // What is waited for is begun on, or the other way sets out; once it is there, what goes on from it comes next.
        var wait = SomePlan.Of(
            $$"""{"waitFor":{"legs":[{{Wait(5)}}]},"onward":{"legs":[{{Wait(6)}}]},"otherwise":{"legs":[{{Wait(7)}}]} }"""
        );
        Assert.Equal(["1.1.1", "1.3.1"], Ahead(wait));
        Assert.Equal(["1.2.1"], Ahead(wait, new Payload.StageNoted("1.1.1", StageState.Done)));
    }

    /// <summary>What is waited for and then flies on is struck with its flight.</summary>
    [Theory, InlineData("waitFor"), InlineData("try")]
    public void Without_aircraft_nothing_arrives_by_the_flight_onward(string kind)
    {
        var basis = Ran(
            SomePlan.Of(
                $$"""{"{{kind}}":{"name":"message","probability":0.9,"legs":[{{Wait(5)}}]},"onward":{"legs":[{{Wait(20, "aircraft")}}]},"otherwise":{"name":"carry","legs":[{{Wait(100)}}]} }"""
            )
        );
        var without = WhatIf.NoAircraft.Start(basis)!.Run(TestContext.Current.CancellationToken);
        Assert.All(without.SecondsToCare.ToArray(), s => Assert.True(s >= 6000));
    }

    /// <summary>The river waits for nobody: an hour later nobody is through who was not before, and many are not who were.</summary>
    [Fact]
    public void Setting_out_later_does_not_put_off_when_it_closes()
    {
        var basis = Ran(Slope(40, 1));
        var later = WhatIf.LaterStart(Duration.FromHours(1)).Start(basis)!.Run(TestContext.Current.CancellationToken);
        Assert.All(basis.SecondsToCare.ToArray().Zip(later.SecondsToCare.ToArray()), pair => Assert.True(pair.Second >= pair.First + 3599));
        Assert.True(ByCase.Of(later).None.Value > ByCase.Of(basis).None.Value + 0.2);
    }

    [Theory]
    [InlineData("""{"mode":"wait","p10":1,"p90":2,"closes":5}""", "closes")]
    [InlineData(
        """{"waitFor":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"closes":5,"otherwise":{"legs":[{"mode":"wait","p10":1,"p90":2}]}}""",
        "closes"
    )]
    [InlineData("""{"try":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"until":5}""", "until")]
    [InlineData("""{"try":{"legs":[]}}""", "no stage here")]
    [InlineData("""{"try":{"legs":[{"mode":"wait","p10":1,"p90":2}],"probability":1.5}}""", "probability")]
    [InlineData("""{"try":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"closes":{"low":1,"likely":9,"high":2}}""", "high is under likely")]
    [InlineData(
        """{"try":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"closes":{"low":1,"likely":2,"high":3,"p10":1,"p90":2}}""",
        "not as both"
    )]
    [InlineData("""{"try":{"legs":[{"mode":"wait","p10":1,"p90":2}]},"closes":"soon"}""", "span of time")]
    public void What_makes_no_sense_is_refused_where_it_stands(string leg, string reason)
    {
        var refused = Assert.IsType<Read<Plan>.Refused>(SomePlan.Tried(SomePlan.Text(leg))).Refusals;
        var why = Assert.Single(refused, r => r.Reason.Contains(reason, StringComparison.Ordinal));
        Assert.True(why.Line == 1 && why.Column > 40, why.ToString());
    }

    [Fact]
    public void It_is_written_as_it_is_read()
    {
        foreach (
            var closes in (string[])
                ["", "\"closes\":50,", "\"closes\":{\"low\":5,\"likely\":6,\"high\":7},", "\"closes\":{\"p10\":5,\"p90\":7},"]
        )
        {
            var plan = SomePlan.Of(Tried("walk", closes));
            var again = SomePlan.Read(System.Text.Encoding.UTF8.GetString(PlanWriter.Write(plan).Utf8.Span));
            Assert.Equal(PlanWriter.Write(plan), PlanWriter.Write(again));
            Assert.Equal(((Choice)plan.Legs[1]).Closes, ((Choice)again.Legs[1]).Closes);
            Assert.Equal(0.6, ((Choice)again.Legs[1]).Ways[0].Probability);
        }
    }

    private static string Wait(int minutes, string mode = "wait") =>
        FormattableString.Invariant($$"""{"mode":"{{mode}}","low":{{minutes}},"likely":{{minutes}},"high":{{minutes}}}""");

    private static Plan Slope(int closes, double chance) =>
        SomePlan.Of(
            FormattableString.Invariant(
                $$"""{"try":{"probability":{{chance}},"legs":[{"mode":"walk","distanceKm":3}]},"closes":{"low":{{closes}},"likely":{{closes + 30}},"high":{{closes + 90}}} }"""
            )
        );

    private static string[] Ahead(Plan plan, params Payload[] noted) =>
        [
            .. StagesAhead
                .Of(
                    plan,
                    State.Of(noted.Select((p, i) => new Dated(new("d", i + 1), Happened.At(After(i)), After(i), "Ane", p))),
                    After(60)
                )
                .Select(s => s.Path),
        ];

    private static Instant After(int minutes) => Start + Duration.FromMinutes(minutes);

    private static double[] Seconds(Plan plan, uint seed) => SomePlan.Seconds(plan, SomePlan.Nights, 500, seed);

    private static Simulation Ran(Plan plan, SoFar? soFar = null, int trials = 8000) =>
        new Simulation(CompiledPlan.Of(plan, SomePlan.Nights, soFar), new Rng(4), SamplingLimits.Exactly(trials)).Run(
            TestContext.Current.CancellationToken
        );
}
