using System.Diagnostics;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>A step of the first look was answered. What was found stands in entries of its own beside it.</summary>
    public sealed record StepLooked(LookStep Step, StepFound Found, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.StepLooked;

        internal static StepLooked Through(FieldCodec f, StepLooked? p) =>
            new(f.RequiredWord(Field.Step, p?.Step), f.RequiredWord(Field.Found, p?.Found), f.Text(Field.Note, p?.Note));

        internal override string Said(DateTimeZone? zone)
        {
            var found = Found switch
            {
                StepFound.Nothing => RecordTexts.StepNothing,
                StepFound.Something => RecordTexts.StepSomething,
                StepFound.NotLooked => RecordTexts.StepNotLooked,
                _ => throw new UnreachableException(),
            };
            return RecordTexts.StepLooked(EntryWords.Word(Step), found, EntryWords.Note(Note));
        }
    }
}
