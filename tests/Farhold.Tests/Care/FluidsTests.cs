namespace Farhold.Tests.Care;

/// <summary>Formulas of prolonged care against published worked examples; each names where it comes from.</summary>
public class FluidsTests
{
    [Theory]
    [InlineData(90, 50, 600)] // rescue handbook, worked example
    [InlineData(100, 30, 500)] // rescue handbook p. 54, worked example
    [InlineData(90, 32, 420)] // JSOM Winter 2025, worked example
    [InlineData(70, 30, 300)] // derived from the rule
    [InlineData(70, 20, 200)]
    [InlineData(80, 40, 400)]
    [InlineData(120, 60, 1000)]
    [InlineData(85, 40, 400)] // part steps are defined nowhere: whole steps, which start lower (design)
    public void The_rule_of_tens_gives_the_published_rates(double mass, double percent, double rate) =>
        Assert.Equal(rate, BurnFluids.RuleOfTensMlPerHour(mass, percent));

    [Theory]
    [InlineData(4, 70, 30, 8400, 525, 262.5)] // Parkland 4 mL (US Army text; arithmetic derived)
    [InlineData(4, 80, 45, 14400, 900, 450)]
    [InlineData(4, 60, 20, 4800, 300, 150)]
    [InlineData(2, 70, 30, 4200, 262.5, 131.25)] // ABLS 2018, from memory
    [InlineData(3, 20, 20, 1200, 75, 37.5)]
    public void Formulas_by_mass_and_surface_give_the_worked_volumes(
        double factor,
        double mass,
        double percent,
        double total,
        double first,
        double later
    )
    {
        var day = BurnFluids.FirstDay(factor, mass, percent);
        Assert.Equal((total, first, later), (day.TotalMl, day.FirstMlPerHour, day.LaterMlPerHour));
    }

    [Theory]
    [InlineData(39.9, 20)]
    [InlineData(70, 101)]
    [InlineData(70, double.NaN)]
    public void What_the_rule_is_not_made_for_is_refused(double mass, double percent) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BurnFluids.RuleOfTensMlPerHour(mass, percent));

    [Theory]
    [InlineData(3, 12)] // Holliday–Segar, textbook examples (derived)
    [InlineData(7, 28)]
    [InlineData(10, 40)]
    [InlineData(15, 50)]
    [InlineData(20, 60)]
    [InlineData(25, 65)]
    [InlineData(30, 70)]
    [InlineData(50, 90)]
    [InlineData(70, 110)]
    [InlineData(85, 125)]
    public void Maintenance_is_four_two_one(double mass, double rate) => Assert.Equal(rate, Intake.MaintenanceMlPerHour(mass));

    [Theory]
    [InlineData(1000, 8 * 60, 20, 41.7)] // arithmetic of the drip formula (derived)
    [InlineData(1000, 8 * 60, 15, 31.3)]
    [InlineData(500, 4 * 60, 20, 41.7)]
    [InlineData(100, 15, 20, 133.3)]
    [InlineData(1000, 12 * 60, 60, 83.3)]
    public void Drops_a_minute_are_as_worked(double millilitres, double minutes, double dropsPerMl, double rate) =>
        Assert.Equal(rate, Drip.DropsPerMinute(millilitres, minutes, dropsPerMl), 0.051);

    /// <summary>Two recipes are in print; the salty one is dangerous (conflict C17 of the sources: the safe one).</summary>
    [Fact]
    public void The_home_mix_is_the_one_with_less_salt() => Assert.Equal((0.25, 3), HomeRehydration.For(0.5));

    [Theory]
    [InlineData(30, 70, KidneyLoad.None, 35, 70)] // JTS nursing guideline: 70 kg, 35 mL/h; in trauma up to 1 mL/kg/h
    [InlineData(30, 70, KidneyLoad.Muscle, 100, 200)] // JTS crush guideline, the lowest of three published
    [InlineData(30, 70, KidneyLoad.Burn, 30, 50)] // rescue handbook
    [InlineData(6, 20, KidneyLoad.Muscle, 40, 80)] // RCEM: double the ordinary, 2 mL/kg/h; upper end design
    [InlineData(9, 29, KidneyLoad.Muscle, 58, 116)] // and no jump at 30 kg
    [InlineData(9, 30, KidneyLoad.Muscle, 60, 120)]
    [InlineData(15, 60, KidneyLoad.Muscle, 100, 200)]
    [InlineData(6, 20, KidneyLoad.None, 20, 20)] // below 30 kg 1 mL/kg/h (from memory)
    [InlineData(0.5, 7, KidneyLoad.None, 7, 14)] // infants up to 2 mL/kg/h (seen second-hand)
    public void Urine_has_the_published_targets(double age, double mass, KidneyLoad load, double low, double high) =>
        Assert.Equal(new Between(low, high), UrineTarget.Of(age, mass, load).MlPerHour);

    [Fact]
    public void A_target_by_mass_is_unknown_without_the_mass() => Assert.Null(UrineTarget.Of(30, null, KidneyLoad.None).MlPerHour);

    [Fact]
    public void Urine_flow_counts_from_the_first_time_the_bladder_was_emptied()
    {
        var state = Case.Well.And("03:00", Urine(400)).And("02:00", Urine(60)).And("01:00", Urine(40)).Record.Readings[0];
        var flow = UrineFlow.Of(state, Case.Now)!;
        Assert.Equal(Between.Exactly(50), flow.MlPerHour);
        Assert.Equal(Between.Exactly(0.5), flow.MlPerKgHour(100));
        Assert.Equal(Truth.Met, UrineTarget.Of(30, 100, KidneyLoad.None).Reached(flow));
        Assert.Equal(Truth.NotMet, UrineTarget.Of(30, 100, KidneyLoad.Muscle).Reached(flow));
    }

    [Fact]
    public void One_measurement_tells_no_flow() =>
        Assert.Null(UrineFlow.Of(Case.Well.And("01:00", Urine(400)).Record.Readings[0], Case.Now));

    [Fact]
    public void A_time_known_as_a_range_makes_the_flow_a_range()
    {
        var state = Case.Well.And(new Happened(Case.Ago("03:00"), Case.Ago("02:00")), Urine(400)).And("01:00", Urine(60)).Record.Readings[
            0
        ];
        Assert.Equal(new Between(30, 60), UrineFlow.Of(state, Case.Now)!.MlPerHour);
    }

    [Fact]
    public void What_may_have_been_given_within_the_hour_counts_in_the_upper_end_only()
    {
        var record = Case
            .Well.And("00:30", new Payload.FluidGiven(Fluid.OralWater, 200, "mouth"))
            .And(new Happened(Case.Ago("01:30"), Case.Ago("00:50")), new Payload.FluidGiven(Fluid.OralWater, 100, "mouth"))
            .And("04:00", new Payload.FluidGiven(Fluid.OralRehydration, 500, "mouth"))
            .Record;
        var sums = FluidBalance.Of(record, Case.Now);
        Assert.Equal(new Between(200, 300), sums[0].InMl);
        Assert.Equal(Between.Exactly(800), sums[^1].InMl);
        Assert.Equal(new(Fluid.OralWater, new(Between.Exactly(300), 2)), FluidSum.All(record, Case.Now)[0]);
    }

    private static Payload.UrineMeasured Urine(double millilitres) => new(millilitres);
}
