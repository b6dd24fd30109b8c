using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Two values of one look that can't both be right. Neither is good news; a bad one still acts.</summary>
/// <remarks>
/// The numbers are design. Of 20 trauma casualties with a pulse at the wrist, hardly any had an upper pressure under 60 mmHg (Deakin
/// and Low 2000, BMJ 321:673, from memory); consciousness fades below 32 °C (Swiss stages, ICAR, seen second-hand), and
/// 2 °C are left for those who hold out. The pressures are for 12 years and over, for in children they lie lower.
/// </remarks>
internal static class Contradictions
{
    private const double GrownYears = 12;

    private const double StrongPulseSystolic = 60;
    private const double NoPulseSystolic = 110;
    private const double AlertSystolic = 50;
    private const double AlertCelsius = 30;

    /// <summary>Each pair twice: once about either value.</summary>
    public static void Add(Payload.SignsTaken look, double? ageYears, List<Objection> found)
    {
        void Pair(string one, string other, string text) => found.AddRange([new(one, text, other), new(other, text, one)]);

        if (look is { Mental: { } mental, Gcs: { } gcs } && GlasgowAgreement.Between(mental, gcs) is { State: Truth.NotMet } disagreement)
            Pair("mental", "gcs", SignTexts.MentalAndComa(disagreement.Reason));
        if (look.Diastolic >= look.Systolic)
            Pair("systolic", "diastolic", SignTexts.PressuresMixed);
        if (look is { HeartRate: 0, RadialPulse: RadialPulse.Strong or RadialPulse.Weak })
            Pair("heartRate", "radialPulse", SignTexts.NoBeatYetPulse);
        if (look is { Mental: Mental.Unresponsive, Dizzy: true })
            Pair("mental", "dizzy", SignTexts.UnresponsiveDizzy);
        if (look is { Mental: Mental.Alert, TemperatureC: < AlertCelsius and { } celsius })
            Pair("mental", "temperatureC", SignTexts.AlertAtTemperature(Say.Number(celsius)));
        if (look.Systolic is not { } systolic || ageYears < GrownYears)
            return;
        if (systolic < StrongPulseSystolic && look.RadialPulse == RadialPulse.Strong)
            Pair("systolic", "radialPulse", SignTexts.StrongPulseLowPressure(Pressure(systolic)));
        if (systolic >= NoPulseSystolic && look.RadialPulse == RadialPulse.Absent)
            Pair("systolic", "radialPulse", SignTexts.NoPulseHighPressure(Pressure(systolic)));
        if (systolic < AlertSystolic && look.Mental == Mental.Alert)
            Pair("systolic", "mental", SignTexts.AlertLowPressure(Pressure(systolic)));
    }

    private static string Pressure(double systolic) => SignTexts.UpperPressure(Say.Number(systolic));
}
