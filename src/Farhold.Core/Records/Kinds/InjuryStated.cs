using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>How the casualty came to harm. When the entry happened is when that was, as a range where nobody knows better.</summary>
    public sealed record InjuryStated(Mechanism Mechanism, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.InjuryStated;

        internal static InjuryStated Through(FieldCodec f, InjuryStated? p) =>
            new(f.RequiredWord(Field.Mechanism, p?.Mechanism), f.Text(Field.Note, p?.Note));

        internal override string Said(DateTimeZone? zone) => RecordTexts.Injured(EntryWords.Word(Mechanism), EntryWords.Note(Note));
    }
}
