using System.Text.Json;

namespace Farhold.Tests.WayOut;

public class OutlookTests
{
    private static readonly Deadline[] Limits = [new("two-hour-window", Some.At("16:10")), new("six-hour-limit", Some.At("20:10"))];

    private static Simulation Ran(Plan plan, int trials = 8192, Darkness? darkness = null) =>
        new Simulation(CompiledPlan.Of(plan, darkness ?? SomePlan.Nights), new Rng(1), SamplingLimits.Exactly(trials)).Run(
            TestContext.Current.CancellationToken
        );

    // numpy.quantile of [1, 2, 4, 8, 16] by default: definition 7 of Hyndman and Fan 1996, worked by hand.
    [Theory]
    [InlineData(0.5, 4)]
    [InlineData(0.1, 1.4)]
    [InlineData(0.9, 12.8)]
    [InlineData(0, 1)]
    [InlineData(1, 16)]
    public void A_quantile_is_definition_seven(double p, double value) =>
        Assert.Equal(value, QuantileEstimate.Of([1, 2, 4, 8, 16], p).Value, 1e-12);

    [Fact]
    public void A_chance_counted_as_none_or_all_still_has_an_interval()
    {
        Assert.Equal((0.0, 0.0037), (new ProbabilityEstimate(0, 1024).Low, Math.Round(new ProbabilityEstimate(0, 1024).High, 4)));
        Assert.Equal(1.0, new ProbabilityEstimate(1024, 1024).High, 1e-12);
        Assert.True(new ProbabilityEstimate(1024, 1024).Low < 1);
    }

    [Fact]
    public void Shares_of_variance_are_the_exact_ones_where_luck_is_apart()
    {
        // Independent legs: a share is the leg's variance over the sum; pert_checks.csv gives 675, 1828.57 and 50.79 min².
        var plan = SomePlan.Of(
            """{"name":"a","mode":"wait","low":30,"likely":60,"high":180},{"name":"b","mode":"wait","low":60,"likely":120,"high":300},{"name":"c","mode":"wait","low":20,"likely":30,"high":60}""",
            "\"correlation\":0,"
        );
        var drivers = Drivers.Of(Ran(plan, 40_000));
        Assert.Equal(["b: time", "a: time", "c: time"], drivers.Select(d => d.What));
        foreach (var (driver, exact) in drivers.Zip([1828.571429 / 2554.36508, 675 / 2554.36508, 50.79365079 / 2554.36508]))
            Assert.InRange(driver.Share, exact - (4 * driver.StandardError) - 0.004, exact + (4 * driver.StandardError));
        Assert.All(drivers, d => Assert.InRange(d.StandardError, 0, 0.02));
    }

    [Fact]
    public void A_draw_that_changes_nothing_has_no_share()
    {
        var plan = SomePlan.Of(
            """{"mode":"wait","low":30,"likely":60,"high":180},{"all":[{"legs":[{"mode":"wait","low":600,"likely":601,"high":700}]},{"legs":[{"name":"idle","mode":"wait","low":1,"likely":2,"high":3}]}]}""",
            "\"correlation\":0,"
        );
        var idle = Drivers.Of(Ran(plan)).Single(d => d.What.StartsWith("idle", StringComparison.Ordinal));
        Assert.InRange(idle.Share, 0, 4 * idle.StandardError);
    }

    [Fact]
    public void Shared_luck_is_a_driver_of_its_own()
    {
        var drivers = Drivers.Of(Ran(SomePlan.Of("""{"mode":"wait","p10":20,"p90":80},{"mode":"wait","p10":20,"p90":80}""")));
        Assert.Equal("delays that hit all stages together", drivers[0].What);
        Assert.True(drivers.Sum(d => d.Share) <= 1.02);
    }

    [Fact]
    public void The_outlook_holds_ranges_chances_and_legs()
    {
        var outlook = Outlook.Of(Ran(SomePlan.RidgeHut), Limits);
        Assert.Equal(outlook.Quantiles.Select(q => q.At), outlook.Quantiles.Select(q => q.At).Order());
        Assert.All(outlook.Quantiles, q => Assert.True(q.Low <= q.At && q.At <= q.High));
        Assert.True(outlook.Deadlines[0].Before.Value < outlook.Deadlines[1].Before.Value);
        Assert.Equal(10, outlook.Legs.Length);
        var ways = outlook.Legs.Where(l => l.Place.Label is "message out" or "party walks in").ToArray();
        Assert.Equal(["1", "2.2.1"], ways.Select(w => w.Place.Path));
        Assert.All(ways, w => Assert.Equal(1, w.Went.Value));
        Assert.InRange(outlook.Legs.First(l => l.Place.Label == "flight to hospital").Went.Value, 0.68, 0.72);
        Assert.Equal(outlook.ByHour.Select(h => h.Arrived), outlook.ByHour.Select(h => h.Arrived).Order());
        // A ground party of twelve is not counted on beyond ten hours on the move.
        Assert.InRange(outlook.ByHour[^1].Arrived, 0.95, 0.999);
        Assert.Contains(outlook.Rests, r => r.Mark == Evidence.Assumption);
        Assert.NotEmpty(outlook.Cautions);
    }

