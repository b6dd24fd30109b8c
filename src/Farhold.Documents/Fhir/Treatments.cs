using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>What was done to the limb and the wound.</summary>
internal static class Treatments
{
    public static Procedure Tightened(Counted entry, Payload.TourniquetTightened p, Draft draft)
    {
        var done = Done(entry, "tourniquet-tightened", "Tourniquet tightened", draft);
        done.Identifier.Add(new(Codes.TourniquetNames, Legible.Text(p.Tourniquet)));
        done.BodySite = [Codes.Word(p.Limb)];
        done.UsedCode = p.Make is { } make ? [Codes.Word(make)] : [];
        done.ReasonReference = draft.ToWound(p.Wound) is { } wound ? [wound] : [];
        done.ReasonCode = p.Why is { } why ? [Codes.Word(why)] : [];
        done.Note.AddRange(Mapping.Notes(p.Place is { } place ? $"Place: {place}" : null));
        return done;
    }

    /// <summary>Slackened or removed: part of the tightening it undoes.</summary>
    public static Procedure Loosened(Counted entry, string code, string text, string tourniquet, Draft draft)
    {
        var done = Done(entry, code, text, draft);
        done.Identifier.Add(new(Codes.TourniquetNames, Legible.Text(tourniquet)));
        if (draft.TightenedBefore(tourniquet, entry) is { What: Payload.TourniquetTightened tightened } before)
        {
            done.PartOf = [Draft.To(Draft.Id(before, "tourniquet-tightened"))];
            done.BodySite = [Codes.Word(tightened.Limb)];
        }

        return done;
    }

    public static Procedure OnWound(Counted entry, string code, string text, string wound, Draft draft, CodeableConcept? used = null)
    {
        var done = Done(entry, code, text, draft);
        done.ReasonReference = draft.ToWound(wound) is { } found ? [found] : [];
        done.BodySite = draft.SiteOf(wound) is { } site ? [site] : [];
        done.UsedCode = used is null ? [] : [used];
        return done;
    }

    public static Procedure Pressure(Counted entry, Payload.PressureHeld p, Draft draft)
    {
        var done = OnWound(entry, "pressure-held", "Pressure held by hand", p.Wound, draft);
        done.Note.AddRange(Mapping.Notes($"Held for {Say.Number(p.Minutes)} min."));
        return done;
    }

    /// <summary>From its beginning to its end; without an end it is under way.</summary>
    public static Procedure Attempt(Counted entry, Payload.AttemptStarted p, Draft draft)
    {
        var done = OnAttempt(entry, p.Wound, p.Tourniquet, draft);
        if (draft.Attempts.EndOf(entry) is not { What: Payload.AttemptEnded ended } end)
        {
            if (entry.Standing != Standing.Withdrawn)
                done.Status = EventStatus.InProgress;
            done.Performed = new Period { Start = WrittenInstant.Write(entry.When.Earliest) };
            return done;
        }

        var last = NodaTime.Instant.Max(end.When.Latest, entry.When.Earliest);
        done.Performed = new Period { Start = WrittenInstant.Write(entry.When.Earliest), End = WrittenInstant.Write(last) };
        done.Text = Legible.Narrative([EntryText.Of(p), EntryText.Of(ended)]);
        Outcome(done, ended, end);
        done.Note.AddRange(Mapping.Notes(Times.Vagueness(end.When, "it ended")));
        return done;
    }

    /// <summary>An end whose beginning nobody wrote down.</summary>
    public static Procedure EndOnly(Counted entry, Payload.AttemptEnded p, Draft draft)
    {
        var done = OnAttempt(entry, p.Wound, p.Tourniquet, draft);
        done.Performed = new Period { End = WrittenInstant.Write(entry.When.Latest) };
        Outcome(done, p, entry);
        return done;
    }

    private static Procedure OnAttempt(Counted entry, string wound, string tourniquet, Draft draft)
    {
        var done = OnWound(entry, "attempt", "Attempt to convert the tourniquet to packing and a pressure dressing", wound, draft);
        done.Identifier.Add(new(Codes.TourniquetNames, Legible.Text(tourniquet)));
        return done;
    }

    private static void Outcome(Procedure done, Payload.AttemptEnded ended, Counted end)
    {
        if (end.Standing != Standing.Withdrawn)
            done.Status = ended.Outcome == AttemptOutcome.Abandoned ? EventStatus.Stopped : EventStatus.Completed;
        done.Outcome = Codes.Word(ended.Outcome);
        done.Note.AddRange(Mapping.Notes(ended.Note));
    }

    private static Procedure Done(Counted entry, string code, string text, Draft draft) =>
        new()
        {
            Id = Draft.Id(entry, code),
            Text = Legible.Narrative([EntryText.Of(entry.What)]),
            Identifier = [Draft.Named(entry)],
            Status = entry.Standing == Standing.Withdrawn ? EventStatus.EnteredInError : EventStatus.Completed,
            Code = Codes.Word(code, text),
            Subject = draft.ToPatient,
            Encounter = draft.ToEncounter,
            Performed = Times.Of(entry.When),
            Performer = [new() { Actor = draft.By(entry) }],
            Note = Mapping.Notes(Times.Vagueness(entry.When, "this was done"), Mapping.Caution(entry)),
        };
}
