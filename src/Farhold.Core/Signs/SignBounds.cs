using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Between what numbers a measured sign is believed without asking back, by age. Both ends are believed.</summary>
/// <param name="Field">Its name in the record.</param>
/// <param name="FromYears">Ages from here, in years,</param>
/// <param name="UnderYears">up to, not including, this.</param>
/// <remarks>
/// The numbers are design: outside them a slip, a probe that slipped off or a mixed-up unit is likelier than the value itself,
/// while what is alarming and possible lies within. What they were chosen beside: heart rate about 28 in trained sleepers, 220 less
/// the age at hardest exertion, up to 300 in an infant's supraventricular tachycardia (all from memory); breathing 30 to 60 at
/// rest in infants (PALS 2006 card, seen second-hand); oximeters are checked against blood down to 70 % (ISO 80601-2-61, from
/// memory); conscious casualties are hardly ever below 28 °C (Swiss stages, ICAR, seen second-hand).
/// </remarks>
public sealed record SignBounds(string Field, double FromYears, double UnderYears, double Low, double High)
{
    private const double Ever = double.PositiveInfinity;

    public static readonly ImmutableArray<SignBounds> All =
    [
        new("heartRate", 0, 1, 30, 300),
        new("heartRate", 1, 12, 30, 250),
        new("heartRate", 12, Ever, 25, 220),
        new("breathRate", 0, 1, 6, 100),
        new("breathRate", 1, 12, 5, 80),
        new("breathRate", 12, Ever, 4, 60),
        new("systolic", 0, 1, 30, 150),
        new("systolic", 1, 12, 35, 180),
        new("systolic", 12, Ever, 40, 280),
        new("diastolic", 0, 12, 10, 130),
        new("diastolic", 12, Ever, 10, 180),
        new("spo2", 0, Ever, 60, 100),
        new("temperatureC", 0, Ever, 28, 43),
        new("capillaryRefillS", 0, Ever, 0, 6),
    ];

    /// <summary>For a casualty of this age; of unknown age, the widest of all.</summary>
    public static Between For(string field, double? ageYears)
    {
        Between? widest = null;
        foreach (var row in All)
            if (row.Field == field && (ageYears is not { } age || (age >= row.FromYears && age < row.UnderYears)))
                widest = widest is { } soFar ? Between.Hull(soFar, new(row.Low, row.High)) : new(row.Low, row.High);
        return widest ?? throw new ArgumentException($"There are no bounds of {field}.", nameof(field));
    }
}
