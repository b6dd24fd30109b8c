using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>A sign of the record: its field, its name and unit in words, and how to read it.</summary>
/// <param name="Field">Its name in the record.</param>
/// <param name="Named">See <see cref="Name"/>.</param>
/// <param name="Unit">Empty where there is none.</param>
/// <param name="Number">Null where it is a word.</param>
/// <param name="Text">The value in words, with its unit; null where the entry does not tell of it.</param>
/// <param name="SmallestChange">Null: no course is told.</param>
public sealed record SignKind(
    string Field,
    Func<string> Named,
    string Unit,
    Func<Payload.SignsTaken, double?> Number,
    Func<Payload.SignsTaken, string?> Text,
    double? SmallestChange = null
)
{
    /// <summary>In the order in which they are told.</summary>
    public static readonly ImmutableArray<SignKind> All =
    [
        Measured("heartRate", () => HandOverTexts.HeartRate, "/min", s => s.HeartRate, Farhold.Signs.SmallestChange.HeartRate),
        Measured(
            "breathRate",
            () => HandOverTexts.BreathingRate,
            "/min",
            s => s.RespiratoryRate,
            Farhold.Signs.SmallestChange.RespiratoryRate
        ),
        new("systolic", () => HandOverTexts.Systolic, "mmHg", s => s.Systolic, Pressure, Farhold.Signs.SmallestChange.Systolic),
        Measured("diastolic", () => HandOverTexts.Diastolic, "mmHg", s => s.Diastolic, Farhold.Signs.SmallestChange.Diastolic),
        Measured("spo2", () => HandOverTexts.Saturation, "%", s => s.Spo2, Farhold.Signs.SmallestChange.Spo2),
        Word("onOxygen", () => HandOverTexts.OnOxygen, s => Flag(s.OnOxygen)),
        Measured("temperatureC", () => HandOverTexts.Temperature, "°C", s => s.TemperatureC, Farhold.Signs.SmallestChange.TemperatureC),
        Word(
            "mental",
            () => HandOverTexts.Mental,
            s =>
                s.Mental switch
                {
                    null => null,
                    Mental.Voice => HandOverTexts.MentalVoice,
                    Mental.Pain => HandOverTexts.MentalPain,
                    { } m => Say.Word(m),
                }
        ),
        Word(
            "gcs",
            () => HandOverTexts.ComaScale,
            s => s.Gcs is { } g ? HandOverTexts.ComaParts(Part(g.Eye), Part(g.Verbal), Part(g.Motor)) : null
        ),
        Word("radialPulse", () => HandOverTexts.PulseAtWrist, s => s.RadialPulse is { } r ? Say.Word(r) : null),
        Measured("capillaryRefillS", () => HandOverTexts.Refill, "s", s => s.CapillaryRefillS, null),
        Word("dizzy", () => HandOverTexts.Dizzy, s => Flag(s.Dizzy)),
        Word("pale", () => HandOverTexts.Pale, s => Flag(s.Pale)),
        Word("cool", () => HandOverTexts.SkinCool, s => Flag(s.Cool)),
        Word("clammy", () => HandOverTexts.SkinClammy, s => Flag(s.Clammy)),
        new("pain", () => HandOverTexts.Pain, "of 10", s => s.Pain, s => s.Pain is { } p ? HandOverTexts.PainOf10(Say.Number(p)) : null),
    ];

    /// <summary>In words: <c>heart rate</c>.</summary>
    public string Name => Named();

    private static SignKind Measured(
        string field,
        Func<string> name,
        string unit,
        Func<Payload.SignsTaken, double?> number,
        double? smallest
    ) => new(field, name, unit, number, s => number(s) is { } n ? $"{Say.Number(n)} {unit}" : null, smallest);

    private static SignKind Word(string field, Func<string> name, Func<Payload.SignsTaken, string?> text) =>
        new(field, name, "", _ => null, text);

    /// <summary>That there is no cuff is a known answer, unlike silence.</summary>
    private static string? Pressure(Payload.SignsTaken s) =>
        s switch
        {
            { Systolic: { } n } => $"{Say.Number(n)} mmHg",
            { NoPressureCuff: true } => HandOverTexts.NoCuff,
            _ => null,
        };

    private static string? Flag(bool? flag) => flag is { } known ? (known ? HandOverTexts.Yes : HandOverTexts.No) : null;

    private static string Part(int? part) => part is { } known ? Say.Number(known) : HandOverTexts.NotTestable;
}
