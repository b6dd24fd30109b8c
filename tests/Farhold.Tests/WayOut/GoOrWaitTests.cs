namespace Farhold.Tests.WayOut;

/// <summary>Go or wait, against sums done by hand for plans with few outcomes; weather and luck are not shared there.</summary>
public class GoOrWaitTests
{
    private const string Alone = "\"weather\":0,\"correlation\":0,";
    private static readonly Instant Start = Some.At("08:00");

    // A helicopter is here after 30, 60 or 120 min in three, three and two of ten, else never; flight on 20 min. A carry takes 150.
    private static string Waiting(string until) =>
        $$"""
            {"waitFor":{"name":"helicopter","probability":1,"legs":[{"branches":[
              {"probability":0.3,"legs":[{"mode":"wait","low":30,"likely":30,"high":30}]},
              {"probability":0.3,"legs":[{"mode":"wait","low":60,"likely":60,"high":60}]},
              {"probability":0.2,"legs":[{"mode":"wait","low":120,"likely":120,"high":120}]},
              {"legs":[{"mode":"wait","low":30000,"likely":30000,"high":30000}]}]}]},
             {{until}}
             "onward":{"legs":[{"mode":"aircraft","low":20,"likely":20,"high":20}]},
             "otherwise":{"name":"carry","legs":[{"mode":"wait","low":150,"likely":150,"high":150}]} }
            """;

    // Worked by hand. Care before 220 min: going at once 1; waiting to 30: 0.3 + 0.7 · (180 < 220) = 1; to 60: 1 (60 + 150 = 210); to 120:
    // 0.8 + 0.2 · (270 < 220) = 0.8; for ever 0.8. Before 100 min: at once 0; to 30: 0.3; from 60 on: 0.6.
    [Theory]
    [InlineData(0, 220, 1)]
    [InlineData(30, 220, 1)]
    [InlineData(60, 220, 1)]
    [InlineData(120, 220, 0.8)]
    [InlineData(0, 100, 0)]
    [InlineData(30, 100, 0.3)]
    [InlineData(60, 100, 0.6)]
    [InlineData(200, 100, 0.6)]
    public void A_wait_reaches_care_as_often_as_the_sum_says(int until, int limit, double chance)
    {
        var simulation = Ran(Waiting($"\"until\":{until},"));
        Assert.Equal(chance, simulation.ChanceBefore(Start + Duration.FromMinutes(limit)).Value, 0.018);
    }

    [Fact]
    public void The_search_finds_the_wait_that_the_sums_say_is_best()
    {
        // Before 185 min: going at once or waiting to 30 or 35: 1 (35 + 150 = 185 is not before); any wait from 35 to 60: 0.3; to 60 and
        // on: 0.6; from 120: 0.8. The shortest of the best is no wait at all.
        Assert.Equal(Duration.Zero, Search(185).Best.Wait);
        // Before 100 min: 0 at once, 0.3 from 30, 0.6 from 60 on: the shortest of the best is one hour.
        var hundred = Search(100);
        Assert.Equal(Duration.FromMinutes(60), hundred.Best.Wait);
        Assert.Equal(0.6, hundred.Best.Before!.Value.Value, 0.018);
        Assert.Equal(0, hundred.GoNow.Before!.Value.Value);
        Assert.Equal(0.6, hundred.WaitOn.Before!.Value.Value, 0.018);
        // Waiting on is as good, so nothing is claimed.
        Assert.False(hundred.Matters);
        // Before 215: to 60 min 1; 65 to 119: 0.6; from 120: 0.8. Going at once is 1 too.
        Assert.Equal(1, Search(215).Best.Before!.Value.Value);
    }

    // Care before 225 with a carry of 150 that only begins to be possible after an hour: at once 0.3 + ... by hand: with a ford of 60 min
    // first the carry takes 210, so to be before 225 it must begin by 15; waiting to 60 gives 0.6, on to 120 gives 0.8.
    [Fact]
    public void A_decision_that_matters_is_said_with_its_time()
    {
        const string plan = """
            {"waitFor":{"name":"helicopter","probability":0.9,"legs":[{"branches":[
              {"probability":0.5,"legs":[{"mode":"wait","low":30,"likely":30,"high":30}]},
              {"legs":[{"mode":"wait","low":240,"likely":240,"high":240}]}]}]},
             "onward":{"legs":[{"mode":"aircraft","low":20,"likely":20,"high":20}]},
             "otherwise":{"name":"carry","legs":[{"branches":[
              {"probability":0.6,"legs":[{"mode":"wait","low":100,"likely":100,"high":100}]},
              {"legs":[{"mode":"wait","low":400,"likely":400,"high":400}]}]}]} }
            """;
        // By hand, before 150 min: at once 0.6; to 30: 0.45 + 0.55 · 0.6 = 0.78; beyond 50 the carry is too late: 0.45.
        var basis = Ran(plan);
        var limit = new Deadline("left leg", Start + Duration.FromMinutes(150));
        var found = DecisionTime.Of(basis, limit, TestContext.Current.CancellationToken)!;
        Assert.Equal(Duration.FromMinutes(30), found.Best.Wait);
        Assert.Equal(0.78, found.Best.Before!.Value.Value, 0.018);
        Assert.Equal(0.6, found.GoNow.Before!.Value.Value, 0.018);
        Assert.Equal(0.45, found.WaitOn.Before!.Value.Value, 0.018);
        Assert.True(found.Matters);
        Assert.Equal(
            "Wait for helicopter until 08:30 UTC on 4 May. Not there by then: carry.",
            DecisionWords.Of(found, ArrivalClock.Of(basis.Plan.Plan))[0]
        );
    }

