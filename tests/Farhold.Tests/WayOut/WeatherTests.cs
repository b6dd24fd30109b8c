using CsCheck;

namespace Farhold.Tests.WayOut;

/// <summary>One weather for what comes, what is held and which way is open; flights by daylight land by daylight.</summary>
public class WeatherTests
{
    private const string Light = "\"from\":{\"lat\":1,\"lon\":2},";

    private const string TwoFlights =
        """{"first":[{"name":"a","probability":0.4,"legs":[{"mode":"aircraft","low":10,"likely":10,"high":10}]},{"name":"b","probability":0.7,"legs":[{"mode":"aircraft","low":20,"likely":20,"high":20}]}]}""";

    // Bounds: with one weather for all the likelier comes whenever the less likely does, so something comes in 7 of 10; with none in
    // 1 − 0.6 · 0.3 of all. In between it falls as the weather is shared more.
    [Fact]
    public void What_comes_hangs_together_by_the_weather()
    {
        Assert.Equal(0.82, Comes(0), 0.01);
        Assert.Equal(0.7, Comes(1), 0.01);
        Assert.InRange(Comes(0.3), 0.74, 0.8);

        static double Comes(double weather) =>
            SomePlan
                .Seconds(SomePlan.Of(TwoFlights, FormattableString.Invariant($"\"weather\":{weather},")), null, 40_000)
                .Average(s => double.IsFinite(s) ? 1 : 0);
    }

    [Fact]
    public void Each_comes_and_is_held_as_often_as_the_plan_says_however_much_is_shared()
    {
        foreach (var weather in new[] { 0, 0.3, 1 })
        {
            var simulation = new Simulation(
                CompiledPlan.Of(SomePlan.Of(TwoFlights, FormattableString.Invariant($"\"weather\":{weather},")), null),
                new Rng(5),
                SamplingLimits.Exactly(40_000)
            ).Run(TestContext.Current.CancellationToken);
            Assert.Equal(0.4, simulation.SecondsTo(1).ToArray().Average(s => double.IsNaN(s) ? 0 : 1), 0.01);
            Assert.Equal(0.7, simulation.SecondsTo(2).ToArray().Average(s => double.IsNaN(s) ? 0 : 1), 0.01);
        }
    }

    [Fact]
    public void A_message_that_fails_is_no_weather()
    {
        const string phones =
            """{"first":[{"probability":0.5,"legs":[{"mode":"wait","p10":1,"p90":2}]},{"probability":0.5,"legs":[{"mode":"wait","p10":1,"p90":2}]}]}""";
        var comes = SomePlan.Seconds(SomePlan.Of(phones, "\"weather\":1,"), null, 40_000).Average(s => double.IsFinite(s) ? 1 : 0);
        Assert.Equal(0.75, comes, 0.01);
    }

    [Fact]
    public void The_longer_branch_is_taken_in_the_bad_weather_that_also_slows()
    {
        const string ford =
            """{"branches":[{"probability":0.5,"legs":[{"mode":"carry","distanceKm":9,"packaging":false}]},{"legs":[{"mode":"carry","distanceKm":3,"packaging":false}]}]}""";
        var apart = Spread("\"weather\":0,");
        var together = Spread("\"weather\":1,");
        Assert.True(together > apart * 1.05, $"{together} {apart}");

        static double Spread(string weather)
        {
            var sorted = SomePlan.Seconds(SomePlan.Of(ford, weather), null, 20_000);
            Array.Sort(sorted);
            return sorted[18_000] - sorted[2_000];
        }
    }

    [Fact]
    public void More_shared_luck_never_narrows_the_range()
    {
        const string legs =
            """{"mode":"wait","p10":20,"p50":40,"p90":90},{"mode":"carry","distanceKm":3,"packaging":true},{"mode":"vehicle","distanceKm":20}""";
        var widths = new[] { 0, 0.25, 0.5, 0.75, 1 }.Select(rho =>
        {
            var sorted = SomePlan.Seconds(SomePlan.Of(legs, FormattableString.Invariant($"\"correlation\":{rho},")), null, 40_000);
            Array.Sort(sorted);
            return sorted[36_000] - sorted[4_000];
        });
        Assert.All(widths.Zip(widths.Skip(1)), pair => Assert.True(pair.Second >= pair.First * 0.99, $"{pair}"));
    }

    // Dark from 20:00 to 05:00 each night. Ready at 19:00 for 90 min of flight: it would land after dark, so it sets out at 05:00.
    [Fact]
    public void A_flight_by_daylight_lands_by_daylight()
    {
        var seconds = SomePlan.Seconds(
            SomePlan.Of(
                """{"mode":"wait","low":660,"likely":660,"high":660},{"mode":"aircraft","low":90,"likely":90,"high":90,"window":"daylight"}""",
                Light
            ),
            SomePlan.Nights,
            3
        );
        Assert.All(seconds, s => Assert.Equal(22.5, s / 3600, 1e-9));
    }

    [Fact]
    public void A_flight_longer_than_any_day_never_lands_by_daylight()
    {
        var seconds = SomePlan.Seconds(
            SomePlan.Of("""{"mode":"aircraft","low":960,"likely":960,"high":960,"window":"daylight"}""", Light),
            SomePlan.Nights,
            3
        );
        Assert.All(seconds, s => Assert.Equal(double.PositiveInfinity, s));
    }

    [Fact]
    public void None_of_several_ways_need_be_sure()
    {
        var seconds = SomePlan.Seconds(SomePlan.Of(TwoFlights), null, 2000);
        Assert.InRange(seconds.Count(double.IsInfinity), 300, 700);
    }

    // A user's 10, 59 and 60 min: no shifted lognormal passes them, and none of the three gives way.
    [Fact]
    public void Three_times_that_someone_gave_all_hold() =>
        Gen.Select(Gen.Int[1, 400], Gen.Int[0, 400], Gen.Int[0, 400])
            .Sample(
                (low, up, more) =>
                {
                    var seconds = SomePlan.Seconds(
                        SomePlan.Of($$"""{"mode":"wait","p10":{{low}},"p50":{{low + up}},"p90":{{low + up + more}}}"""),
                        null,
                        20_000
                    );
                    Array.Sort(seconds);
                    foreach (var (p, minutes) in new[] { (0.1, low), (0.5, low + up), (0.9, low + up + more) })
                    {
                        var held = QuantileEstimate.Of(seconds, p);
                        var (under, over) = (seconds.Count(s => s < (minutes * 60) - 1), seconds.Count(s => s <= (minutes * 60) + 1));
                        Assert.True(under <= (p + 0.02) * 20_000 && over >= (p - 0.02) * 20_000, $"{p} {minutes} {held.Value / 60}");
                    }
                },
                iter: 30
            );
}
