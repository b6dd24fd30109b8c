using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>The code systems used: LOINC and UCUM where they have the thing, else words of the record itself.</summary>
/// <remarks>
/// LOINC codes of the vital signs are those the R4 profiles fix (HL7 FHIR 4.0.1, 2019, Vital Signs Panel); the others are
/// cited where they stand. Nothing is coded in SNOMED CT, whose licence depends on the country.
/// </remarks>
internal static class Codes
{
    public const string Loinc = "http://loinc.org";
    public const string Ucum = "http://unitsofmeasure.org";
    public const string Absent = "http://terminology.hl7.org/CodeSystem/data-absent-reason";
    public const string AbsentExtension = "http://hl7.org/fhir/StructureDefinition/data-absent-reason";

    /// <summary>Words of the record format; the kind of an entry or the name of its field.</summary>
    public const string Record = "https://farhold.example/fhir/CodeSystem/record";

    public const string EntryIds = "https://farhold.example/fhir/entry-id";
    public const string DeviceIds = "https://farhold.example/fhir/device-id";
    public const string CasualtyIds = "https://farhold.example/fhir/casualty-id";
    public const string WoundNames = "https://farhold.example/fhir/wound-name";
    public const string TourniquetNames = "https://farhold.example/fhir/tourniquet-name";

    public static CodeableConcept Of(string system, string code, string text, string? display = null) =>
        new() { Coding = [new Coding(system, code, display)], Text = text };

    /// <summary>A word of the record.</summary>
    public static CodeableConcept Word(string code, string text) => Of(Record, code, text);

    public static CodeableConcept Word<T>(T word)
        where T : struct, Enum => Of(Record, Wire.Word(word), Wire.Word(word).Replace('-', ' '));

    /// <summary>Text as somebody wrote it; where nothing legible is left of it, that its value is unknown.</summary>
    public static CodeableConcept Text(string text)
    {
        var concept = new CodeableConcept { Text = Legible.Text(text) };
        if (concept.Text is null)
            concept.AddExtension(AbsentExtension, new Code("unknown"));
        return concept;
    }

    public static CodeableConcept Reason(string code) => Of(Absent, code, code.Replace('-', ' '));

    public static Quantity Measured(double value, string unit, string ucum) =>
        new()
        {
            Value = (decimal)value,
            Unit = unit,
            System = Ucum,
            Code = ucum,
        };
}
