using System.Collections.Immutable;

namespace Farhold.App.Signs;

/// <summary>A measured sign as the screens show and take it.</summary>
/// <param name="Wire">Its name in the record and in criteria.</param>
/// <param name="Change">The least change worth telling; null where none is told.</param>
public sealed record Sign(
    string Wire,
    Func<Texts, string> Name,
    FieldRange Range,
    int Decimals,
    double? Change,
    Func<Payload.SignsTaken, double?> Value,
    Func<Payload.SignsTaken, double?, Payload.SignsTaken> With
)
{
    /// <summary>In the order in which they are taken.</summary>
    public static ImmutableArray<Sign> All { get; } =
    [
        new(
            "heartRate",
            t => t.SignHeartRate,
            FieldRange.HeartRate,
            0,
            SmallestChange.HeartRate,
            s => s.HeartRate,
            (s, v) => s with { HeartRate = v }
        ),
        new(
            "breathRate",
            t => t.SignBreathRate,
            FieldRange.RespiratoryRate,
            0,
            SmallestChange.RespiratoryRate,
            s => s.RespiratoryRate,
            (s, v) => s with { RespiratoryRate = v }
        ),
        new(
            "systolic",
            t => t.SignSystolic,
            FieldRange.Systolic,
            0,
            SmallestChange.Systolic,
            s => s.Systolic,
            (s, v) => s with { Systolic = v }
        ),
        new(
            "diastolic",
            t => t.SignDiastolic,
            FieldRange.Diastolic,
            0,
            SmallestChange.Diastolic,
            s => s.Diastolic,
            (s, v) => s with { Diastolic = v }
        ),
        new("spo2", t => t.SignSpo2, FieldRange.Spo2, 0, SmallestChange.Spo2, s => s.Spo2, (s, v) => s with { Spo2 = v }),
        new(
            "temperatureC",
            t => t.SignTemperature,
            FieldRange.TemperatureC,
            1,
            SmallestChange.TemperatureC,
            s => s.TemperatureC,
            (s, v) => s with { TemperatureC = v }
        ),
        new("pain", t => t.SignPain, FieldRange.Pain, 0, null, s => s.Pain, (s, v) => s with { Pain = v }),
        new(
            "capillaryRefillS",
            t => t.SignRefill,
            FieldRange.CapillaryRefillS,
            0,
            null,
            s => s.CapillaryRefillS,
            (s, v) => s with { CapillaryRefillS = v }
        ),
    ];

    public static Sign? Measured(string wire) => All.FirstOrDefault(s => s.Wire == wire);

    /// <summary>Where on the screen that takes signs one of this name is taken; null if it is no sign.</summary>
    public static SignPart? Of(string wire) => SignPart.All.FirstOrDefault(p => p.Holds(wire));
}

/// <summary>One part of taking signs: a measured sign, or a handful of things to see.</summary>
public sealed record SignPart(string Wire, Func<Texts, string> Name, ImmutableArray<string> Also)
{
    public static readonly SignPart Mind = new("mental", t => t.SignMental, []);
    public static readonly SignPart Skin = new("skin", t => t.SignSkin, ["pale", "cool", "clammy", "dizzy"]);
    public static readonly SignPart Wrist = new("radialPulse", t => t.SignRadialPulse, []);
    public static readonly SignPart Beyond = new("distalPulse", t => t.QuickBeyond, []);
    public static readonly SignPart Oxygen = new("onOxygen", t => t.SignOxygen, []);

    public static ImmutableArray<SignPart> All { get; } =
    [
        new("heartRate", t => t.SignHeartRate, []),
        new("breathRate", t => t.SignBreathRate, []),
        Mind,
        Skin,
        Wrist,
        new("systolic", t => t.SignSystolic, ["diastolic", "noPressureCuff"]),
        new("spo2", t => t.SignSpo2, []),
        new("temperatureC", t => t.SignTemperature, []),
        Beyond,
        new("pain", t => t.SignPain, []),
        new("capillaryRefillS", t => t.SignRefill, []),
        Oxygen,
    ];

    public bool Holds(string wire) => Wire == wire || Also.Contains(wire);

    /// <summary>Whether a whole look at the signs of shock needs it, and it was not taken yet.</summary>
    public bool IsMissing(Payload.SignsTaken signs) =>
        Wire switch
        {
            "heartRate" => signs.HeartRate is null,
            "breathRate" => signs.RespiratoryRate is null,
            "mental" => signs.Mental is null,
            "skin" => signs is not { Pale: not null, Cool: not null, Clammy: not null, Dizzy: not null },
            "radialPulse" => signs.RadialPulse is null,
            "systolic" => signs is { Systolic: null, NoPressureCuff: not true },
            _ => false,
        };
}
