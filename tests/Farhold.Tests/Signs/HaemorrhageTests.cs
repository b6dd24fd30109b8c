using System.Collections.Immutable;

namespace Farhold.Tests.Signs;

/// <summary>
/// Numbers: ATLS 9 as in the European trauma bleeding guideline 2016, table 2. Arrows: ATLS 10 as in the 2019 one, table 3.
/// Ranges are written as least-worst class.
/// </summary>
public class HaemorrhageTests
{
    [Theory]
    [InlineData("0 1-1|14.9 1-1|15 1-2|15.1 2-2|30 2-3|30.1 3-3|39.9 3-3|40 3-4|40.1 4-4|120 4-4", "percent")]
    [InlineData("0 1-1|749 1-1|750 1-2|751 2-2|1500 2-3|1501 3-3|2000 3-4|2001 4-4", "ml")]
    [InlineData("59 1-4|60 1-1|99 1-1|100 2-2|119 2-2|120 2-3|121 3-3|139 3-3|140 3-4|141 4-4", "heart")]
    [InlineData("6 1-4|13 1-4|14 1-1|19 1-1|20 1-2|21 2-2|30 2-3|31 3-3|34 3-3|35 3-4|38 3-4|40 3-4|41 4-4", "breath")]
    [InlineData("31 1-1|30 2-2|20 2-2|19 2-3|16 2-3|15 3-3|6 3-3|5 3-4|4 4-4|0 4-4", "urine")]
    public void Each_number_allows_the_classes_of_the_ninth_edition_table(string expected, string sign)
    {
        Func<double, ClassRange> of = sign switch
        {
            "percent" => Atls9.ByLossPercent,
            "ml" => Atls9.ByLossMl,
            "heart" => Atls9.ByHeartRate,
            "breath" => Atls9.ByRespiratoryRate,
            _ => Atls9.ByUrineMlPerHour,
        };
        foreach (var w in expected.Split('|').Select(c => c.Split(' ', '-')))
            Assert.True(Range(w[1] + w[2]) == of(double.Parse(w[0])), $"{sign} {w[0]} gave {of(double.Parse(w[0]))}");
    }

    [Fact]
    public void More_loss_never_allows_a_better_class()
    {
        var last = Atls9.ByLossPercent(0);
        for (var tenths = 1; tenths <= 600; tenths++)
        {
            var next = Atls9.ByLossPercent(tenths / 10.0);
            Assert.True(next.Least >= last.Least && next.Worst >= last.Worst);
            last = next;
        }
    }

    [Fact]
    public void Pressure_pulse_pressure_and_mind_allow_their_rows()
    {
        Assert.Equal(Range("12"), Atls9.BySystolic(90, 90));
        Assert.Equal(Range("34"), Atls9.BySystolic(89, 90));
        Assert.Equal(Range("24"), Atls9.ByPulsePressure(Truth.Met));
        Assert.Equal(Range("11"), Atls9.ByPulsePressure(Truth.NotMet));
        Assert.Equal(Range("14"), Atls9.ByPulsePressure(Truth.Unknown));
        Assert.Equal(Range("12"), Atls9.ByMental(Mental.Alert));
        Assert.Equal(Range("34"), Atls9.ByMental(Mental.Confused));
        Assert.Equal(Range("44"), Atls9.ByMental(Mental.Voice));
    }

    [Theory]
    [InlineData("0 11|14.9 11|15 22|30 22|30.5 23|31 33|39.9 33|40 34|40.1 44", "percent")]
    [InlineData("1 14|0 11|-1.9 11|-2 12|-2.1 22|-6 23|-6.1 33|-9.9 33|-10 44|-12 44", "base")]
    public void Each_number_allows_the_classes_of_the_tenth_edition_table(string expected, string sign)
    {
        Func<double, ClassRange> of = sign == "percent" ? Atls10.ByLossPercent : Atls10.ByBaseDeficit;
        foreach (var w in expected.Split('|').Select(c => c.Split(' ')))
            Assert.True(Range(w[1]) == of(double.Parse(w[0])), $"{sign} {w[0]} gave {of(double.Parse(w[0]))}");
    }

    // Order: unknown, far down, down, unchanged, up, far up.
    [Theory]
    [InlineData("heart", "14 14 14 12 24 44")]
    [InlineData("pressure", "14 34 34 13 14 14")]
    [InlineData("pulse", "14 24 24 11 14 14")]
    [InlineData("breath", "14 14 14 13 34 34")]
    [InlineData("urine", "14 44 33 12 14 14")]
    [InlineData("glasgow", "14 34 34 12 14 14")]
    public void Each_arrow_allows_the_classes_of_the_tenth_edition_table(string sign, string expected)
    {
        Func<SignChange, ClassRange> of = sign switch
        {
            "heart" => Atls10.ByHeartRate,
            "pressure" => Atls10.ByPressure,
            "pulse" => Atls10.ByPulsePressure,
            "breath" => Atls10.ByRespiratoryRate,
            "urine" => Atls10.ByUrine,
            _ => Atls10.ByGlasgow,
        };
        Assert.Equal(expected.Split(' ').Select(Range), Enum.GetValues<SignChange>().Select(of));
    }

    [Fact]
    public void Signs_that_disagree_widen_the_range()
    {
        Assert.Equal(Range("14"), ClassRange.Span([Range("11"), Range("34")]));
        Assert.Equal(Range("23"), ClassRange.Span([Range("23"), Range("22")]));
        Assert.Equal(ClassRange.Any, ClassRange.Span(ImmutableArray<ClassRange>.Empty));
        Assert.Equal(ClassRange.Any, ClassRange.Span(default));
        Assert.True(Range("23").Includes(HaemorrhageClass.II) && !Range("23").Includes(HaemorrhageClass.IV));
    }

    [Fact]
    public void What_is_no_number_or_no_range_is_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => Atls9.ByHeartRate(double.NaN));
        Assert.ThrowsAny<ArgumentException>(() => Atls9.ByLossPercent(-1));
        Assert.ThrowsAny<ArgumentException>(() => Atls10.ByLossPercent(-1));
        Assert.ThrowsAny<ArgumentException>(() => Atls10.ByBaseDeficit(double.NaN));
        Assert.ThrowsAny<ArgumentException>(() => new ClassRange(HaemorrhageClass.III, HaemorrhageClass.II));
        Assert.ThrowsAny<ArgumentException>(() => new ClassRange(default, HaemorrhageClass.II));
    }

    private static ClassRange Range(string leastWorst) =>
        new((HaemorrhageClass)(leastWorst[0] - '0'), (HaemorrhageClass)(leastWorst[1] - '0'));
}
