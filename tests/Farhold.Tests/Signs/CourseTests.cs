namespace Farhold.Tests.Signs;

public class CourseTests
{
    /// <summary>
    /// Each figure: how often noise of one kind, with no trend in it, was called rising or falling in 4,000 seeded runs.
    /// The interval is the figure ± four of its standard errors, so that a change of the rule shows and chance does not.
    /// </summary>
    [Theory]
    [MemberData(nameof(Noises))]
    public void False_alarms_are_as_rare_as_stated(string noise, int readings, double smallestChange, double least, double most)
    {
        var share = Share(4000, noise, readings, smallestChange);
        TestContext.Current.TestOutputHelper?.WriteLine($"{noise} {readings} {smallestChange}: {share}");
        Assert.InRange(share, least, most);
    }

    public static TheoryData<string, int, double, double, double> Noises =>
        new()
        {
            { "independent", 6, 0, 0, 0.0049 }, // 0.20 %
            { "independent", 6, 10, 0, 0.003 }, // 0.10 %
            { "independent", 8, 0, 0.0002, 0.0088 }, // 0.45 %
            { "independent", 8, 10, 0, 0.0065 }, // 0.30 %
            { "independent", 12, 0, 0.002, 0.013 }, // 0.75 %
            { "independent", 12, 10, 0.0006, 0.0099 }, // 0.53 %
            { "independent", 24, 0, 0.0017, 0.0123 }, // 0.70 %
            { "independent", 24, 10, 0, 0.0053 }, // 0.22 %
            { "independent", 48, 0, 0.0023, 0.0137 }, // 0.80 %
            { "independent", 48, 10, 0, 0.001 }, // 0.00 %
            { "whole-numbers", 6, 0, 0, 0.001 }, // 0.00 %
            { "whole-numbers", 8, 0, 0, 0.0013 }, // 0.03 %
            { "whole-numbers", 12, 0, 0, 0.001 }, // 0.00 %
            { "whole-numbers", 24, 0, 0, 0.0013 }, // 0.03 %
            { "heavy-tails", 6, 0, 0, 0.0073 }, // 0.35 %
            { "heavy-tails", 8, 0, 0.0008, 0.0102 }, // 0.55 %
            { "heavy-tails", 12, 0, 0.0006, 0.0099 }, // 0.53 %
            { "heavy-tails", 24, 0, 0.0037, 0.0163 }, // 1.00 %
            { "uneven-times", 6, 0, 0, 0.0065 }, // 0.30 %
            { "uneven-times", 8, 0, 0.0006, 0.0099 }, // 0.53 %
            { "uneven-times", 12, 0, 0.0011, 0.0109 }, // 0.60 %
            { "uneven-times", 24, 0, 0.0002, 0.0088 }, // 0.45 %
            { "repeats-0.3", 6, 0, 0.0009, 0.0106 }, // 0.57 %
            { "repeats-0.3", 8, 0, 0.0078, 0.0237 }, // 1.57 %
            { "repeats-0.3", 12, 0, 0.0095, 0.0265 }, // 1.80 %
            { "repeats-0.3", 24, 0, 0.0147, 0.0343 }, // 2.45 %
            { "repeats-0.6", 6, 0, 0.0097, 0.0268 }, // 1.82 %
            { "repeats-0.6", 6, 10, 0.006, 0.0205 }, // 1.32 %
            { "repeats-0.6", 8, 0, 0.0359, 0.0636 }, // 4.98 %
            { "repeats-0.6", 8, 10, 0.0248, 0.0487 }, // 3.67 %
            { "repeats-0.6", 12, 0, 0.0487, 0.0798 }, // 6.42 %
            { "repeats-0.6", 12, 10, 0.0333, 0.0602 }, // 4.67 %
            { "repeats-0.6", 24, 0, 0.0414, 0.0706 }, // 5.60 %
            { "repeats-0.6", 24, 10, 0.0231, 0.0464 }, // 3.48 %
            { "repeats-0.6", 48, 0, 0.0256, 0.0499 }, // 3.77 %
            { "repeats-0.6", 48, 10, 0.0095, 0.0265 }, // 1.80 %
            { "looks", 24, 0, 0.0349, 0.0621 }, // 4.85 %
            { "looks", 24, 10, 0.0179, 0.0391 }, // 2.85 %
        };

    [Fact]
    public void Few_readings_say_nothing()
    {
        Assert.Equal(SignCourse.TooFew, Course.Of([], 0));
        Assert.Equal(SignCourse.TooFew, Course.Of([(0, 120), (1, 110), (2, 100), (3, 90), (4, 80)], 15));
        Assert.Equal(SignCourse.TooFew, Course.Of([.. Enumerable.Repeat((1.0, 80.0), 9)], 0));
    }

