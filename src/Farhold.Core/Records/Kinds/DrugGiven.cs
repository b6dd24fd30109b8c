using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record DrugGiven(string Drug, double Amount, string Unit, string Route, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.DrugGiven;

        internal static DrugGiven Through(FieldCodec f, DrugGiven? p) =>
            new(
                f.RequiredText(Field.Drug, p?.Drug),
                f.RequiredNumber(FieldRange.Amount, Field.Amount, p?.Amount),
                f.RequiredName(Field.Unit, p?.Unit),
                f.RequiredName(Field.Route, p?.Route),
                f.Text(Field.Note, p?.Note)
            );

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.DrugGiven(Drug, Say.Number(Amount), Unit, Route, EntryWords.Note(Note));
    }
}
