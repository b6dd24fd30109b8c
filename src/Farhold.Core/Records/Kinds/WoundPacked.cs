using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record WoundPacked(string Wound, PackingMaterial Material) : Payload
    {
        internal override Kind OfKind => Records.Kind.WoundPacked;

        internal static WoundPacked Through(FieldCodec f, WoundPacked? p) =>
            new(f.RequiredName(Field.Wound, p?.Wound), f.RequiredWord(Field.Material, p?.Material));

        internal override string Said(DateTimeZone? zone) => RecordTexts.WoundPacked(Wound, EntryWords.Word(Material));
    }
}
