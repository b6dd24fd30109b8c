using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record NoteWritten(string Text) : Payload
    {
        internal override Kind OfKind => Records.Kind.Note;

        internal static NoteWritten Through(FieldCodec f, NoteWritten? p) => new(f.RequiredText(Field.Text, p?.Text));

        internal override string Said(DateTimeZone? zone) => RecordTexts.Note(Text);
    }
}
