namespace Farhold.Tests.Signs;

public class AgeLimitsTests
{
    // PALS definition of hypotension, worked: 60 to 28 days, 70 to a year, 70 + 2 × age to 10 years, then 90.
    [Theory]
    [InlineData(0, 60)]
    [InlineData(0.07, 60)]
    [InlineData(0.08, 70)]
    [InlineData(0.99, 70)]
    [InlineData(1, 72)]
    [InlineData(2, 74)]
    [InlineData(3, 76)]
    [InlineData(5, 80)]
    [InlineData(7, 84)]
    [InlineData(9, 88)]
    [InlineData(10, 90)]
    [InlineData(10.1, 90)]
    [InlineData(15, 90)]
    public void Hypotension_begins_where_published(double age, double systolic) =>
        Assert.Equal(systolic, AgeLimits.For(age)!.SystolicLower, 1e-9);

    // PALS card, 2015/2020 edition: heart rate low, high, breath rate low, high.
    [Theory]
    [InlineData(0.5, 100, 180, 30, 53)]
    [InlineData(1.5, 98, 140, 22, 37)]
    [InlineData(4, 80, 120, 20, 28)]
    [InlineData(8, 75, 118, 18, 25)]
    [InlineData(11, 75, 118, 18, 25)]
    [InlineData(14, 60, 100, 12, 20)]
    public void Inside_a_band_the_limits_are_those_of_the_card(
        double age, double heartLow, double heart, double breathLow, double breath)
    {
        var limits = AgeLimits.For(age)!;
        Assert.Equal((heartLow, heart), (limits.HeartRateLower, limits.HeartRateUpper));
        Assert.Equal((breathLow, breath), (limits.RespiratoryRateLower, limits.RespiratoryRateUpper));
    }

    [Fact]
    public void A_newborn_takes_the_infants_breath_rate_for_want_of_its_own() =>
        Assert.Equal((205, 53), (AgeLimits.For(0)!.HeartRateUpper, AgeLimits.For(0)!.RespiratoryRateUpper));

    [Theory]
    [InlineData(0.08, 180, 53)] // between newborn and one month
    [InlineData(1, 140, 37)] // 12 months is in two bands
    [InlineData(2, 140, 37)]
    [InlineData(2.5, 120, 28)] // between toddler and preschool
    [InlineData(5.5, 118, 25)]
    [InlineData(9.5, 118, 25)]
    [InlineData(12, 100, 20)] // in two bands
    [InlineData(15.9, 100, 20)] // beyond the card, below 16
    public void On_edges_and_in_gaps_the_narrower_limits_count(double age, double heart, double breath)
    {
        var limits = AgeLimits.For(age)!;
        Assert.Equal((heart, breath), (limits.HeartRateUpper, limits.RespiratoryRateUpper));
    }

    [Fact]
    public void Every_age_below_sixteen_has_limits_that_leave_room_between_them()
    {
        for (var days = 0; days < 16 * 365; days++)
        {
            var limits = AgeLimits.For(days / 365.25);
            Assert.NotNull(limits);
            Assert.True(limits.HeartRateLower < limits.HeartRateUpper && limits.RespiratoryRateLower < limits.RespiratoryRateUpper);
        }
    }

    [Fact]
    public void Adults_are_left_to_the_protocol() => Assert.Null(AgeLimits.For(16));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void No_age_has_no_limits(double age) => Assert.ThrowsAny<ArgumentException>(() => AgeLimits.For(age));
}
