using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>The casualty, and the care as one encounter.</summary>
internal static class Person
{
    public static Patient Patient(Draft draft)
    {
        var opened = draft.Opened?.What as Payload.CasualtyOpened;
        var patient = new Patient
        {
            Id = draft.Patient,
            Text = Legible.Narrative([opened is null ? "Casualty, name not recorded" : EntryText.Of(opened)]),
            Identifier =
            [
                new Identifier("urn:ietf:rfc:3986", "urn:uuid:" + draft.Patient),
                .. Legible.Text(opened?.Casualty) is { } casualty ? (Identifier[])[new(Codes.CasualtyIds, casualty)] : [],
            ],
            Name = [Draft.Named(opened?.Alias)],
            Gender = opened?.Sex switch
            {
                Sex.Female => AdministrativeGender.Female,
                Sex.Male => AdministrativeGender.Male,
                _ => null,
            },
        };
        if (End(draft) is { What: Payload.CareEnded { How: CareEnd.Died } } died)
            patient.Deceased = died.When.IsInstant ? Times.Of(died.When.Latest) : new FhirBoolean(true);
        else if (draft.Standing.Any(e => e.What is Payload.OutcomeReported { Survived: false }))
            patient.Deceased = new FhirBoolean(true);
        return patient;
    }

    /// <summary>Care in the field, as v3 ActCode calls it. What bounds it is given only where it is known to the instant.</summary>
    public static Encounter Encounter(Draft draft)
    {
        var end = End(draft);
        var started = draft.Opened is { When.IsInstant: true } opened ? WrittenInstant.Write(opened.When.Latest) : null;
        var ended = end is { When.IsInstant: true } ? WrittenInstant.Write(end.When.Latest) : null;
        return new()
        {
            Id = draft.Encounter,
            Text = Legible.Narrative([end is null ? "Care in the field" : EntryText.Of(end.What)]),
            Status = end is null ? Hl7.Fhir.Model.Encounter.EncounterStatus.InProgress : Hl7.Fhir.Model.Encounter.EncounterStatus.Finished,
            Class = new("http://terminology.hl7.org/CodeSystem/v3-ActCode", "FLD", "field"),
            Subject = draft.ToPatient,
            Period = Ordered(started, ended),
        };
    }

    public static Counted? End(Draft draft) => draft.Standing.LastOrDefault(e => e.What is Payload.CareEnded);

    /// <summary>What the opening says that has a resource of its own.</summary>
    public static IEnumerable<DomainResource> Beside(Counted entry, Payload.CasualtyOpened p, Draft draft)
    {
        if (p.AgeYears is { } age)
            yield return Findings.Stated(entry, "age", "Age", Codes.Measured(age, "years", "a"), draft, "ageYears");
        if (p.MassKg is { } mass)
            yield return Signs.Vital(entry, draft, Signs.Weight, Codes.Measured(mass, "kg", "kg"));
        if (p.History is { } history)
            yield return Findings.Stated(entry, "history", "What is known of earlier illness", Mapping.Said(history), draft, "history");
        for (var i = 0; !p.Allergies.IsDefault && i < p.Allergies.Length; i++)
            yield return Allergy(entry, i, p.Allergies[i], draft);
        for (var i = 0; !p.Medicines.IsDefault && i < p.Medicines.Length; i++)
            yield return Medicine(entry, i, p.Medicines[i], draft);
    }

    private static AllergyIntolerance Allergy(Counted entry, int number, string text, Draft draft)
    {
        var erroneous = entry.Standing == Standing.Withdrawn;
        return new()
        {
            Id = Draft.Id(entry, $"allergy {number}"),
            Text = Legible.Narrative([$"Allergy: {text}"]),
            ClinicalStatus = erroneous
                ? null
                : Codes.Of("http://terminology.hl7.org/CodeSystem/allergyintolerance-clinical", "active", "active"),
            VerificationStatus = Codes.Of(
                "http://terminology.hl7.org/CodeSystem/allergyintolerance-verification",
                erroneous ? "entered-in-error" : "unconfirmed",
                erroneous ? "entered in error" : "unconfirmed"
            ),
            Code = Codes.Text(text),
            Patient = draft.ToPatient,
            Encounter = draft.ToEncounter,
            RecordedDateElement = Times.Of(entry.Entry.Recorded),
            Recorder = draft.By(entry),
        };
    }

    /// <summary>What the casualty is said to take; whether it was taken lately is unknown.</summary>
    private static MedicationStatement Medicine(Counted entry, int number, string text, Draft draft) =>
        new()
        {
            Id = Draft.Id(entry, $"medicine {number}"),
            Text = Legible.Narrative([$"Takes: {text}"]),
            Status =
                entry.Standing == Standing.Withdrawn
                    ? MedicationStatement.MedicationStatusCodes.EnteredInError
                    : MedicationStatement.MedicationStatusCodes.Unknown,
            Medication = Codes.Text(text),
            Subject = draft.ToPatient,
            Context = draft.ToEncounter,
            DateAssertedElement = Times.Of(entry.Entry.Recorded),
            InformationSource = draft.By(entry),
        };

    /// <summary>None if nothing is known, or if the record has the end before the beginning.</summary>
    private static Period? Ordered(string? start, string? end) =>
        (start ?? end) is null || string.CompareOrdinal(start, end) > 0 && end is not null ? null : new() { Start = start, End = end };
}
