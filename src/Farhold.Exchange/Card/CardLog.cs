using System.Collections.Immutable;

namespace Farhold.Exchange.Card;

/// <summary>The whole log: nothing that was written is missing from the card.</summary>
internal static class CardLog
{
    public static ImmutableArray<CardPart> Of(CareRecord record, CardTimes times) =>
        [
            new CardPart.Heading(CardTexts.LogHead),
            .. LogText.Lines(record).SelectMany(l => Line(l, record.Conflicts, times)),
            .. record.Damaged.Select(d => new CardPart.Said(
                CardTexts.Line(Say.Number(d.Number)),
                Plain.Line(CardTexts.Unreadable(d.Refusals[0].Reason, Cut(d.Raw.ToString()))),
                Strong: true
            )),
        ];

    private static IEnumerable<CardPart> Line(LogLine line, IReadOnlyCollection<EntryId> conflicts, CardTimes times)
    {
        var marks = (line.Withdrawn ? CardTexts.Withdrawn : "") + (conflicts.Contains(line.Entry.Id) ? CardTexts.TwoUnderThisId : "");
        var late = line.When.IsInstant && line.When.Latest == line.Entry.Recorded ? "" : CardTexts.Written(times.Of(line.Entry.Recorded));
        var entered = line.Entry.Happened == line.When ? "" : CardTexts.EnteredAs(times.Of(line.Entry.Happened));
        yield return new CardPart.Said(
            times.Of(line.When),
            Plain.Line($"{marks}{line.Text} ({line.Entry.By}, {line.Entry.Id}{late}{entered})")
        );
        foreach (var change in line.Changes)
            yield return new CardPart.Said("", change, Strong: true);
    }

    private static string Cut(string raw) => raw.Length > 200 ? raw[..200] + " …" : raw;
}
