namespace Farhold.App.Parts;

/// <summary>Measured fields in the unit that the carer reads; the record holds °C and kg.</summary>
public static class Scales
{
    public static string Unit(FieldRange range, Preferences preferences) =>
        IsTemperature(range) ? Units.Sign(preferences.Temperature)
        : range == FieldRange.MassKg ? Units.Sign(preferences.Mass)
        : range.Unit;

    public static double Shown(FieldRange range, double value, Preferences preferences) =>
        IsTemperature(range) ? Units.From(value, preferences.Temperature)
        : range == FieldRange.MassKg ? Units.From(value, preferences.Mass)
        : value;

    /// <summary>To hundredths of °C and kg: what was typed comes back the same, and no digits stand that nobody measured.</summary>
    public static double Kept(FieldRange range, double shown, Preferences preferences) =>
        IsTemperature(range) ? Math.Round(Units.ToCelsius(shown, preferences.Temperature), 2)
        : range == FieldRange.MassKg ? Math.Round(Units.ToKilograms(shown, preferences.Mass), 2)
        : shown;

    public static string Text(FieldRange range, double value, int decimals, Preferences preferences, Texts texts) =>
        $"{texts.Number(Math.Round(Shown(range, value, preferences), decimals))} {Unit(range, preferences)}";

    private static bool IsTemperature(FieldRange range) => range == FieldRange.TemperatureC || range == FieldRange.AirC;
}
