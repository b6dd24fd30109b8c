using CsCheck;

namespace Farhold.Tests.Kit;

public class BatteryDrainTests
{
    [Fact]
    public void A_steady_drain_lies_within_the_range() =>
        Gen.Select(Gen.Double[0.5, 30], Gen.Double[0.2, 1], Gen.Double[0.4, 6])
            .Sample(
                (percentAnHour, start, hours) =>
                {
                    // levels as a browser tells them: in hundredths, the true one hidden
                    var levels = Enumerable
                        .Range(0, 13)
                        .Select(i => i * hours / 12)
                        .Select(h => (h, True: start - (percentAnHour / 100 * h)))
                        .TakeWhile(l => l.True > 0.03)
                        .Select(l => new BatteryLevel(Case.Now + Duration.FromHours(l.h), Math.Round(l.True, 2)))
                        .ToArray();
                    if (BatteryDrain.HoursLeft(levels) is not { } left)
                        return;
                    var truly = (start - (percentAnHour / 100 * (levels[^1].At - Case.Now).TotalHours)) / (percentAnHour / 100);
                    Assert.InRange(truly, left.Low, left.High + (0.005 / (percentAnHour / 100)) + 1e-6);
                }
            );

    [Fact]
    public void What_came_before_charging_does_not_count() =>
        Assert.Null(BatteryDrain.HoursLeft([Level(0, 0.9), Level(60, 0.5), Level(70, 0.8), Level(80, 0.79)]));

    [Fact]
    public void Without_a_drop_there_is_no_upper_end() =>
        Assert.Equal(double.PositiveInfinity, BatteryDrain.HoursLeft([Level(0, 0.8), Level(60, 0.8)])!.Value.High);

    [Fact]
    public void Ten_hundredths_in_two_hours_leave_ten_to_fourteen_hours() // 0.6 left: 0.59 / 0.055 and 0.6 / 0.045
    {
        var left = BatteryDrain.HoursLeft([Level(0, 0.7), Level(120, 0.6)])!.Value;
        Assert.Equal((10.7, 13.3), (Math.Round(left.Low, 1), Math.Round(left.High, 1)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void One_look_tells_nothing(int looks) =>
        Assert.Null(BatteryDrain.HoursLeft([.. Enumerable.Range(0, looks).Select(i => Level(i, 0.5))]));

    private static BatteryLevel Level(int minute, double level) => new(Case.Now + Duration.FromMinutes(minute), level);
}
