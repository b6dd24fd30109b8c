using CsCheck;

namespace Farhold.Tests.Signs;

/// <summary>Source of every number: Royal College of Physicians 2017, NEWS2, charts 1 and 2; totals summed by hand.</summary>
public class News2Tests
{
    private static readonly Instant Now = Some.At("12:00");
    private static readonly Duration Fresh = Duration.FromHours(1);

    [Theory]
    [InlineData("0-8:3 9-11:1 12-20:0 21-24:2 25-80:3", "breath")]
    [InlineData("0-91:3 92-93:2 94-95:1 96-100:0", "spo2-1")]
    [InlineData("0-83:3 84-85:2 86-87:1 88-100:0", "spo2-2-air")]
    [InlineData("0-83:3 84-85:2 86-87:1 88-92:0 93-94:1 95-96:2 97-100:3", "spo2-2-oxygen")]
    [InlineData("0-90:3 91-100:2 101-110:1 111-219:0 220-300:3", "systolic")]
    [InlineData("0-40:3 41-50:1 51-90:0 91-110:1 111-130:2 131-250:3", "heart")]
    public void Every_whole_number_scores_as_its_cell_of_the_chart(string chart, string part)
    {
        Func<double, int> score = part switch
        {
            "breath" => News2.OfRespiratoryRate,
            "spo2-1" => News2.OfSpo2Scale1,
            "spo2-2-air" => percent => News2.OfSpo2Scale2(percent, onOxygen: false),
            "spo2-2-oxygen" => percent => News2.OfSpo2Scale2(percent, onOxygen: true),
            "systolic" => News2.OfSystolic,
            _ => News2.OfHeartRate,
        };
        foreach (var cell in chart.Split(' ').Select(c => c.Split('-', ':').Select(int.Parse).ToArray()))
            for (var value = cell[0]; value <= cell[1]; value++)
                Assert.True(cell[2] == score(value), $"{part} {value} scored {score(value)}, not {cell[2]}");
    }

    [Theory]
    [InlineData(250, 350, 3)]
    [InlineData(351, 360, 1)]
    [InlineData(361, 380, 0)]
    [InlineData(381, 390, 1)]
    [InlineData(391, 450, 2)]
    public void Every_tenth_of_a_degree_scores_as_its_cell_of_the_chart(int fromTenths, int toTenths, int score)
    {
        for (var tenths = fromTenths; tenths <= toTenths; tenths++)
            Assert.Equal(score, News2.OfTemperature(tenths / 10.0));
    }

    [Theory]
    [InlineData(Mental.Alert, 0)]
    [InlineData(Mental.Confused, 3)]
    [InlineData(Mental.Voice, 3)]
    [InlineData(Mental.Pain, 3)]
    [InlineData(Mental.Unresponsive, 3)]
    public void Anything_but_alert_scores_three(Mental mental, int score) => Assert.Equal(score, News2.OfMental(mental));

    [Fact]
    public void Oxygen_scores_two() => Assert.Equal((2, 0), (News2.OfOxygen(true), News2.OfOxygen(false)));

    [Fact]
    public void Between_two_bands_the_higher_score_wins()
    {
        Worse(News2.OfRespiratoryRate, 8, 11, 20, 24);
        Worse(News2.OfSpo2Scale1, 91, 93, 95);
        Worse(percent => News2.OfSpo2Scale2(percent, onOxygen: true), 83, 85, 87, 92, 94, 96);
        Worse(News2.OfSystolic, 90, 100, 110, 219);
        Worse(News2.OfHeartRate, 40, 50, 90, 110, 130);
        Assert.Equal(3, News2.OfTemperature(35.05));
        Assert.Equal(1, News2.OfTemperature(36.05));
        Assert.Equal(1, News2.OfTemperature(38.05));
        Assert.Equal(2, News2.OfTemperature(39.05));

        static void Worse(Func<double, int> score, params int[] lastOfBand)
        {
            foreach (var last in lastOfBand)
                Assert.Equal(Math.Max(score(last), score(last + 1)), score(last + 0.5));
        }
    }

