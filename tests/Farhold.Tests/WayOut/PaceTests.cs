namespace Farhold.Tests.WayOut;

public class PaceTests
{
    private static readonly CheckRow[] Walking = [.. CheckRow.Of("walking_checks.csv")];

    public static TheoryData<int, string> Walks => CheckRow.Theory("walking_checks.csv", _ => true, "method", "variant", "expected_min");

    [Theory, MemberData(nameof(Walks))]
    public void A_rule_gives_the_time_of_its_worked_example(int row, string source)
    {
        var check = Walking[row];
        Assert.True(Math.Abs(Time(check)!.Value.TotalMinutes - check.Number("expected_min")) <= Tolerance(check), source);
    }

    [Fact]
    public void Langmuir_over_totals_is_not_the_sum_over_legs()
    {
        var legs = new[] { new Stretch(4, 600), new Stretch(3, 0, 300), new Stretch(1.2, 0, 300) };
        var summed = legs.Sum(leg => Langmuir.Time(leg).TotalMinutes);
        Assert.Equal(158.4, summed, 1e-9);
        Assert.NotEqual(summed, Langmuir.Time(new Stretch(8.2, 600, 600)).TotalMinutes, 1.0);
    }

    [Fact]
    public void A_stretch_both_up_and_down_is_timed_as_its_two_parts()
    {
        var both = new Stretch(4, 300, 100);
        foreach (
            var rule in new Func<Stretch, Duration>[]
            {
                s => Tobler.Time(s),
                SwissSignpost.Time,
                s => Campbell.Time(s),
                s => Munter.Time(s),
            }
        )
            Assert.Equal((rule(new Stretch(3, 300)) + rule(new Stretch(1, 0, 100))).TotalMinutes, rule(both).TotalMinutes, 1e-6);
    }

    /// <summary>By the last bit of a double the falling part can come out longer than the whole.</summary>
    [Fact]
    public void No_part_of_a_stretch_is_shorter_than_nothing()
    {
        var whole = new Stretch(1.68, 1e-14, 189.8);
        Assert.True(whole.Falling.DistanceKm > whole.DistanceKm);
        Assert.Equal(0, whole.Rising.DistanceKm);
    }

    [Fact]
    public void A_stretch_can_be_written() => Assert.Equal("3.5 200 10.25", new Stretch(3.5, 200, 10.25).ToString());

    [Fact]
    public void Every_rule_is_positive_and_grows_with_distance_at_one_gradient()
    {
        foreach (var rule in PaceRules.All)
        {
            var one = rule.Time(new Stretch(2, 150, 60));
            Assert.InRange(one, Duration.FromMinutes(11), Duration.FromMinutes(90));
            Assert.True(rule.Time(new Stretch(4, 300, 120)) > one, rule.Id);
            Assert.NotEmpty(rule.Source);
        }
    }

    [Fact]
    public void A_faster_decile_is_faster_on_every_slope()
    {
        for (var slope = -30; slope <= 20; slope += 5)
        for (var decile = 20; decile <= 90; decile += 10)
            Assert.True(Campbell.SpeedMs(slope, decile) > Campbell.SpeedMs(slope, decile - 10), $"{slope} degrees, {decile} %");
    }

    [Theory]
    [InlineData(-1, 0, 0)]
    [InlineData(1, double.NaN, 0)]
    [InlineData(1, 0, double.PositiveInfinity)]
    public void A_stretch_is_measured_in_finite_figures_from_zero(double km, double up, double down) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Stretch(km, up, down));

    // Printed to four decimals of a minute, some from slopes rounded to a tenth of a metre.
    private static double Tolerance(CheckRow check) => check["kind"] == "read" ? 0.5 : 2e-3;

    private static Duration? Time(CheckRow check)
    {
        double Given(string key, double otherwise) => check.Parameter("params", key) ?? otherwise;
        var stretch = new Stretch(check.Number("distance_km"), check.Number("ascent_m"), check.Number("descent_m"));
        return check["method"] switch
        {
            "naismith" => Naismith.Time(stretch, Given("flat_kmh", 5)),
            "naismith_equiv_flat" => Scarf.Time(stretch, Given("equivalence", 8), Given("flat_kmh", 5)),
            "naismith_langmuir" when check["variant"].StartsWith("three legs summed", StringComparison.Ordinal) => Langmuir.Time(
                new(4, 600)
            )
                + Langmuir.Time(new(3, 0, 300))
                + Langmuir.Time(new(1.2, 0, 300)),
            "naismith_langmuir" => Langmuir.Time(stretch, Given("flat_kmh", 5)),
            "tobler" => Tobler.Time(stretch, Given("factor", 1)),
            "din33466" => Din33466.Time(stretch),
            "munter" => Munter.Time(stretch, Given("rate", 0)),
            "swiss_polynomial" => SwissSignpost.Time(stretch),
            "campbell2019" => Campbell.Time(stretch, int.Parse(check["variant"].Split(' ')[1])),
            _ => null,
        };
    }
}
