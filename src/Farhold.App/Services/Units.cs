using System.Globalization;

namespace Farhold.App.Services;

/// <summary>Values of the record in the units the carer reads, and back. The record itself holds °C and kg.</summary>
public static class Units
{
    public static string Show(double celsius, TemperatureUnit unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{From(celsius, unit):0.0} {Sign(unit)}");

    public static string Show(double kilograms, MassUnit unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{From(kilograms, unit):0.#} {Sign(unit)}");

    public static double From(double celsius, TemperatureUnit unit) =>
        unit == TemperatureUnit.Fahrenheit ? (celsius * 9 / 5) + 32 : celsius;

    public static double ToCelsius(double shown, TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? (shown - 32) * 5 / 9 : shown;

    public static double From(double kilograms, MassUnit unit) =>
        unit == MassUnit.Pound ? kilograms / BodyMass.KilogramsPerPound : kilograms;

    public static double ToKilograms(double shown, MassUnit unit) => unit == MassUnit.Pound ? shown * BodyMass.KilogramsPerPound : shown;

    public static string Sign(TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? "°F" : "°C";

    public static string Sign(MassUnit unit) => unit == MassUnit.Pound ? "lb" : "kg";
}
