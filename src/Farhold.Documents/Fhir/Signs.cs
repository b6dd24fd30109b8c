using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>Signs taken at one look: one Observation each, those of the R4 vital signs by their profiles.</summary>
internal static class Signs
{
    internal static readonly Vitals Weight = new("bodyweight", "Body weight", ["29463-7"]);
    private static readonly Vitals HeartRate = new("heartrate", "Heart rate", ["8867-4"]);
    private static readonly Vitals RespiratoryRate = new("resprate", "Respiratory rate", ["9279-1"]);
    private static readonly Vitals Temperature = new("bodytemp", "Body temperature", ["8310-5"]);

    /// <summary>The profile asks for 2708-6; 59408-5 says that a pulse oximeter was used.</summary>
    private static readonly Vitals Saturation = new("oxygensat", "Oxygen saturation by pulse oximeter", ["2708-6", "59408-5"]);
    private static readonly Vitals Pressure = new("bp", "Blood pressure", ["85354-9"]);

    public static IEnumerable<DomainResource> Of(Counted entry, Payload.SignsTaken p, Draft draft)
    {
        if (p.HeartRate is { } heart)
            yield return Vital(entry, draft, HeartRate, Codes.Measured(heart, "beats per minute", "/min"));
        if (p.RespiratoryRate is { } breath)
            yield return Vital(entry, draft, RespiratoryRate, Codes.Measured(breath, "breaths per minute", "/min"));
        if (p.Systolic is not null || p.Diastolic is not null)
            yield return BloodPressure(entry, p, draft);
        if (p.Spo2 is { } spo2)
            yield return Vital(entry, draft, Saturation, Codes.Measured(spo2, "%", "%"));
        if (p.TemperatureC is { } temperature)
            yield return Vital(entry, draft, Temperature, Codes.Measured(temperature, "°C", "Cel"));
        if (p.Gcs is { } gcs)
            yield return Glasgow(entry, gcs, draft);
        foreach (var other in Others(entry, p, draft))
            yield return other;
    }

    public static Observation Vital(Counted entry, Draft draft, Vitals vitals, DataType? value)
    {
        var sign = Findings.Stated(entry, vitals.Profile, vitals.Name, value, draft);
        sign.Meta = new() { Profile = ["http://hl7.org/fhir/StructureDefinition/" + vitals.Profile] };
        sign.Category = [Codes.Of("http://terminology.hl7.org/CodeSystem/observation-category", "vital-signs", "Vital signs")];
        sign.Code = new() { Coding = [.. vitals.Loinc.Select(code => new Coding(Codes.Loinc, code))], Text = vitals.Name };
        return sign;
    }

    private static Observation BloodPressure(Counted entry, Payload.SignsTaken p, Draft draft)
    {
        var sign = Vital(entry, draft, Pressure, null);
        sign.Component = [Part("8480-6", "Systolic blood pressure", p.Systolic), Part("8462-4", "Diastolic blood pressure", p.Diastolic)];
        return sign;
    }

    /// <summary>One side of a pressure; a side that was not taken, as when only felt, is said to be missing.</summary>
    private static Observation.ComponentComponent Part(string loinc, string name, double? value) =>
        new()
        {
            Code = Codes.Of(Codes.Loinc, loinc, name),
            Value = value is { } known ? Codes.Measured(known, "mmHg", "mm[Hg]") : null,
            DataAbsentReason = value is null ? Codes.Reason("not-performed") : null,
        };

    /// <summary>LOINC 9269-2 and its parts, as in the R4 example observation-example-glasgow (HL7 FHIR 4.0.1, 2019).</summary>
    private static Observation Glasgow(Counted entry, GlasgowParts gcs, Draft draft)
    {
        var sign = Findings.Stated(entry, "gcs", "Glasgow coma scale", null, draft);
        sign.Code = Codes.Of(Codes.Loinc, "9269-2", "Glasgow coma scale, total");
        if (gcs is { Eye: { } eye, Verbal: { } verbal, Motor: { } motor })
            sign.Value = Codes.Measured(eye + verbal + motor, "points", "{score}");
        else
            sign.DataAbsentReason = Codes.Reason("not-performed");
        sign.Component = [Scale("9267-6", "Eye", gcs.Eye), Scale("9270-0", "Verbal", gcs.Verbal), Scale("9268-4", "Motor", gcs.Motor)];
        return sign;
    }

    private static Observation.ComponentComponent Scale(string loinc, string name, int? points) =>
        new()
        {
            Code = Codes.Of(Codes.Loinc, loinc, $"Glasgow coma scale, {name.ToLowerInvariant()}"),
            Value = points is { } known ? Codes.Measured(known, "points", "{score}") : null,
            DataAbsentReason = points is null ? Codes.Reason("not-performed") : null,
        };

    /// <summary>
    /// What has no vital-signs profile. LOINC 67775-7 level of responsiveness and 72514-3 pain severity 0 to 10 are common
    /// practice; 44963-7 capillary refill as in US Core 6.1 (2023).
    /// </summary>
    private static IEnumerable<Observation> Others(Counted entry, Payload.SignsTaken p, Draft draft)
    {
        Observation Of(string field, string text, DataType value, string? loinc = null)
        {
            var sign = Findings.Stated(entry, field, text, value, draft);
            if (loinc is not null)
                sign.Code.Coding.Insert(0, new(Codes.Loinc, loinc));
            return sign;
        }

        if (p.Mental is { } mental)
            yield return Of("mental", "Level of consciousness", Codes.Word(mental), "67775-7");
        if (p.Pain is { } pain)
            yield return Of("pain", "Pain, 0 to 10", Codes.Measured(pain, "points of 10", "{score}"), "72514-3");
        if (p.CapillaryRefillS is { } refill)
            yield return Of("capillaryRefillS", "Capillary refill", Codes.Measured(refill, "s", "s"), "44963-7");
        if (p.RadialPulse is { } radial)
            yield return Of("radialPulse", "Pulse at the wrist", Codes.Word(radial));
        foreach (var (limb, pulse) in p.DistalPulse ?? System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty)
        {
            var beyond = Of($"distalPulse.{Wire.Word(limb)}", $"Pulse below the wound, {Say.Limb(limb)}", Codes.Word(pulse));
            beyond.BodySite = Codes.Word(limb);
            yield return beyond;
        }

        foreach (var (field, text, flag) in Flags(p))
            if (flag is { } seen)
                yield return Of(field, text, new FhirBoolean(seen));
    }

    private static (string Field, string Text, bool? Seen)[] Flags(Payload.SignsTaken p) =>
        [
            ("dizzy", "Dizzy", p.Dizzy),
            ("pale", "Pale", p.Pale),
            ("cool", "Skin cool", p.Cool),
            ("clammy", "Skin clammy", p.Clammy),
            ("onOxygen", "Breathing added oxygen", p.OnOxygen),
            ("noPressureCuff", "No way to measure blood pressure here", p.NoPressureCuff),
        ];

    /// <summary>A vital-signs profile of R4 with its code.</summary>
    internal sealed record Vitals(string Profile, string Name, string[] Loinc);
}