    [Theory]
    [InlineData(1, "16 97 air 124 72 A 36.8", "0000000", 0, News2Risk.Low)]
    [InlineData(1, "18 98 air 118 96 A 36.4", "0000100", 1, News2Risk.Low)]
    [InlineData(1, "25 97 air 124 80 A 37.0", "3000000", 3, News2Risk.LowMedium)]
    [InlineData(1, "12 96 air 220 50 A 36.1", "0003100", 4, News2Risk.LowMedium)]
    [InlineData(1, "21 94 air 111 91 A 38.1", "2100101", 5, News2Risk.Medium)]
    [InlineData(1, "22 95 O2 105 112 A 37.9", "2121200", 8, News2Risk.High)]
    [InlineData(1, "24 96 air 92 124 C 35.8", "2002231", 10, News2Risk.High)]
    [InlineData(1, "8 91 O2 90 131 U 35.0", "3323333", 20, News2Risk.High)]
    [InlineData(2, "18 90 air 120 80 A 37", "0000000", 0, News2Risk.Low)]
    [InlineData(2, "18 95 air 120 80 A 37", "0000000", 0, News2Risk.Low)]
    [InlineData(2, "18 95 O2 120 80 A 37", "0220000", 4, News2Risk.Low)]
    [InlineData(2, "18 97 O2 120 80 A 37", "0320000", 5, News2Risk.Medium)]
    public void Worked_examples_come_out(int scale, string signs, string parts, int total, News2Risk risk)
    {
        var result = News2.Score(Signs(signs), (News2Scale)scale, Now, Fresh);
        Assert.Equal(parts, string.Concat(result.Parts.Select(p => p.Score.Min)));
        Assert.All(result.Parts, p => Assert.True(p.Score.IsExact && p.Knowledge == Knowledge.Fresh));
        Assert.Equal(ScoreBounds.Exactly(total), result.Total);
        Assert.Equal(Kleene.Of(parts.Contains('3')), result.SingleThree);
        Assert.Equal((risk, risk), (result.LeastRisk, result.WorstRisk));
        Assert.Empty(result.Unknown);
    }

    [Theory] // chart 2
    [InlineData(0, false, News2Risk.Low)]
    [InlineData(4, false, News2Risk.Low)]
    [InlineData(3, true, News2Risk.LowMedium)]
    [InlineData(5, false, News2Risk.Medium)]
    [InlineData(6, true, News2Risk.Medium)]
    [InlineData(7, false, News2Risk.High)]
    [InlineData(20, true, News2Risk.High)]
    public void Risk_follows_the_total_and_a_single_three(int total, bool three, News2Risk risk) =>
        Assert.Equal(risk, News2Result.RiskOf(total, three));

    [Fact]
    public void Nothing_known_is_anything_from_nought_to_twenty()
    {
        var result = News2.Score(new(), News2Scale.One, Now, Fresh);
        Assert.Equal(new ScoreBounds(0, 20), result.Total);
        Assert.Equal(Truth.Unknown, result.SingleThree);
        Assert.Equal((News2Risk.Low, News2Risk.High), (result.LeastRisk, result.WorstRisk));
        Assert.Equal(Enum.GetValues<News2PartName>(), result.Unknown);
    }

    [Fact]
    public void A_three_already_seen_stands_whatever_is_missing()
    {
        var result = News2.Score(new() { RespiratoryRate = At(30, "11:30") }, News2Scale.One, Now, Fresh);
        Assert.Equal((Truth.Met, News2Risk.LowMedium), (result.SingleThree, result.LeastRisk));
    }

    [Fact]
    public void A_value_too_old_or_yet_to_come_is_not_used_and_is_named()
    {
        var signs = Signs("16 97 air 124 72 A 36.8");
        var old = News2.Score(signs with { Systolic = At(124, "10:59") }, News2Scale.One, Now, Fresh);
        Assert.Equal((new ScoreBounds(0, 3), Knowledge.Stale), (old.Parts[3].Score, old.Parts[3].Knowledge));
        Assert.Equal([News2PartName.Systolic], old.Unknown);

        Assert.Empty(News2.Score(signs with { Systolic = At(124, "11:00") }, News2Scale.One, Now, Fresh).Unknown);
        Assert.Single(News2.Score(signs with { Systolic = At(124, "12:01") }, News2Scale.One, Now, Fresh).Unknown);

        var between = new Seen<double>(124, new Happened(Some.At("10:30"), Some.At("11:30")));
        Assert.Single(News2.Score(signs with { Systolic = between }, News2Scale.One, Now, Fresh).Unknown);
    }

    [Fact]
    public void On_scale_two_not_knowing_about_oxygen_leaves_a_high_saturation_open()
    {
        var signs = Signs("18 97 air 120 80 A 37") with { OnOxygen = null };
        var result = News2.Score(signs, News2Scale.Two, Now, Fresh);
        Assert.Equal((new ScoreBounds(0, 3), Knowledge.Fresh), (result.Parts[1].Score, result.Parts[1].Knowledge));
        Assert.Equal(new ScoreBounds(0, 5), result.Total);
    }

    [Fact]
    public void The_bounds_hold_every_completion_of_what_is_missing() =>
        Gen.Select(Whole, Gen.Int[0, 127], Whole)
            .Sample(
                (actual, missing, other) =>
                {
                    foreach (var scale in Enum.GetValues<News2Scale>())
                    {
                        var partial = News2.Score(Without(actual, missing), scale, Now, Fresh);
                        foreach (var completed in new[] { actual, Completed(actual, missing, other) })
                        {
                            var whole = News2.Score(completed, scale, Now, Fresh);
                            Assert.InRange(whole.Total.Min, partial.Total.Min, partial.Total.Max);
                            Assert.InRange(whole.LeastRisk, partial.LeastRisk, partial.WorstRisk);
                            Assert.True(partial.SingleThree is Truth.Unknown || partial.SingleThree == whole.SingleThree);
                        }

                        Assert.Equal(int.PopCount(missing), partial.Unknown.Count());
                    }
                }
            );

