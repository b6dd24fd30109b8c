using System.Diagnostics;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record AttemptEnded(string Wound, string Tourniquet, AttemptOutcome Outcome, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.AttemptEnded;

        internal static AttemptEnded Through(FieldCodec f, AttemptEnded? p) =>
            new(
                f.RequiredName(Field.Wound, p?.Wound),
                f.RequiredName(Field.Tourniquet, p?.Tourniquet),
                f.RequiredWord(Field.Outcome, p?.Outcome),
                f.Text(Field.Note, p?.Note)
            );

        internal override string Said(DateTimeZone? zone)
        {
            var ended = Outcome switch
            {
                AttemptOutcome.Held => RecordTexts.AttemptHeld,
                AttemptOutcome.Bled => RecordTexts.AttemptBled,
                AttemptOutcome.Abandoned => RecordTexts.AttemptAbandoned,
                _ => throw new UnreachableException(),
            };
            return RecordTexts.AttemptEnded(Tourniquet, ended, EntryWords.Note(Note));
        }
    }
}
