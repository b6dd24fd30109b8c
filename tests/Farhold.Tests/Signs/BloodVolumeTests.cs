namespace Farhold.Tests.Signs;

public class BloodVolumeTests
{
    // Nadler 1962, worked apart from this code.
    [Theory]
    [InlineData(Sex.Male, 1.75, 70, 4.824, 68.9, 724, 1447, 1930)]
    [InlineData(Sex.Male, 1.80, 80, 5.319, 66.5, 798, 1596, 2128)]
    [InlineData(Sex.Male, 1.70, 60, 4.338, 72.3, 651, 1301, 1735)]
    [InlineData(Sex.Male, 1.90, 100, 6.340, 63.4, 951, 1902, 2536)]
    [InlineData(Sex.Female, 1.65, 60, 3.768, 62.8, 565, 1130, 1507)]
    [InlineData(Sex.Female, 1.60, 55, 3.461, 62.9, 519, 1038, 1385)]
    [InlineData(Sex.Female, 1.70, 70, 4.248, 60.7, 637, 1275, 1699)]
    [InlineData(Sex.Female, 1.55, 90, 4.487, 49.9, 673, 1346, 1795)]
    public void Adult_volume_is_as_worked(
        Sex sex, double heightM, double massKg, double litres, double mlPerKg, double ml15, double ml30, double ml40)
    {
        var volume = BloodVolume.Nadler(sex, heightM, massKg);
        Assert.Equal(litres, volume, 0.0006);
        Assert.Equal(mlPerKg, 1000 * volume / massKg, 0.06);
        Assert.Equal(15, BloodVolume.LossPercent(ml15, 1000 * volume), 0.02);
        Assert.Equal(30, BloodVolume.LossPercent(ml30, 1000 * volume), 0.02);
        Assert.Equal(40, BloodVolume.LossPercent(ml40, 1000 * volume), 0.02);
    }

    [Theory]
    [InlineData(175, 70)]
    [InlineData(1.19, 70)]
    [InlineData(double.NaN, 70)]
    [InlineData(1.75, 24)]
    [InlineData(1.75, 351)]
    [InlineData(1.75, double.NaN)]
    public void Centimetres_and_other_slips_are_refused(double heightM, double massKg) =>
        Assert.ThrowsAny<ArgumentException>(() => BloodVolume.Nadler(Sex.Male, heightM, massKg));

    // Sources as named at PerMass.
    [Theory]
    [InlineData(0, null, 80, 90)]
    [InlineData(0.5, null, 75, 80)]
    [InlineData(1, null, 70, 90)]
    [InlineData(11.9, Sex.Male, 70, 90)]
    [InlineData(12, Sex.Male, 70, 75)]
    [InlineData(40, Sex.Female, 60, 65)]
    [InlineData(40, null, 60, 75)]
    public void Volume_per_mass_is_a_range_with_its_source(double age, Sex? sex, double least, double most)
    {
        var range = BloodVolume.PerMass(age, sex);
        Assert.Equal((least, most), (range.LeastMlPerKg, range.MostMlPerKg));
        Assert.NotEmpty(range.Source);
    }

    [Fact]
    public void A_loss_is_classed_over_the_whole_range_of_volumes()
    {
        // 20 kg child, 1400 to 1800 mL: 500 mL is 28 to 36 %, class II to III by ATLS 9.
        var classes = BloodVolume.ClassOfLoss(500, 20, BloodVolume.PerMass(5, null));
        Assert.Equal(new ClassRange(HaemorrhageClass.II, HaemorrhageClass.III), classes);
    }

    [Theory]
    [InlineData(-1, 5000)]
    [InlineData(500, 0)]
    [InlineData(double.NaN, 5000)]
    [InlineData(500, double.NaN)]
    public void A_loss_of_nothing_sensible_is_refused(double lossMl, double volumeMl) =>
        Assert.ThrowsAny<ArgumentException>(() => BloodVolume.LossPercent(lossMl, volumeMl));
}
