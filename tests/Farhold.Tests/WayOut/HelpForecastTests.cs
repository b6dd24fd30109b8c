using CsCheck;

namespace Farhold.Tests.WayOut;

public class HelpForecastTests
{
    private static Simulation Trials(string legs, int trials = 400, string start = "2031-05-04T11:40:00Z") =>
        new Simulation(
            CompiledPlan.Of(SomePlan.Read($$"""{"id":"p","start":"{{start}}","legs":[{{legs}}]}"""), null),
            new Rng(3),
            SamplingLimits.Exactly(trials)
        ).Run();

    [Fact]
    public void Likely_is_the_middle_and_latest_covers_the_share_asked_for()
    {
        var simulation = Trials("""{"mode":"wait","p10":30,"p50":60,"p90":180}""", 20_000);
        var help = HelpForecast.Of(simulation, 0.9)!;
        Assert.Equal("p", help.Plan);
        Assert.InRange((help.Likely - Some.At("11:40")).TotalMinutes, 57, 64);
        Assert.InRange((help.Earliest!.Value - Some.At("11:40")).TotalMinutes, 28, 33);
        Assert.InRange((help.Latest!.Value - Some.At("11:40")).TotalMinutes, 175, 200);
        Assert.True(HelpForecast.Of(simulation, 0.95)!.Latest > help.Latest);
    }

    [Fact]
    public void Where_the_share_never_comes_there_is_no_latest_time_and_where_half_never_come_no_help()
    {
        // Whoever halts in the dark never gets there in a night without end.
        var endless = Darkness.Of([(Some.At("00:00"), Some.At("00:00") + Duration.FromDays(20))], Some.At("00:00") + Duration.FromDays(20));
        Payload.HelpExpected? Help(double comes) =>
            HelpForecast.Of(
                new Simulation(
                    CompiledPlan.Of(
                        SomePlan.Of(
                            FormattableString.Invariant(
                                $"{{\"branches\":[{{\"probability\":{comes},\"legs\":[{{\"mode\":\"wait\",\"low\":5,\"likely\":6,\"high\":7}}]}},{{\"legs\":[{{\"mode\":\"walk\",\"distanceKm\":3,\"dark\":\"stop\"}}]}}]}}"
                            ),
                            "\"from\":{\"lat\":80,\"lon\":10},"
                        ),
                        endless
                    ),
                    new Rng(1),
                    SamplingLimits.Exactly(400)
                ).Run(),
                0.9
            );
        Assert.NotNull(Help(0.97)!.Latest);
        Assert.Null(Help(0.7)!.Latest);
        Assert.Null(Help(0.3));
    }

    [Fact]
    public void Waiting_is_never_advised_on_help_less_likely_within_soon_than_the_protocol_asks()
    {
        var (waits, others) = (0, 0);
        Gen.Select(Gen.Double[0, 1], Gen.Int[1, 100], Gen.Int[0, 200], Gen.Int[0, 400], Gen.OneOf(0.8, 0.9, 0.99))
            .Sample(
                (fast, low, more, most, asked) =>
                {
                    var slow = FormattableString.Invariant(
                        $"{{\"mode\":\"wait\",\"low\":{low + 60},\"likely\":{low + 60 + more},\"high\":{low + 60 + more + most}}}"
                    );
                    var simulation = Trials(
                        FormattableString.Invariant(
                            $"{{\"branches\":[{{\"probability\":{fast:F3},\"legs\":[{{\"mode\":\"wait\",\"low\":5,\"likely\":15,\"high\":{low + 15}}}]}},{{\"legs\":[{slow}]}}]}}"
                        )
                    );
                    var verdict = Case.Well.With("help", HelpForecast.Of(simulation, asked, HelpCare.Surgery)).Verdict;
                    var soon = (Case.Now + ShippedProtocol.Protocol.Clock.Soon - simulation.Plan.Plan.Start).TotalSeconds;
                    var within = simulation.SecondsToCare.ToArray().Count(s => s <= soon) / (double)simulation.Done;
                    if (verdict == Verdict.AwaitHelp)
                    {
                        Interlocked.Increment(ref waits);
                        Assert.True(within >= asked, $"{within} within soon, {asked} asked");
                    }
                    else
                        Interlocked.Increment(ref others);
                },
                iter: 300
            );
        Assert.True(waits > 20 && others > 20, $"{waits} wait, {others} do not");
    }
}
