using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>A sign of the record: its field, its name and unit in words, and how to read it.</summary>
/// <param name="Field">Its name in the record.</param>
/// <param name="Unit">Empty where there is none.</param>
/// <param name="Number">Null where it is a word.</param>
/// <param name="Text">The value in words, with its unit; null where the entry does not tell of it.</param>
/// <param name="SmallestChange">Null: no course is told.</param>
public sealed record SignKind(
    string Field,
    string Name,
    string Unit,
    Func<Payload.SignsTaken, double?> Number,
    Func<Payload.SignsTaken, string?> Text,
    double? SmallestChange = null)
{
    /// <summary>In the order in which they are told.</summary>
    public static readonly ImmutableArray<SignKind> All =
    [
        Measured("heartRate", "heart rate", "/min", s => s.HeartRate, Farhold.Signs.SmallestChange.HeartRate),
        Measured("breathRate", "breathing rate", "/min", s => s.RespiratoryRate, Farhold.Signs.SmallestChange.RespiratoryRate),
        new("systolic", "systolic pressure", "mmHg", s => s.Systolic, Pressure, Farhold.Signs.SmallestChange.Systolic),
        Measured("diastolic", "diastolic pressure", "mmHg", s => s.Diastolic, Farhold.Signs.SmallestChange.Diastolic),
        Measured("spo2", "oxygen saturation", "%", s => s.Spo2, Farhold.Signs.SmallestChange.Spo2),
        Word("onOxygen", "on oxygen", s => Flag(s.OnOxygen)),
        Measured("temperatureC", "temperature", "°C", s => s.TemperatureC, Farhold.Signs.SmallestChange.TemperatureC),
        Word("mental", "mental state", s => s.Mental switch
        {
            null => null,
            Mental.Voice => "answers only to voice",
            Mental.Pain => "answers only to pain",
            { } m => Wire.Word(m),
        }),
        Word("gcs", "coma scale", s => s.Gcs is { } g ? $"eye {Part(g.Eye)}, verbal {Part(g.Verbal)}, motor {Part(g.Motor)}" : null),
        Word("radialPulse", "pulse at the wrist", s => s.RadialPulse is { } r ? Wire.Word(r) : null),
        Measured("capillaryRefillS", "capillary refill", "s", s => s.CapillaryRefillS, null),
        Word("dizzy", "dizzy", s => Flag(s.Dizzy)),
        Word("pale", "pale", s => Flag(s.Pale)),
        Word("cool", "skin cool", s => Flag(s.Cool)),
        Word("clammy", "skin clammy", s => Flag(s.Clammy)),
        new("pain", "pain", "of 10", s => s.Pain, s => s.Pain is { } p ? $"{Say.Number(p)} of 10" : null),
    ];

    private static SignKind Measured(string field, string name, string unit, Func<Payload.SignsTaken, double?> number, double? smallest) =>
        new(field, name, unit, number, s => number(s) is { } n ? $"{Say.Number(n)} {unit}" : null, smallest);

    private static SignKind Word(string field, string name, Func<Payload.SignsTaken, string?> text) => new(field, name, "", _ => null, text);

    /// <summary>That there is no cuff is a known answer, unlike silence.</summary>
    private static string? Pressure(Payload.SignsTaken s) => s switch
    {
        { Systolic: { } n } => $"{Say.Number(n)} mmHg",
        { NoPressureCuff: true } => "no cuff to measure it",
        _ => null,
    };

    private static string? Flag(bool? flag) => flag is { } known ? (known ? "yes" : "no") : null;

    private static string Part(int? part) => part is { } known ? Say.Number(known) : "not testable";
}
