using System.Text;

namespace Farhold.Records;

/// <summary>Fields of entries as people call them.</summary>
public static class FieldWords
{
    private static readonly Dictionary<string, string> Words = new()
    {
        ["happened"] = "time",
        ["by"] = "who",
        ["ageYears"] = "age (years)",
        ["massKg"] = "body mass (kg)",
        ["heartRate"] = "heart rate",
        ["breathRate"] = "breathing rate",
        ["systolic"] = "systolic pressure",
        ["diastolic"] = "diastolic pressure",
        ["spo2"] = "oxygen saturation (%)",
        ["temperatureC"] = "temperature (°C)",
        ["mental"] = "mental state",
        ["gcs"] = "coma scale",
        ["eye"] = "eye opening",
        ["verbal"] = "verbal answer",
        ["motor"] = "motor answer",
        ["cool"] = "skin cool",
        ["clammy"] = "skin clammy",
        ["radialPulse"] = "pulse at the wrist",
        ["capillaryRefillS"] = "capillary refill (s)",
        ["distalPulse"] = "pulse beyond the tourniquet",
        ["onOxygen"] = "on oxygen",
        ["noPressureCuff"] = "no pressure cuff here",
        ["able"] = "able to watch",
        ["make"] = "kind of tourniquet",
        ["millilitres"] = "amount (mL)",
        ["likely"] = "most likely",
        ["allows"] = "allows attempts on",
        ["to"] = "handed over to",
        ["casualty"] = "identity",
        ["care"] = "kind of help",
        ["why"] = "reason for tightening",
        ["who"] = "who it is about",
        ["bleedingElsewhere"] = "bleeding elsewhere",
        ["trunkWound"] = "wound or hard blow of the trunk",
        ["found"] = "what was found",
        ["reached"] = "somebody was reached",
        ["answers"] = "question answered",
        ["readBack"] = "read back",
        ["phase"] = "before or after the move",
        ["lat"] = "latitude (degrees)",
        ["lon"] = "longitude (degrees)",
        ["accuracyM"] = "accuracy (m)",
        ["altitudeM"] = "altitude (m)",
        ["limbOutcome"] = "outcome of the limb",
        ["rules"] = "rules in force",
        ["local"] = "local protocol",
        ["localHash"] = "hash of the local protocol",
        ["standing"] = "what stands behind the local protocol",
        ["loosened"] = "what the local protocol loosens",
    };

    /// <summary><c>heart rate</c>; a name that is not known is only taken apart: <c>skinTone</c> becomes <c>skin tone</c>.</summary>
    public static string Of(string field)
    {
        if (Words.TryGetValue(field, out var words))
            return words;
        var apart = new StringBuilder();
        foreach (var c in field)
            apart.Append(char.IsAsciiLetterUpper(c) ? " " : "").Append(char.ToLowerInvariant(c));
        return apart.ToString();
    }
}
