namespace Farhold.Tests.WayOut.Ground;

public class GeoPointTests
{
    [Theory]
    [InlineData(90.001, 0)]
    [InlineData(-91, 0)]
    [InlineData(double.NaN, 0)]
    [InlineData(0, 180.5)]
    [InlineData(0, double.NegativeInfinity)]
    public void A_place_off_the_globe_is_a_mistake_of_the_caller(double latitude, double longitude) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new GeoPoint(latitude, longitude));

    [Fact]
    public void The_antimeridian_has_one_name() => Assert.Equal(new GeoPoint(-16.8, -180), new GeoPoint(-16.8, 180));

    [Fact]
    public void Minus_zero_is_zero() => Assert.Equal("0.000000, 0.000000", new GeoPoint(-0.0, -0.0).ToString());
}
