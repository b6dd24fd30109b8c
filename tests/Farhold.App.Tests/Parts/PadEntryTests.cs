using CsCheck;

namespace Farhold.App.Tests.Parts;

public class PadEntryTests
{
    private static readonly PadEntry HeartRate = new("", 20, 250, 0);
    private static readonly PadEntry Temperature = new("", 20, 45, 1);

    [Theory]
    [InlineData("118", 118.0)]
    [InlineData("72", 72.0)]
    [InlineData("019", null)]
    [InlineData("", null)]
    [InlineData("999", null)]
    public void Typed_digits_are_the_number_if_it_is_possible(string keys, double? expected) =>
        Assert.Equal(expected, Typed(HeartRate, keys).Value);

    [Fact]
    public void A_number_on_its_way_is_not_yet_out_of_range() => Assert.False(Typed(HeartRate, "1").OutOfRange);

    [Fact]
    public void A_number_too_high_is_out_of_range() => Assert.True(Typed(HeartRate, "251").OutOfRange);

    [Theory]
    [InlineData("-45.12345", -45.12345)]
    [InlineData("45-.5", -45.5)]
    [InlineData("-45-", 45.0)]
    [InlineData("-05", -5.0)]
    [InlineData("-.5", -0.5)]
    [InlineData("-91", null)]
    public void A_minus_turns_the_sign_where_the_range_goes_below_zero(string keys, double? expected) =>
        Assert.Equal(expected, Typed(new("", -90, 90, 5), keys).Value);

    [Fact]
    public void A_minus_is_no_key_where_the_range_does_not() => Assert.Equal("72", Typed(HeartRate, "-72").Digits);

    [Fact]
    public void There_is_room_for_the_longest_number_of_the_range() =>
        Assert.Equal(-179.12345, Typed(new("", -180, 180, 5), "-179.12345").Value);

    [Fact]
    public void Only_as_many_decimals_are_taken_as_are_meant() => Assert.Equal("36.5", Typed(Temperature, "36.57").Digits);

    [Fact]
    public void A_point_comes_once_and_only_where_decimals_are_meant()
    {
        Assert.Equal("36.5", Typed(Temperature, "36..5").Digits);
        Assert.Equal("365", Typed(HeartRate, "36.5").Digits);
    }

    [Fact]
    public void Whatever_is_typed_and_deleted_the_value_is_null_or_within_the_range() =>
        Gen.Char["0123456789.<"]
            .Array.Sample(keys =>
            {
                var entry = Temperature;
                foreach (var key in keys)
                    entry = key == '<' ? entry.Back() : entry.Press(key);
                return entry.Value is null or (>= 20 and <= 45);
            });

    private static PadEntry Typed(PadEntry entry, string keys) => keys.Aggregate(entry, (e, key) => e.Press(key));
}
