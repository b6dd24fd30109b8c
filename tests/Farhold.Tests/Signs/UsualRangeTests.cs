namespace Farhold.Tests.Signs;

public class UsualRangeTests
{
    /// <summary>From 16 years on: Royal College of Physicians 2017, NEWS2 chart 1 (clinical.md 3.1).</summary>
    [Theory]
    [InlineData("heartRate", 1)]
    [InlineData("breathRate", 1)]
    [InlineData("systolic", 1)]
    [InlineData("spo2", 1)]
    [InlineData("temperatureC", 0.1)]
    public void Of_a_grown_up_it_is_what_scores_nothing_and_far_is_what_scores_three(string field, double step)
    {
        Func<double, int> score = field switch
        {
            "heartRate" => News2.OfHeartRate,
            "breathRate" => News2.OfRespiratoryRate,
            "systolic" => News2.OfSystolic,
            "spo2" => News2.OfSpo2Scale1,
            _ => News2.OfTemperature,
        };
        var usual = UsualRange.For(field, 34)!;
        Assert.Equal((0, 0), (score(usual.Low), score(usual.High)));
        Assert.InRange(score(usual.Low - step), 1, 3);
        if (field != "spo2")
            Assert.InRange(score(usual.High + step), 1, 3);
        if (usual.FarLow is { } low)
            Assert.True(score(low) == 3 && score(low + step) < 3);
        if (usual.FarHigh is { } high)
            Assert.True(score(high) == 3 && score(high - step) < 3);
    }

    /// <summary>PALS pocket card, 2015/2020 edition, normal awake ranges (clinical.md 2.7, read).</summary>
    [Theory]
    [InlineData("heartRate", 0.5, 100, 180)]
    [InlineData("heartRate", 1, 98, 140)]
    [InlineData("heartRate", 2.99, 98, 140)]
    [InlineData("heartRate", 3, 80, 120)]
    [InlineData("heartRate", 6, 75, 118)]
    [InlineData("heartRate", 12, 60, 100)]
    [InlineData("breathRate", 0, 30, 53)]
    [InlineData("breathRate", 2, 22, 37)]
    [InlineData("breathRate", 5, 20, 28)]
    [InlineData("breathRate", 11, 18, 25)]
    [InlineData("breathRate", 15, 12, 20)]
    [InlineData("systolic", 0.2, 72, 104)]
    [InlineData("systolic", 1, 86, 106)]
    [InlineData("systolic", 4, 89, 112)]
    [InlineData("systolic", 9, 97, 115)]
    [InlineData("systolic", 10, 102, 120)]
    [InlineData("systolic", 14, 110, 131)]
    public void Of_a_child_it_is_the_range_of_those_awake(string field, double years, double low, double high)
    {
        var usual = UsualRange.For(field, years)!;
        Assert.Equal((low, high, "PALS-card"), (usual.Low, usual.High, usual.Source));
    }

    [Fact]
    public void No_age_has_two_and_what_is_not_known_has_none()
    {
        foreach (var field in UsualRange.All.Select(r => r.Field).Distinct())
        {
            var rows = UsualRange.All.Where(r => r.Field == field).OrderBy(r => r.FromYears).ToArray();
            Assert.All(rows.Zip(rows.Skip(1)), pair => Assert.Equal(pair.First.UnderYears, pair.Second.FromYears));
            Assert.Equal(double.PositiveInfinity, rows[^1].UnderYears);
        }

        Assert.Null(UsualRange.For("heartRate", null));
        Assert.Null(UsualRange.For("spo2", 9));
        Assert.Null(UsualRange.For("pain", 34));
    }
}
