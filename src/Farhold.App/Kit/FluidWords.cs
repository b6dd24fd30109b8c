namespace Farhold.App.Kit;

/// <summary>Volumes and rates as ranges, rounded to what can be measured with a cup.</summary>
public static class FluidWords
{
    public static string PerHour(Between mlPerHour, Texts texts) => $"{Range(mlPerHour, 5, texts)} mL";

    /// <summary>Litres in a day, from millilitres in an hour.</summary>
    public static string PerDay(Between mlPerHour, Texts texts) =>
        $"{Pair(texts.Number(Math.Round(mlPerHour.Low * 0.024, 1)), texts.Number(Math.Round(mlPerHour.High * 0.024, 1)), texts)} L";

    public static string Ml(Between millilitres, Texts texts) => $"{Range(millilitres, 1, texts)} mL";

    public static string PerKg(Between mlPerKgHour, Texts texts) =>
        Pair(texts.Number(Math.Round(mlPerKgHour.Low, 1)), texts.Number(Math.Round(mlPerKgHour.High, 1)), texts);

    private static string Range(Between range, double step, Texts texts) =>
        Pair(texts.Number(Math.Round(range.Low / step) * step), texts.Number(Math.Round(range.High / step) * step), texts);

    private static string Pair(string low, string high, Texts texts) => low == high ? low : texts.SpanTo(low, high);
}
