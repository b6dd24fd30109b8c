using System.Text;

namespace Farhold.Records;

/// <summary>Fields of entries as people call them.</summary>
public static class FieldWords
{
    /// <summary><c>heart rate</c>; a name that is not known is only taken apart: <c>skinTone</c> becomes <c>skin tone</c>.</summary>
    public static string Of(string field)
    {
        if (Word(field) is { } word)
            return word;
        var apart = new StringBuilder();
        foreach (var c in field)
            apart.Append(char.IsAsciiLetterUpper(c) ? " " : "").Append(char.ToLowerInvariant(c));
        return apart.ToString();
    }

    private static string? Word(string field) =>
        field switch
        {
            "happened" => RecordTexts.FieldTime,
            "by" => RecordTexts.FieldWho,
            "ageYears" => RecordTexts.FieldAge,
            "massKg" => RecordTexts.FieldMass,
            "heartRate" => RecordTexts.FieldHeartRate,
            "breathRate" => RecordTexts.FieldBreathRate,
            "systolic" => RecordTexts.FieldSystolic,
            "diastolic" => RecordTexts.FieldDiastolic,
            "spo2" => RecordTexts.FieldSpo2,
            "temperatureC" => RecordTexts.FieldTemperature,
            "mental" => RecordTexts.FieldMental,
            "gcs" => RecordTexts.FieldGcs,
            "eye" => RecordTexts.FieldEye,
            "verbal" => RecordTexts.FieldVerbal,
            "motor" => RecordTexts.FieldMotor,
            "cool" => RecordTexts.FieldCool,
            "clammy" => RecordTexts.FieldClammy,
            "radialPulse" => RecordTexts.FieldRadialPulse,
            "capillaryRefillS" => RecordTexts.FieldRefill,
            "distalPulse" => RecordTexts.FieldDistalPulse,
            "onOxygen" => RecordTexts.FieldOnOxygen,
            "noPressureCuff" => RecordTexts.FieldNoCuff,
            "able" => RecordTexts.FieldAble,
            "make" => RecordTexts.FieldMake,
            "millilitres" => RecordTexts.FieldMillilitres,
            "likely" => RecordTexts.FieldLikely,
            "allows" => RecordTexts.FieldAllows,
            "to" => RecordTexts.FieldTo,
            "casualty" => RecordTexts.FieldIdentity,
            "care" => RecordTexts.FieldCare,
            "why" => RecordTexts.FieldWhy,
            "who" => RecordTexts.FieldAboutWhom,
            "bleedingElsewhere" => RecordTexts.FieldBleedingElsewhere,
            "trunkWound" => RecordTexts.FieldTrunkWound,
            "found" => RecordTexts.FieldFound,
            "reached" => RecordTexts.FieldReached,
            "answers" => RecordTexts.FieldAnswers,
            "counted" => RecordTexts.FieldCounted,
            "readBack" => RecordTexts.FieldReadBack,
            "phase" => RecordTexts.FieldPhase,
            "lat" => RecordTexts.FieldLatitude,
            "lon" => RecordTexts.FieldLongitude,
            "accuracyM" => RecordTexts.FieldAccuracy,
            "altitudeM" => RecordTexts.FieldAltitude,
            "limbOutcome" => RecordTexts.FieldLimbOutcome,
            "rules" => RecordTexts.FieldRules,
            "local" => RecordTexts.FieldLocal,
            "localHash" => RecordTexts.FieldLocalHash,
            "standing" => RecordTexts.FieldStanding,
            "mechanism" => RecordTexts.FieldMechanism,
            "step" => RecordTexts.FieldStep,
            "side" => RecordTexts.FieldSide,
            "face" => RecordTexts.FieldFace,
            "site" => RecordTexts.FieldSite,
            "onSkin" => RecordTexts.FieldOnSkin,
            "authority" => RecordTexts.FieldAuthority,
            "level" => RecordTexts.FieldLevel,
            "nerve" => RecordTexts.FieldNerve,
            "kidney" => RecordTexts.FieldKidney,
            "hospitalDays" => RecordTexts.FieldHospitalDays,
            "airC" => RecordTexts.FieldAir,
            "windKmh" => RecordTexts.FieldWind,
            "loosened" => RecordTexts.FieldLoosened,
            _ => null,
        };
}
