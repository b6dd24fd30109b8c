using System.Collections.Immutable;
using System.Diagnostics;
using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>The resources that say what an entry says. An end of an attempt is part of the resource of its beginning.</summary>
internal static class Mapping
{
    public static ImmutableArray<DomainResource> Of(Counted entry, Draft draft) =>
        entry.What switch
        {
            Payload.CasualtyOpened p => [.. Person.Beside(entry, p, draft)],
            Payload.WoundFound p => [Findings.Wound(entry, p, draft)],
            Payload.TourniquetTightened p => [Treatments.Tightened(entry, p, draft)],
            Payload.TourniquetSlackened p =>
            [
                Treatments.Loosened(
                    entry,
                    "tourniquet-slackened",
                    "Tourniquet slackened, still around the limb, loose",
                    p.Tourniquet,
                    draft
                ),
            ],
            Payload.TourniquetRemoved p => [Treatments.Loosened(entry, "tourniquet-removed", "Tourniquet removed", p.Tourniquet, draft)],
            Payload.WoundPacked p => [Treatments.OnWound(entry, "wound-packed", "Wound packed", p.Wound, draft, Codes.Word(p.Material))],
            Payload.PressureHeld p => [Treatments.Pressure(entry, p, draft)],
            Payload.DressingApplied p =>
            [
                Treatments.OnWound(entry, "dressing-applied", "Dressing applied", p.Wound, draft, Codes.Word(p.Dressing)),
            ],
            Payload.BleedingChecked p => [Findings.Bleeding(entry, p, draft)],
            Payload.AttemptStarted p => [Treatments.Attempt(entry, p, draft)],
            Payload.AttemptEnded p => draft.Attempts.StartOf(entry) is null ? [Treatments.EndOnly(entry, p, draft)] : [],
            Payload.SignsTaken p => [.. Signs.Of(entry, p, draft)],
            Payload.WatchStated p => [Findings.Watch(entry, p, draft)],
            Payload.SuppliesStated p => [Findings.Supplies(entry, p, draft)],
            Payload.DrugGiven p => [Given.Drug(entry, p, draft)],
            Payload.FluidGiven p => [Given.Fluid(entry, p, draft)],
            Payload.UrineMeasured p => [Findings.Stated(entry, "urine", "Urine passed", Codes.Measured(p.Millilitres, "mL", "mL"), draft)],
            Payload.TaskDone p => [Messages.Done(entry, p, draft)],
            Payload.HelpExpected p => [Findings.Help(entry, p, draft)],
            Payload.CasualtyLookedOver p => [.. Looks.Over(entry, p, draft)],
            Payload.RegionLooked p => [Looks.Region(entry, p, draft)],
            Payload.ContactTried p => [Looks.Contact(entry, p, draft)],
            Payload.QuestionAsked p => [Messages.Question(entry, p, draft)],
            Payload.QuestionTaken p => [Messages.Taken(entry, p, draft)],
            Payload.StepLooked p => [Looks.Step(entry, p, draft)],
            Payload.InjuryStated p => [Looks.Injury(entry, p, draft)],
            Payload.CasualtyMoved p => [Looks.Moved(entry, p, draft)],
            Payload.PositionNoted p => [Looks.Position(entry, p, draft)],
            Payload.WeatherStated p => [Looks.Weather(entry, p, draft)],
            Payload.StageNoted p => [Findings.Stated(entry, "stage", "Stage of the way out", Said(EntryText.Of(p)), draft)],
            Payload.OutcomeReported p => [.. Looks.Outcome(entry, p, draft)],
            Payload.AdviceReceived p => [Messages.Advice(entry, p, draft)],
            Payload.RulesStated p => [Findings.Stated(entry, "rules", "Rules in force", Said(EntryText.Of(p)), draft)],
            Payload.NoteWritten p => [Findings.Stated(entry, "note", "Note", Said(p.Text), draft)],
            Payload.CareEnded p => [Findings.Ended(entry, p, draft)],
            Payload.OfNewerVersion p => [Findings.Newer(entry, p, draft)],
            Payload.EntryAmended or Payload.EntryWithdrawn => [],
            _ => throw new UnreachableException(),
        };

    /// <summary>Text as a value; where nothing legible is left of it, that it is unknown.</summary>
    public static FhirString Said(string text)
    {
        var said = new FhirString(Legible.Text(text));
        if (said.Value is null)
            said.AddExtension(Codes.AbsentExtension, new Code("unknown"));
        return said;
    }

    public static List<Annotation> Notes(params IEnumerable<string?> texts) =>
        [.. texts.Select(Legible.Text).OfType<string>().Select(t => new Annotation { Text = new Markdown(t) })];

    /// <summary>What the standing adds to an entry's notes.</summary>
    public static string? Caution(Counted entry) =>
        entry.Standing == Standing.Disputed ? $"Two different entries were written as {entry.Entry.Id}; this is one of them." : null;
}
