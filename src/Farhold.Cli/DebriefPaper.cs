using System.Collections.Immutable;
using Farhold.Documents.Card;
using Farhold.Exchange.Card;
using Farhold.Exchange.Evidence;
using Farhold.Rehearsal.Debriefs;
using Farhold.Rehearsal.Pictures;
using NodaTime;

namespace Farhold.Cli;

/// <summary>A debrief on paper: its words, and what its pictures show as tables, by the way of the card.</summary>
internal static class DebriefPaper
{
    /// <summary>Of the tables that stand for pictures; no line is broken by it.</summary>
    private const double Width = 720;

    /// <param name="record">That the debrief is of.</param>
    /// <param name="at">The file's date.</param>
    public static byte[] Write(Debrief debrief, CareRecord record, Instant at) =>
        CardPdf.Write(
            new(
                debrief.Session.Scenario.ShownTitle,
                debrief.Session.Scenario.Id,
                Practice: true,
                Fingerprint.Of(record),
                [.. DebriefText.Intro(debrief).Select(Line)],
                [.. DebriefText.Parts(debrief).SelectMany(p => p.Lines.Select(Line).Prepend(new CardPart.Heading(p.Title)))],
                [.. DebriefPictures.Draw(debrief, Width).SelectMany(Table)]
            ),
            Paper.A4,
            at
        );

    private static CardPart Line(string text) => new CardPart.Said("", Plain.Line(text.Trim()));

    private static IEnumerable<CardPart> Table(DebriefPicture picture) =>
        [new CardPart.Heading(picture.Title), new CardPart.Table(picture.Table.Heads, picture.Table.Rows)];
}
