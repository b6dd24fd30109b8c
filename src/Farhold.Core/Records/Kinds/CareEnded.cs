using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record CareEnded(CareEnd How, string? To = null, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.CareEnded;

        internal static CareEnded Through(FieldCodec f, CareEnded? p) =>
            new(f.RequiredWord(Field.How, p?.How), f.Text(Field.To, p?.To), f.Text(Field.Note, p?.Note));

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.CareEnded(EntryWords.Word(How), To is null ? "" : RecordTexts.CareEndedTo(To), EntryWords.Note(Note));
    }
}
