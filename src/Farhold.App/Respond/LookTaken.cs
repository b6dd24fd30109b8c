using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Respond;

/// <summary>Writes an answer of the first look: all its entries with one time, taken back together.</summary>
public sealed class LookTaken(CareDesk desk, Logbook logbook, Session session)
{
    /// <param name="injured">When they came to harm, where the answer asks for it.</param>
    public async Task<bool> LogAsync(CasualtyHead open, LookAnswer answer, InjuryTime? injured = null)
    {
        var now = session.Now;
        var said = answer
            .Entries.Select(e => (e, e is Payload.InjuryStated && injured is not null ? injured.Before(now) : Happened.At(now)))
            .ToImmutableArray();
        if (answer.Person is { } facts && Amended(facts) is { } amended)
            said = said.Insert(0, (amended, Happened.At(now)));
        return said.IsEmpty || await logbook.LogAllAsync(open, answer.Text, said);
    }

    /// <summary>The casualty's own entry with what was said; null where it says that already, or there is none.</summary>
    private Payload.EntryAmended? Amended(PersonFacts facts)
    {
        var record = desk.Record!;
        if (record.Readings[0].Of(Kind.CasualtyOpened) is not [.., var opened] || Correction.Of(record, opened.Id) is not { } correction)
            return null;
        var draft = correction.Draft;
        if (facts.NothingTaken == true)
            draft = draft.Set("allergies", draft["allergies"] ?? "[]").Set("medicines", draft["medicines"] ?? "[]");
        if (facts.Pregnant is { } pregnant)
            draft = draft.Set("pregnant", pregnant ? "true" : "false");
        return correction.To(draft, null);
    }
}
