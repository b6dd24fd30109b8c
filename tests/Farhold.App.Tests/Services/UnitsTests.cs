using CsCheck;

namespace Farhold.App.Tests.Services;

public class UnitsTests
{
    [Theory]
    [InlineData(37.0, TemperatureUnit.Celsius, "37.0 °C")]
    [InlineData(37.0, TemperatureUnit.Fahrenheit, "98.6 °F")] // 37 × 9/5 + 32, exact by the definition of the scale
    [InlineData(-40.0, TemperatureUnit.Fahrenheit, "-40.0 °F")]
    public void A_temperature_is_shown_in_the_carers_unit(double celsius, TemperatureUnit unit, string shown) =>
        Assert.Equal(shown, Units.Show(celsius, unit));

    [Fact]
    // international pound, 1959 agreement
    public void A_hundred_pounds_are_45_point_36_kilograms() => Assert.Equal(45.359237, Units.ToKilograms(100, MassUnit.Pound), 12);

    [Fact]
    public void There_and_back_is_the_same() =>
        Gen.Double[-50, 300]
            .Sample(x =>
                Math.Abs(Units.ToCelsius(Units.From(x, TemperatureUnit.Fahrenheit), TemperatureUnit.Fahrenheit) - x) < 1e-9
                && Math.Abs(Units.ToKilograms(Units.From(x, MassUnit.Pound), MassUnit.Pound) - x) < 1e-9
            );
}
