namespace Farhold.Tests.Signs;

public class ShockIndexTests
{
    // Classes: Mutschler 2013; index by division.
    [Theory]
    [InlineData(70, 120, 0.58, HaemorrhageClass.I)]
    [InlineData(59, 100, 0.59, HaemorrhageClass.I)]
    [InlineData(66, 110, 0.60, HaemorrhageClass.II)]
    [InlineData(80, 115, 0.70, HaemorrhageClass.II)]
    [InlineData(90, 100, 0.90, HaemorrhageClass.II)]
    [InlineData(99, 100, 0.99, HaemorrhageClass.II)]
    [InlineData(100, 100, 1.00, HaemorrhageClass.III)]
    [InlineData(120, 90, 1.33, HaemorrhageClass.III)]
    [InlineData(126, 90, 1.40, HaemorrhageClass.IV)]
    [InlineData(140, 90, 1.56, HaemorrhageClass.IV)]
    public void Index_and_class_are_as_published(double heartRate, double systolic, double index, HaemorrhageClass its)
    {
        Assert.Equal(index, ShockIndex.Of(heartRate, systolic), 0.005);
        Assert.Equal(its, ShockIndex.ClassOf(ShockIndex.Of(heartRate, systolic)));
    }

    [Fact]
    public void Whole_numbers_on_an_edge_fall_on_its_worse_side()
    {
        for (var systolic = 10; systolic <= 300; systolic += 10)
        {
            Assert.Equal(HaemorrhageClass.II, ShockIndex.ClassOf(ShockIndex.Of(systolic / 10 * 6, systolic)));
            Assert.Equal(HaemorrhageClass.III, ShockIndex.ClassOf(ShockIndex.Of(systolic, systolic)));
            Assert.Equal(HaemorrhageClass.IV, ShockIndex.ClassOf(ShockIndex.Of(systolic / 10 * 14, systolic)));
        }
    }

    [Fact]
    public void Ninety_over_a_hundred_is_not_above_the_outcome_cut_off() => // Kim 2019: above 0.9
        Assert.False(ShockIndex.Of(90, 100) > ShockIndex.OutcomeCutOff);

    [Theory]
    [InlineData(0, 100)]
    [InlineData(100, 0)]
    [InlineData(-1, 100)]
    [InlineData(double.NaN, 100)]
    [InlineData(100, double.PositiveInfinity)]
    public void No_heart_beat_or_no_pressure_has_no_index(double heartRate, double systolic) =>
        Assert.ThrowsAny<ArgumentException>(() => ShockIndex.Of(heartRate, systolic));

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void Nothing_is_not_class_one(double index) => Assert.ThrowsAny<ArgumentException>(() => ShockIndex.ClassOf(index));

    // Acker 2015 (from memory): high above 1.22 at 4–6, 1.0 at 7–12, 0.9 at 13–16 years.
    [Theory]
    [InlineData(3.9, 2.0, Truth.Unknown)]
    [InlineData(4, 1.22, Truth.NotMet)]
    [InlineData(6.9, 1.23, Truth.Met)]
    [InlineData(7, 1.0, Truth.NotMet)]
    [InlineData(12.9, 1.01, Truth.Met)]
    [InlineData(13, 0.9, Truth.NotMet)]
    [InlineData(16.9, 0.91, Truth.Met)]
    [InlineData(17, 2.0, Truth.Unknown)]
    public void A_child_is_judged_by_age_and_only_where_published(double age, double index, Truth high) =>
        Assert.Equal(high, ShockIndex.IsHighForChild(index, age));
}