    [Fact]
    public void Side_by_side_the_shares_are_those_of_the_sums_and_add_up()
    {
        // Plan A: 60 or 180 min, even odds. Plan B: 120 always. Plan C: B again, never apart from it.
        var a =
            """{"branches":[{"probability":0.5,"legs":[{"mode":"wait","low":60,"likely":60,"high":60}]},{"legs":[{"mode":"wait","low":180,"likely":180,"high":180}]}]}""";
        var b = """{"mode":"wait","low":120,"likely":120,"high":120}""";
        var plans = SideBySide.Aligned([SomePlan.Of(a, Alone), SomePlan.Of(b, Alone), SomePlan.Of(b, Alone)]);
        var limit = new Deadline("limit", Start + Duration.FromMinutes(100));
        var side = SideBySide.Of([.. plans.Select(p => Of(p))], [limit]);
        Assert.Equal(0.5, side.Plans[0].Earliest.Value, 0.018);
        Assert.Equal((0, 0), (side.Plans[1].Earliest.Hits, side.Plans[2].Earliest.Hits));
        Assert.Equal(side.Plans[0].Earliest.Trials, side.Plans.Sum(p => p.Earliest.Hits) + side.Same.Hits + side.None.Hits);
        Assert.Equal(0.5, side.Plans[0].Deadlines[0].Before.Value, 0.018);
        Assert.Equal(0, side.Plans[1].Deadlines[0].Before.Value);
        Assert.InRange(side.Plans[1].LaterSeconds.Value, -160, 160);
        Assert.Equal(0.5, side.Plans[1].EarlierThanFirst!.Value.Value, 0.018);
        Assert.Throws<ArgumentException>(() => SideBySide.Aligned([SomePlan.Of(b)]));
    }

    [Fact]
    public void Plans_that_share_a_stage_share_its_luck()
    {
        const string call = """{"name":"call","mode":"wait","p10":10,"p90":90}""";
        var plans = SideBySide.Aligned([
            SomePlan.Of(call),
            SomePlan.Of($$"""{"name":"rest","mode":"wait","low":5,"likely":5,"high":5},{{call}}"""),
        ]);
        var ran = plans.Select(p => Of(p, 200).SecondsToCare.ToArray()).ToArray();
        Assert.All(ran[0].Zip(ran[1]), pair => Assert.Equal(pair.First + 300, pair.Second, 1e-6));
    }

    [Fact]
    public void The_shares_of_the_winners_and_of_none_add_to_one()
    {
        var simulation = Of(
            SomePlan.Of(
                """{"first":[{"name":"a","probability":0.5,"legs":[{"mode":"aircraft","p10":20,"p90":90}]},{"name":"b","probability":0.6,"legs":[{"mode":"walk","distanceKm":4}]}]},{"mode":"vehicle","distanceKm":9}"""
            )
        );
        var cases = ByCase.Of(simulation);
        Assert.Equal(simulation.Done, cases.Ways.Sum(w => w.Share.Hits) + cases.None.Hits);
        Assert.Equal(["a", "b"], cases.Ways.Select(w => w.Name));
        Assert.InRange(cases.None.Value, 0.1, 0.3);
        Assert.Equal(10, CaseWords.Tens([1, 1, 1, 400, 399]).Sum());
        Assert.Equal([5, 5, 0], CaseWords.Tens([50, 49, 1]));
    }

    [Fact]
    public void A_wait_counts_by_whether_it_was_in_time()
    {
        var cases = ByCase.Of(Ran(Waiting("\"until\":60,")));
        Assert.Equal(["helicopter", "carry"], cases.Ways.Select(w => w.Name));
        Assert.Equal(0.6, cases.Ways[0].Share.Value, 0.018);
        Assert.Equal(0.4, cases.Ways[1].Share.Value, 0.018);
    }

    [Fact]
    public void Two_bearers_over_forty_kilometres_are_not_feasible_and_the_reason_is_said()
    {
        var outlook = Outlook.Of(Of(SomePlan.Of("""{"mode":"carry","distanceKm":30,"bearers":2}""")), []);
        var said = ArrivalWords.Sentences(outlook);
        Assert.Contains(said, s => s.StartsWith("Not feasible: carry 30 km: 2 bearers would carry for", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("without relief", StringComparison.Ordinal));
    }

    [Fact]
    public void Between_two_humps_no_middle_is_said()
    {
        var outlook = Outlook.Of(
            Of(
                SomePlan.Of(
                    """{"first":[{"name":"helicopter","probability":0.5,"legs":[{"mode":"aircraft","low":50,"likely":60,"high":70}]},{"name":"team","legs":[{"mode":"wait","low":600,"likely":660,"high":720}]}]}"""
                )
            ),
            []
        );
        Assert.True(outlook.MiddleIsVoid);
        var said = ArrivalWords.Arrival(outlook);
        Assert.Matches("^In 5 of 10 helicopter: between 08:50 UTC and 09:05 UTC on 4 May; in 5 of 10 team: between 1", said[0]);
        Assert.DoesNotContain(said, s => s.Contains("As likely before", StringComparison.Ordinal));
    }

    private static DecisionTime Search(int limit) =>
        DecisionTime.Of(
            Ran(Waiting("")),
            new Deadline("limit", Start + Duration.FromMinutes(limit)),
            TestContext.Current.CancellationToken
        )!;

    private static Simulation Ran(string legs) => Of(SomePlan.Of(legs, Alone));

    private static Simulation Of(Plan plan, int trials = 8000) =>
        new Simulation(CompiledPlan.Of(plan, SomePlan.Nights), new Rng(4), SamplingLimits.Exactly(trials)).Run(
            TestContext.Current.CancellationToken
        );
}
