namespace Farhold.Tests.Signs;

public class PressuresTests
{
    // Arithmetic of (S + 2D)/3 and S − D, worked by hand.
    [Theory]
    [InlineData(120, 80, 93.3, 40)]
    [InlineData(110, 70, 83.3, 40)]
    [InlineData(100, 60, 73.3, 40)]
    [InlineData(90, 60, 70.0, 30)]
    [InlineData(80, 50, 60.0, 30)]
    [InlineData(70, 40, 50.0, 30)]
    [InlineData(140, 90, 106.7, 50)]
    public void Mean_and_pulse_pressure_are_as_worked_by_hand(double systolic, double diastolic, double mean, double pulse)
    {
        Assert.Equal(mean, Pressures.MeanArterial(systolic, diastolic), 0.05);
        Assert.Equal(pulse, Pressures.PulsePressure(systolic, diastolic));
    }

    [Theory]
    [InlineData(80, 81)]
    [InlineData(0, 0)]
    [InlineData(120, -1)]
    [InlineData(double.NaN, 80)]
    [InlineData(120, double.NaN)]
    [InlineData(double.PositiveInfinity, 80)]
    public void A_pair_that_is_no_pressure_is_refused(double systolic, double diastolic)
    {
        Assert.ThrowsAny<ArgumentException>(() => Pressures.MeanArterial(systolic, diastolic));
        Assert.ThrowsAny<ArgumentException>(() => Pressures.PulsePressure(systolic, diastolic));
        Assert.ThrowsAny<ArgumentException>(() => Pressures.IsNarrow(systolic, diastolic));
    }

    // Cut-offs in use: 30 to 40 mmHg, or 25 % of systolic (from memory).
    [Theory]
    [InlineData(120, 80, Truth.NotMet)]
    [InlineData(120, 81, Truth.Unknown)]
    [InlineData(90, 60, Truth.Unknown)]
    [InlineData(90, 61, Truth.Met)]
    [InlineData(160, 120, Truth.NotMet)]
    [InlineData(160, 121, Truth.Met)]
    public void Between_the_published_cut_offs_narrowness_is_unknown(double systolic, double diastolic, Truth narrow) =>
        Assert.Equal(narrow, Pressures.IsNarrow(systolic, diastolic));
}
