namespace Farhold.Tests.Care;

/// <summary>
/// Sources: pulse over 120 and breathing over 30, common practice and JTS-shock; systolic below 90, from 65 below 110, field-triage-2021;
/// below 100 soft, Kim-2019 with design; children by PALS-card; one part of NEWS2 scoring 3, RCP 2017 chart 2; 36 °C, JTS-burn.
/// </summary>
public class SignLimitsTests
{
    private static SignLimits At(FieldRange sign, double? age) => SignLimits.For(sign, age, ShippedRules.Book);

    public static TheoryData<string, double, double?, double?> Limits =>
        new()
        {
            { "heartRate", 34, 40, 120 },
            { "heartRate", 80, 40, 120 },
            { "heartRate", 14, null, 100 },
            { "heartRate", 8, null, 118 },
            { "heartRate", 4, null, 120 },
            { "heartRate", 0.5, null, 180 },
            { "breathRate", 34, 8, 25 },
            { "breathRate", 14, null, 20 },
            { "breathRate", 8, null, 25 },
            { "breathRate", 0.5, null, 53 },
            { "systolic", 34, 100, 220 },
            { "systolic", 70, 110, 220 },
            { "systolic", 10, 100, null },
            { "systolic", 5, 80, null },
            { "systolic", 0.5, 70, null },
            { "spo2", 34, 91, null },
            { "spo2", 8, null, null },
            { "temperatureC", 34, 36, null },
            { "temperatureC", 8, 36, null },
        };

    [Theory]
    [MemberData(nameof(Limits))]
    public void The_nearest_limit_that_one_value_meets_alone_counts(string field, double age, double? low, double? high)
    {
        var limits = At(ChartedSign.All.Single(s => s.Field == field).Range, age);
        Assert.Equal((low, high), (limits.Low, limits.High));
    }

    [Fact]
    public void Without_an_age_nothing_that_hangs_on_it_is_a_limit()
    {
        Assert.All(
            ChartedSign.All.Where(s => s.Field != "temperatureC").Select(s => At(s.Range, null)),
            l => Assert.Equal((null, null, null), (l.Usual, l.Low, l.High))
        );
        Assert.Equal(36, At(FieldRange.TemperatureC, null).Low);
    }

    [Fact]
    public void Every_limit_has_a_source_that_the_rules_or_the_score_name()
    {
        var known = ShippedRules.Book.Protocol.Sources.Keys.Concat(ShippedRules.Book.WarningSigns.Sources.Keys).ToHashSet();
        foreach (var sign in ChartedSign.All)
        foreach (var age in new double?[] { null, 0, 1, 5, 8, 14, 34, 70 })
        {
            var limits = At(sign.Range, age);
            Assert.Equal(limits is { Usual: null, Low: null, High: null }, limits.Sources.IsEmpty);
            Assert.All(limits.Sources, s => Assert.True(known.Contains(s) || s == limits.Usual?.Source, s));
        }
    }

    /// <summary>A value past the limit is a warning: judged alone, with everything else well.</summary>
    [Theory]
    [InlineData(121.0, null)]
    [InlineData(null, 99.0)]
    [InlineData(null, 89.0)]
    public void What_lies_past_a_limit_of_the_protocol_is_a_sign_of_shock(double? rate, double? systolic)
    {
        var state = Case.Well.Signs(s => s with { HeartRate = rate ?? s.HeartRate, Systolic = systolic ?? s.Systolic });
        var judged = Judge.At(state.Record, ShippedRules.Book, Case.Now);
        Assert.Contains(judged.Shock.Signs, f => f.State == Truth.Met);
    }
}
