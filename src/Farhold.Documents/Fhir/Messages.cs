using Hl7.Fhir.Model;
using FhirTask = Hl7.Fhir.Model.Task;

namespace Farhold.Documents.Fhir;

/// <summary>Questions asked, advice that came in, and tasks done.</summary>
internal static class Messages
{
    public static Communication Question(Counted entry, Payload.QuestionAsked p, Draft draft) =>
        new()
        {
            Id = Draft.Id(entry, "question"),
            Text = Legible.Narrative([EntryText.Of(p)]),
            Identifier = [Draft.Named(entry)],
            Status = entry.Standing == Standing.Withdrawn ? EventStatus.EnteredInError : EventStatus.Completed,
            Subject = draft.ToPatient,
            Encounter = draft.ToEncounter,
            Sender = draft.By(entry),
            Recipient = [draft.Person(p.To)],
            SentElement = entry.When.IsInstant ? Times.Of(entry.When.Latest) : null,
            Payload = [new() { Content = Mapping.Said(p.Text) }],
            Note = Mapping.Notes(Times.Vagueness(entry.When, "it was asked"), Mapping.Caution(entry)),
        };

    /// <summary>A word back to whoever asked: somebody is on it.</summary>
    public static Communication Taken(Counted entry, Payload.QuestionTaken p, Draft draft) =>
        new()
        {
            Id = Draft.Id(entry, "taken"),
            Text = Legible.Narrative([EntryText.Of(p)]),
            Identifier = [Draft.Named(entry)],
            Status = entry.Standing == Standing.Withdrawn ? EventStatus.EnteredInError : EventStatus.Completed,
            Subject = draft.ToPatient,
            Encounter = draft.ToEncounter,
            Sender = draft.By(entry),
            InResponseTo = draft.ToQuestion(p.Answers) is { } question ? [question] : [],
            SentElement = entry.When.IsInstant ? Times.Of(entry.When.Latest) : null,
            Payload = [new() { Content = new FhirString("Somebody is on the question; an answer is to come.") }],
            Note = Mapping.Notes(p.Note, $"About entry {p.Answers}.", Times.Vagueness(entry.When, "it was taken"), Mapping.Caution(entry)),
        };

    public static Communication Advice(Counted entry, Payload.AdviceReceived p, Draft draft) =>
        new()
        {
            Id = Draft.Id(entry, "advice"),
            Text = Legible.Narrative([EntryText.Of(p)]),
            Identifier = [Draft.Named(entry)],
            Status = entry.Standing == Standing.Withdrawn ? EventStatus.EnteredInError : EventStatus.Completed,
            Subject = draft.ToPatient,
            Encounter = draft.ToEncounter,
            Sender = draft.Person(p.From),
            Recipient = [draft.By(entry)],
            InResponseTo = draft.ToQuestion(p.Answers) is { } question ? [question] : [],
            ReceivedElement = entry.When.IsInstant ? Times.Of(entry.When.Latest) : null,
            Payload = [.. Said(p)],
            Note = Mapping.Notes(
                p.Until is { } until ? $"Holds until {Say.Time(until)}." : null,
                p.Answers is { } asked ? $"Answers entry {asked}." : null,
                p.ReadBack switch
                {
                    true => "Read back, and agreed.",
                    false => "Not read back.",
                    null => null,
                },
                Times.Vagueness(entry.When, "it came"),
                Mapping.Caution(entry)
            ),
        };

    public static FhirTask Done(Counted entry, Payload.TaskDone p, Draft draft) =>
        new()
        {
            Id = Draft.Id(entry, "task"),
            Text = Legible.Narrative([EntryText.Of(p)]),
            Identifier = [Draft.Named(entry)],
            Status = entry.Standing == Standing.Withdrawn ? FhirTask.TaskStatus.EnteredInError : FhirTask.TaskStatus.Completed,
            Intent = FhirTask.TaskIntent.Plan,
            Code = Codes.Text(p.Task),
            For = draft.ToPatient,
            Encounter = draft.ToEncounter,
            ExecutionPeriod = Times.Between(entry.When),
            Owner = draft.By(entry),
            Note = Mapping.Notes(p.Note, Times.Vagueness(entry.When, "this was done"), Mapping.Caution(entry)),
        };

    /// <summary>The words, then what they expressly allow, if that was recorded.</summary>
    private static IEnumerable<Communication.PayloadComponent> Said(Payload.AdviceReceived p)
    {
        yield return new() { Content = Mapping.Said(p.Text) };
        if (p.Allows.IsDefault)
            yield break;
        var allowed = p.Allows.Select(Legible.Text).OfType<string>().ToArray();
        yield return new()
        {
            Content = new FhirString(allowed.Length == 0 ? "Allows no attempt." : $"Allows: {string.Join(", ", allowed)}."),
        };
    }
}
