namespace Farhold.App.Kit;

/// <summary>Volumes and rates as ranges, rounded to what can be measured with a cup.</summary>
public static class FluidWords
{
    public static string PerHour(Between mlPerHour) => $"{Range(mlPerHour, 5)} mL";

    /// <summary>Litres in a day, from millilitres in an hour.</summary>
    public static string PerDay(Between mlPerHour) => $"{Pair(Say.Number(Math.Round(mlPerHour.Low * 0.024, 1)), Say.Number(Math.Round(mlPerHour.High * 0.024, 1)))} L";

    public static string Ml(Between millilitres) => $"{Range(millilitres, 1)} mL";

    public static string PerKg(Between mlPerKgHour) =>
        Pair(Say.Number(Math.Round(mlPerKgHour.Low, 1)), Say.Number(Math.Round(mlPerKgHour.High, 1)));

    private static string Range(Between range, double step) => Pair(
        Say.Number(Math.Round(range.Low / step) * step), Say.Number(Math.Round(range.High / step) * step));

    private static string Pair(string low, string high) => low == high ? low : $"{low} to {high}";
}
