using System.Collections.Immutable;

namespace Farhold;

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
    public static IEnumerable<Objection> Of(Payload.SignsTaken look, double? ageYears)
    {
        foreach (var (one, other, text) in Pairs(look, ageYears is not { } age || age >= GrownYears))
        {
            yield return new(one, text, other);
            yield return new(other, text, one);
        }
    }

    private static IEnumerable<(string One, string Other, string Text)> Pairs(Payload.SignsTaken look, bool grown)
    {
        if (look is { Mental: { } mental, Gcs: { } gcs } && GlasgowAgreement.Between(mental, gcs) is { State: Truth.NotMet } disagreement)
            yield return ("mental", "gcs", $"Mental state and coma scale disagree. {disagreement.Reason}");
        if (look.Diastolic >= look.Systolic)
            yield return ("systolic", "diastolic", "The lower blood pressure is not below the upper one. Are the two mixed up?");
        if (look is { HeartRate: 0, RadialPulse: RadialPulse.Strong or RadialPulse.Weak })
            yield return ("heartRate", "radialPulse", "No heart beat was counted, yet a pulse was felt at the wrist. Feel and count again.");
        if (look is { Mental: Mental.Unresponsive, Dizzy: true })
            yield return ("mental", "dizzy", "Unresponsive, yet said to be dizzy. Talk to the casualty again.");
        if (look is { Mental: Mental.Alert, TemperatureC: < AlertCelsius and { } celsius })
            yield return ("mental", "temperatureC", $"Alert at {Say.Number(celsius)} °C is hard to believe. Talk to the casualty, and take the temperature again.");
        foreach (var pair in grown ? Pressures(look) : [])
            yield return pair;
    }

    private static IEnumerable<(string One, string Other, string Text)> Pressures(Payload.SignsTaken look)
    {
        if (look.Systolic is not { } systolic)
            yield break;
        var pressure = $"an upper blood pressure of {Say.Number(systolic)} mmHg";
        if (systolic < StrongPulseSystolic && look.RadialPulse == RadialPulse.Strong)
            yield return ("systolic", "radialPulse", $"A strong pulse at the wrist and {pressure} don't go together. Feel and measure again.");
        if (systolic >= NoPulseSystolic && look.RadialPulse == RadialPulse.Absent)
            yield return ("systolic", "radialPulse",
                $"No pulse at the wrist and {pressure} don't go together. Feel again on an arm that is not tied, and measure again.");
        if (systolic < AlertSystolic && look.Mental == Mental.Alert)
            yield return ("systolic", "mental", $"Alert and {pressure} don't go together. Talk to the casualty, and measure again.");
    }
}