    [Theory]
    [InlineData("120 119 117 113 107 98 86", SignCourse.Falling)] // an invented casualty losing ground ever faster
    [InlineData("80 86 92 98 104 110", SignCourse.Rising)]
    [InlineData("120 118 116 114 112 110 108", SignCourse.NoneShown)] // a sure slope, but 12 mmHg is within what cuffs differ
    [InlineData("120 90 125 88 122 91 119", SignCourse.NoneShown)]
    [InlineData("96 96 96 96 96 96 96", SignCourse.NoneShown)]
    public void A_sure_change_of_some_size_is_told_and_no_other(string values, SignCourse course) =>
        Assert.Equal(course, Course.Of([.. values.Split(' ').Select((v, i) => (i * 0.5, double.Parse(v)))], SmallestChange.Systolic));

    [Fact]
    public void One_wild_reading_neither_makes_nor_hides_a_course()
    {
        (double, double)[] steady = [.. Enumerable.Range(0, 12).Select(i => (i * 0.5, i == 7 ? 40.0 : 118 + (i % 3)))];
        Assert.Equal(SignCourse.NoneShown, Course.Of(steady, SmallestChange.Systolic));
        (double, double)[] falling = [.. Enumerable.Range(0, 12).Select(i => (i * 0.5, i == 7 ? 180.0 : 118 - (3.0 * i)))];
        Assert.Equal(SignCourse.Falling, Course.Of(falling, SmallestChange.Systolic));
    }

    /// <summary>
    /// A fall of 40 mmHg in readings that scatter by 5 (standard deviation), 1,000 seeded runs; figure ± four standard
    /// errors.
    /// </summary>
    [Theory]
    [InlineData(6, 0.3999, 0.5261)] // 46.3 %
    [InlineData(8, 0.8702, 0.9438)] // 90.7 %
    [InlineData(12, 0.9696, 1)] // 98.5 %
    [InlineData(24, 0.996, 1)] // 100.0 %
    public void A_true_fall_is_found_as_often_as_stated(int readings, double least, double most)
    {
        var random = new Random(readings);
        var found = Enumerable
            .Range(0, 1000)
            .Count(_ =>
                Course.Of(
                    [.. Enumerable.Range(0, readings).Select(i => (i * 0.5, 120 - (40.0 * i / (readings - 1)) + (5 * Normal(random))))],
                    SmallestChange.Systolic
                ) == SignCourse.Falling
            );
        TestContext.Current.TestOutputHelper?.WriteLine($"{readings}: {found / 1000.0}");
        Assert.InRange(found / 1000.0, least, most);
    }

    [Fact]
    public void A_negative_smallest_change_is_refused() => Assert.ThrowsAny<ArgumentException>(() => Course.Of([], -1));

    private static double Share(int runs, string noise, int readings, double smallestChange)
    {
        var random = new Random(20310504);
        return Enumerable
                .Range(0, runs)
                .Count(_ =>
                {
                    var series = Series(random, noise, readings);
                    return noise == "looks"
                        ? Enumerable.Range(6, readings - 5).Any(n => Alarm(series[..n], smallestChange))
                        : Alarm(series, smallestChange);
                }) / (double)runs;
    }

    private static bool Alarm((double, double)[] series, double smallestChange) =>
        Course.Of(series, smallestChange) is SignCourse.Rising or SignCourse.Falling;

    // Standard deviation 5 except for whole numbers; half-hourly except for uneven times.
    private static (double, double)[] Series(Random random, string noise, int readings)
    {
        var drift = Normal(random);
        return
        [
            .. Enumerable
                .Range(0, readings)
                .Select(i =>
                {
                    var fresh = Normal(random);
                    var repeat = noise is "repeats-0.3" ? 0.3 : 0.6;
                    drift = i == 0 ? drift : (repeat * drift) + (Math.Sqrt(1 - (repeat * repeat)) * fresh);
                    return noise switch
                    {
                        "whole-numbers" => (i * 0.5, Math.Round(16 + (1.5 * fresh))),
                        "repeats-0.3" or "repeats-0.6" => (i * 0.5, 90 + (5 * drift)),
                        "uneven-times" => ((i * 0.5) + (0.45 * random.NextDouble()), 90 + (5 * fresh)),
                        "heavy-tails" => (i * 0.5, 90 + (5 * fresh / Math.Max(0.2, Math.Abs(Normal(random))))),
                        _ => (i * 0.5, 90 + (5 * fresh)),
                    };
                }),
        ];
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