    [Fact]
    public void Words_put_the_range_first_and_round_outwards()
    {
        var outlook = Outlook.Of(
            Ran(SomePlan.Of("""{"mode":"wait","low":62,"likely":62,"high":62}""")),
            [new("the limit", Some.At("10:00"))]
        );
        var said = ArrivalWords.Sentences(outlook);
        Assert.Equal("Higher care between 09:00 UTC and 09:05 UTC on 4 May in eight of ten trials.", said[0]);
        Assert.Equal("As likely before as after 09:00 UTC on 4 May, about 1 h after setting out.", said[1]);
        Assert.Equal("Before the limit (10:00 UTC on 4 May): more than 99 in 100.", said[2]);
    }

    [Fact]
    public void Words_never_say_never_or_always()
    {
        Assert.Equal("less than 1 in 100", ArrivalWords.Chance(new(0, 5000)));
        Assert.Equal("more than 99 in 100", ArrivalWords.Chance(new(5000, 5000)));
        Assert.Equal("about 5 in 10", ArrivalWords.Chance(new(5000, 10_000)));
        // Wilson's interval of 10 in 20 is 0.299 to 0.701.
        Assert.Equal("between 2 and 8 in 10", ArrivalWords.Chance(new(10, 20)));
        Assert.Equal("about 3 in 100", ArrivalWords.Chance(new(300, 10_000)));
    }

    [Theory]
    [InlineData(3, "3 min")]
    [InlineData(38, "40 min")]
    [InlineData(118, "2 h")]
    [InlineData(200, "3 h 15 min")]
    [InlineData(500, "8 h 30 min")]
    [InlineData(1700, "28 h")]
    public void A_length_is_said_no_finer_than_it_is_known(int minutes, string said) =>
        Assert.Equal(said, ArrivalWords.Length(Duration.FromMinutes(minutes)));

    [Fact]
    public void What_ifs_share_the_luck_of_the_plan()
    {
        var basis = Ran(SomePlan.RidgeHut);
        var asked = WhatIf
            .Usual.Select(w => (Asked: w, Run: w.Start(basis)))
            .Where(w => w.Run is not null)
            .ToDictionary(w => w.Asked.Id, w => WhatIfAnswer.Of(w.Asked, basis, w.Run!.Run(TestContext.Current.CancellationToken), Limits));
        Assert.Equal(
            ["correlation-0", "correlation-1", "dark-stop", "later-start", "more-bearers", "no-aircraft", "weather-0", "weather-0.6"],
            asked.Keys.Order()
        );
        Assert.InRange(asked["later-start"].LaterSeconds.Value, 3600, 5 * 3600);
        Assert.True(asked["no-aircraft"].LaterSeconds.Value > 10 * asked["no-aircraft"].LaterSeconds.StandardError);
        Assert.True(asked["no-aircraft"].Deadlines[1].Difference.Value < 0);
        Assert.True(asked["more-bearers"].LaterSeconds.Value <= 0);
        var outlook = Outlook.Of(basis, Limits);
        Assert.StartsWith("No aircraft comes: about ", ArrivalWords.Sentence(asked["no-aircraft"], outlook), StringComparison.Ordinal);
    }

    [Fact]
    public void A_what_if_that_does_not_apply_answers_nothing()
    {
        var basis = Ran(
            SomePlan.Of(
                """{"branches":[{"probability":0.5,"legs":[{"mode":"walk","low":1,"likely":2,"high":3,"dark":"stop"}]},{"legs":[]}]}""",
                "\"from\":{\"lat\":1,\"lon\":2},"
            ),
            100
        );
        Assert.Null(WhatIf.NoAircraft.Start(basis));
        Assert.Null(WhatIf.MoreBearers(2).Start(basis));
        Assert.Null(WhatIf.HaltInTheDark.Start(basis));
        Assert.NotNull(WhatIf.GoOnInTheDark.Start(basis));
        Assert.Null(WhatIf.NoAircraft.Start(Ran(SomePlan.Of("""{"mode":"aircraft","low":1,"likely":2,"high":3}"""), 100)));
    }

    [Fact]
    public void Json_carries_iso_instants_and_durations()
    {
        var basis = Ran(SomePlan.RidgeHut, 1000);
        var answer = WhatIfAnswer.Of(
            WhatIf.NoAircraft,
            basis,
            WhatIf.NoAircraft.Start(basis)!.Run(TestContext.Current.CancellationToken),
            Limits
        );
        using var json = JsonDocument.Parse(OutlookJson.Write(Outlook.Of(basis, Limits), [answer]).Utf8);
        var root = json.RootElement;
        Assert.Equal("2031-05-04T14:10:00Z", root.GetProperty("start").GetString());
        var median = root.GetProperty("atHigherCare")[3];
        Assert.Equal(0.5, median.GetProperty("p").GetDouble());
        var after = IsoSpan.Read(median.GetProperty("after").GetString()!);
        Assert.Equal(Some.Time(median.GetProperty("at").GetString()!) - Some.Time("2031-05-04T14:10:00Z"), after!.Value, new Near());
        Assert.Equal("six-hour-limit", root.GetProperty("deadlines")[1].GetProperty("id").GetString());
        Assert.Equal("no-aircraft", root.GetProperty("whatIf")[0].GetProperty("id").GetString());
        Assert.Equal("splitmix64:0000000000000001:0", root.GetProperty("generator").GetString());
    }

    private sealed class Near : IEqualityComparer<Duration>
    {
        public bool Equals(Duration x, Duration y) => Math.Abs((x - y).TotalSeconds) <= 1;

        public int GetHashCode(Duration d) => 0;
    }
}