    [Fact]
    public void Both_ends_of_the_bounds_can_be_reached() =>
        Gen.Select(Whole, Gen.Int[0, 127])
            .Sample(
                (actual, missing) =>
                {
                    foreach (var scale in Enum.GetValues<News2Scale>())
                    {
                        var partial = News2.Score(Without(actual, missing), scale, Now, Fresh);
                        var totals = Extremes(scale).Select(e => News2.Score(Completed(actual, missing, e), scale, Now, Fresh).Total.Min);
                        Assert.Equal((partial.Total.Min, partial.Total.Max), (totals.Min(), totals.Max()));
                    }
                }
            );

    [Theory]
    [InlineData(15.9, Truth.NotMet)]
    [InlineData(16.0, Truth.Met)]
    [InlineData(null, Truth.Unknown)]
    public void Below_sixteen_the_score_is_not_valid(double? age, Truth valid) =>
        Assert.Equal(valid, News2Caution.For(age, Sex.Male, Truth.Unknown, 200).Valid);

    [Theory]
    [InlineData(Sex.Female, Truth.Met, 200.0, Truth.NotMet)]
    [InlineData(Sex.Female, Truth.Unknown, 200.0, Truth.Unknown)]
    [InlineData(null, Truth.NotMet, 200.0, Truth.Met)]
    [InlineData(Sex.Male, Truth.Unknown, 1500.0, Truth.NotMet)]
    [InlineData(Sex.Male, Truth.Unknown, 1499.0, Truth.Met)]
    [InlineData(Sex.Male, Truth.Unknown, null, Truth.Unknown)]
    public void Pregnancy_and_height_make_it_invalid_and_silence_makes_it_doubtful(
        Sex? sex,
        Truth pregnant,
        double? altitudeM,
        Truth valid
    ) => Assert.Equal(valid, News2Caution.For(40, sex, pregnant, altitudeM).Valid);

    [Fact]
    public void A_number_that_is_none_is_refused_and_not_scored() =>
        Assert.ThrowsAny<ArgumentException>(() => News2.OfTemperature(double.NaN));

    private static readonly Gen<News2Signs> Whole = Gen.Select(
            Gen.Int[4, 40],
            Gen.Int[75, 100],
            Gen.Bool,
            Gen.Int[60, 240],
            Gen.Int[30, 160],
            Gen.Enum<Mental>(),
            Gen.Int[330, 410]
        )
        .Select(
            (breath, spo2, oxygen, systolic, heart, mental, tenths) =>
                new News2Signs
                {
                    RespiratoryRate = At<double>(breath, "11:30"),
                    Spo2 = At<double>(spo2, "11:30"),
                    OnOxygen = At(oxygen, "11:30"),
                    Systolic = At<double>(systolic, "11:30"),
                    HeartRate = At<double>(heart, "11:30"),
                    Mental = At(mental, "11:30"),
                    TemperatureC = At(tenths / 10.0, "11:30"),
                }
        );

    // The best and the worst of every part, with the saturation that scores nothing on air and on oxygen.
    private static IEnumerable<News2Signs> Extremes(News2Scale scale)
    {
        yield return Signs(scale == News2Scale.One ? "16 98 air 120 70 A 37" : "16 90 air 120 70 A 37");
        yield return Signs("8 80 O2 90 131 U 35");
    }

    private static News2Signs Without(News2Signs s, int missing) => Completed(s, missing, new());

    private static News2Signs Completed(News2Signs s, int missing, News2Signs from) =>
        new()
        {
            RespiratoryRate = (missing & 1) == 0 ? s.RespiratoryRate : from.RespiratoryRate,
            Spo2 = (missing & 2) == 0 ? s.Spo2 : from.Spo2,
            OnOxygen = (missing & 4) == 0 ? s.OnOxygen : from.OnOxygen,
            Systolic = (missing & 8) == 0 ? s.Systolic : from.Systolic,
            HeartRate = (missing & 16) == 0 ? s.HeartRate : from.HeartRate,
            Mental = (missing & 32) == 0 ? s.Mental : from.Mental,
            TemperatureC = (missing & 64) == 0 ? s.TemperatureC : from.TemperatureC,
        };

    private static News2Signs Signs(string text)
    {
        var w = text.Split(' ');
        return new()
        {
            RespiratoryRate = At(double.Parse(w[0]), "11:30"),
            Spo2 = At(double.Parse(w[1]), "11:30"),
            OnOxygen = At(w[2] == "O2", "11:30"),
            Systolic = At(double.Parse(w[3]), "11:30"),
            HeartRate = At(double.Parse(w[4]), "11:30"),
            Mental = At((Mental)"ACVPU".IndexOf(w[5], StringComparison.Ordinal), "11:30"),
            TemperatureC = At(double.Parse(w[6]), "11:30"),
        };
    }

    private static Seen<T> At<T>(T value, string time) => new(value, Happened.At(Some.At(time)));

    private static Seen<double> At(int value, string time) => At((double)value, time);
}
