using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>Drugs and fluids given.</summary>
internal static class Given
{
    /// <summary>Units of the record that UCUM has under the same meaning; any other stays as it was written.</summary>
    private static readonly Dictionary<string, string> Units = new(StringComparer.Ordinal)
    {
        ["g"] = "g",
        ["mg"] = "mg",
        ["µg"] = "ug",
        ["μg"] = "ug",
        ["mcg"] = "ug",
        ["mL"] = "mL",
        ["ml"] = "mL",
        ["L"] = "L",
        ["mmol"] = "mmol",
        ["IU"] = "[iU]",
    };

    public static MedicationAdministration Drug(Counted entry, Payload.DrugGiven p, Draft draft)
    {
        var dose = new Quantity { Value = (decimal)p.Amount, Unit = Legible.Text(p.Unit) };
        if (Units.TryGetValue(p.Unit.Trim(), out var ucum))
            (dose.System, dose.Code) = (Codes.Ucum, ucum);
        var given = Of(entry, Codes.Text(p.Drug), dose, p.Route, draft);
        given.Note.AddRange(Mapping.Notes(p.Note));
        return given;
    }

    public static MedicationAdministration Fluid(Counted entry, Payload.FluidGiven p, Draft draft) =>
        Of(entry, Codes.Word(p.Fluid), Codes.Measured(p.Millilitres, "mL", "mL"), p.Route, draft);

    private static MedicationAdministration Of(Counted entry, CodeableConcept what, Quantity dose, string route, Draft draft) =>
        new()
        {
            Id = Draft.Id(entry, "given"),
            Text = Legible.Narrative([EntryText.Of(entry.What)]),
            Identifier = [Draft.Named(entry)],
            Status =
                entry.Standing == Standing.Withdrawn
                    ? MedicationAdministration.MedicationAdministrationStatusCodes.EnteredInError
                    : MedicationAdministration.MedicationAdministrationStatusCodes.Completed,
            Medication = what,
            Subject = draft.ToPatient,
            Context = draft.ToEncounter,
            Effective = Times.Of(entry.When),
            Performer = [new() { Actor = draft.By(entry) }],
            Dosage = new() { Route = Codes.Text(route), Dose = dose },
            Note = Mapping.Notes(Times.Vagueness(entry.When, "this was given"), Mapping.Caution(entry)),
        };
}
