using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Between what numbers a sign usually lies in someone awake and well, by age.</summary>
/// <param name="Field">Its name in the record.</param>
/// <param name="FromYears">Ages from here, in years,</param>
/// <param name="UnderYears">up to, not including, this.</param>
/// <param name="Source">Where the range comes from.</param>
/// <remarks>
/// From 16 years what NEWS2 gives no point for (Royal College of Physicians 2017, chart 1). Younger: pediatric advanced life support
/// pocket card, 2015/2020 edition, normal awake ranges; a newborn is taken as an infant, whose range is the narrower (design). Of
/// oxygen and temperature under 16, and of pain, no range was seen, so there is none.
/// </remarks>
public sealed record UsualRange(string Field, double FromYears, double UnderYears, double Low, double High, string Source)
{
    private const double Ever = double.PositiveInfinity;
    private const string Child = "PALS-card";

    /// <summary>Named in the texts of the app and of the score itself; no source of a protocol.</summary>
    private const string Grown = "RCP 2017, NEWS2 chart 1";

    /// <summary>From here on one part of NEWS2 scores 3, which asks for an urgent look (RCP 2017, chart 2). Null: at no value.</summary>
    public double? FarLow { get; private init; }

    public double? FarHigh { get; private init; }

    public static readonly ImmutableArray<UsualRange> All =
    [
        new("heartRate", 0, 1, 100, 180, Child),
        new("heartRate", 1, 3, 98, 140, Child),
        new("heartRate", 3, 6, 80, 120, Child),
        new("heartRate", 6, 12, 75, 118, Child),
        new("heartRate", 12, 16, 60, 100, Child),
        new("heartRate", 16, Ever, 51, 90, Grown) { FarLow = 40, FarHigh = 131 },
        new("breathRate", 0, 1, 30, 53, Child),
        new("breathRate", 1, 3, 22, 37, Child),
        new("breathRate", 3, 6, 20, 28, Child),
        new("breathRate", 6, 12, 18, 25, Child),
        new("breathRate", 12, 16, 12, 20, Child),
        new("breathRate", 16, Ever, 12, 20, Grown) { FarLow = 8, FarHigh = 25 },
        new("systolic", 0, 1, 72, 104, Child),
        new("systolic", 1, 3, 86, 106, Child),
        new("systolic", 3, 6, 89, 112, Child),
        new("systolic", 6, 10, 97, 115, Child),
        new("systolic", 10, 12, 102, 120, Child),
        new("systolic", 12, 16, 110, 131, Child),
        new("systolic", 16, Ever, 111, 219, Grown) { FarLow = 90, FarHigh = 220 },
        new("spo2", 16, Ever, 96, 100, Grown) { FarLow = 91 },
        new("temperatureC", 16, Ever, 36.1, 38.0, Grown) { FarLow = 35.0 },
    ];

    /// <summary>Null where nothing is known of the sign at this age, or the age is not known.</summary>
    public static UsualRange? For(string field, double? ageYears) =>
        ageYears is { } age ? All.FirstOrDefault(r => r.Field == field && age >= r.FromYears && age < r.UnderYears) : null;
}
