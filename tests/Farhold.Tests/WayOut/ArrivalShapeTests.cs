namespace Farhold.Tests.WayOut;

public class ArrivalShapeTests
{
    private static Simulation Ran(string legs, string more = "", Darkness? darkness = null) =>
        new Simulation(CompiledPlan.Of(SomePlan.Of(legs, more), darkness), new Rng(1), SamplingLimits.Exactly(20_000)).Run(
            TestContext.Current.CancellationToken
        );

    [Fact]
    public void The_shape_is_the_density_of_the_law()
    {
        // PERT 30, 60, 180: beta with 1.8 and 4.2 (pert_checks.csv); its most likely minute is 60.
        var shape = ArrivalShape.Of(Ran("""{"mode":"wait","low":30,"likely":60,"high":180}"""))!;
        var top = shape.Density.MaxBy(d => d.Weight).At - Some.At("08:00");
        Assert.InRange(top.TotalMinutes, 45, 75);
        var law = new Pert(30, 60, 180);
        var wide = (shape.Density[1].At - shape.Density[0].At).TotalMinutes;
        Assert.All(
            shape.Density,
            d =>
            {
                var at = (d.At - Some.At("08:00")).TotalMinutes;
                var share = law.Cdf(at + (wide / 2)) - law.Cdf(at - (wide / 2));
                Assert.InRange(
                    d.Weight / 20_000,
                    share - (5 * Math.Sqrt(share / 20_000)) - 1e-3,
                    share + (5 * Math.Sqrt(share / 20_000)) + 1e-3
                );
            }
        );
    }

    [Fact]
    public void The_instants_are_one_five_and_nine_of_ten()
    {
        var simulation = Ran("""{"mode":"wait","p10":20,"p90":80}""");
        var (shape, outlook) = (ArrivalShape.Of(simulation)!, Outlook.Of(simulation, []));
        Assert.Equal((outlook.At(0.1).At, outlook.At(0.5).At, outlook.At(0.9).At), (shape.Early, shape.Middle, shape.Late));
    }

    [Fact]
    public void What_one_in_ten_never_reaches_has_no_shape_and_what_is_certain_no_density()
    {
        var endless = Darkness.Of([(Some.At("00:00"), Some.At("00:00") + Duration.FromDays(20))], Some.At("00:00") + Duration.FromDays(20));
        Assert.Null(
            ArrivalShape.Of(
                Ran(
                    """{"branches":[{"probability":0.8,"legs":[{"mode":"wait","p10":20,"p90":80}]},{"legs":[{"mode":"walk","distanceKm":3,"dark":"stop"}]}]}""",
                    "\"from\":{\"lat\":80,\"lon\":10},",
                    endless
                )
            )
        );
        Assert.Empty(ArrivalShape.Of(Ran("""{"mode":"wait","low":30,"likely":30,"high":30}"""))!.Density);
    }

    [Fact]
    public void The_chance_before_an_instant_is_counted_without_the_outlook()
    {
        var simulation = Ran("""{"mode":"wait","p10":20,"p90":80}""");
        var at = Some.At("08:40");
        Assert.Equal(Outlook.Of(simulation, [new("x", at)]).Deadlines[0].Before, simulation.ChanceBefore(at));
    }
}
