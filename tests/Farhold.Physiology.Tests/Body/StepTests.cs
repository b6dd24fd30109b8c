namespace Farhold.Physiology.Tests.Body;

public class StepTests
{
    /// <summary>The method's order, on a stretch where no curve has a corner: fourth, as near as finite steps show it.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(1)]
    public void The_error_falls_with_the_fourth_power_of_the_step(double step)
    {
        var truth = Bled(step / 8);
        var (whole, half) = (Distance(Bled(step), truth), Distance(Bled(step / 2), truth));
        Assert.InRange(Math.Log2(whole / half), 3.7, 4.5);
    }

    /// <summary>The reference found 1.7e-3 mmHg at 1 s over all rows. At 2 s is where nothing bleeds any more.</summary>
    [Theory]
    [InlineData("R05_tourniquet_blood_conversion", 1, 2e-3)]
    [InlineData("R06_torso_crystalloid", 1, 2e-3)]
    [InlineData("R09_loose_tourniquet_venous", 1, 2e-3)]
    [InlineData("R10_age66_betablock_30pct", 2, 2e-3)]
    [InlineData("R08_cold_25pct_48h", 2, 2e-3)]
    public void Longer_steps_stay_near(string id, double step, double within)
    {
        var course = Courses.All.Single(c => c.Id == id);
        var half = new Dictionary<double, double>();
        course.Run(Models.Current, 60, now => half[now.Time] = now.Vitals().MeanArterialPressure);
        var worst = 0.0;
        course.Run(Models.Current, 60, now => worst = Math.Max(worst, Math.Abs(half[now.Time] - now.Vitals().MeanArterialPressure)), step);
        Assert.InRange(worst, 0, within);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(3.1)]
    [InlineData(double.NaN)]
    public void A_step_that_would_not_be_stable_is_refused(double step) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new CasualtySimulation(Models.Current, new(), step: step));

    private static double[] Bled(double step)
    {
        var simulation = new CasualtySimulation(Models.Current, new() { DepressorStrength = 0 }, step: step)
        {
            Conditions = new()
            {
                Withdrawal = 1,
                NociceptiveBlock = 0.8,
                AirTemperature = 20,
            },
        };
        simulation.Advance((int)(600 / step));
        return simulation.State.ToArray();
    }

    /// <summary>Arteries, veins, limb and the reflexes.</summary>
    private static readonly int[] Smooth = [0, 1, 2, 8, 9, 10];

    private static double Distance(double[] a, double[] b) => Smooth.Max(i => Math.Abs(a[i] - b[i]) / Math.Max(1, Math.Abs(b[i])));
}
