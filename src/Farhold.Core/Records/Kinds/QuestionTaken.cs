using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>Somebody is on a question, and everybody sees who; an answer is still to come.</summary>
    /// <param name="Answers">The question.</param>
    public sealed record QuestionTaken(EntryId Answers, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.QuestionTaken;

        internal static QuestionTaken Through(FieldCodec f, QuestionTaken? p) =>
            new(f.RequiredId(Field.Answers, p?.Answers), f.Text(Field.Note, p?.Note));

        internal override string Said(DateTimeZone? zone) => RecordTexts.QuestionTaken(Answers.ToString(), EntryWords.Note(Note));
    }
}
