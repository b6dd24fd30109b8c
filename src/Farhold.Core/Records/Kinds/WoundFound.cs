using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>A wound on a limb or in a region: exactly one of the two is set.</summary>
    public sealed record WoundFound(
        string Wound,
        Limb? Limb,
        BodyRegion? Region,
        WoundNature Nature,
        string? Note = null,
        BodySide? Side = null,
        BodyFace? Face = null
    ) : Payload
    {
        internal override Kind OfKind => Records.Kind.WoundFound;

        internal static WoundFound Through(FieldCodec f, WoundFound? p)
        {
            f.OneOf(Field.Limb, Field.Region, "a wound is on one limb or in one region: give exactly one of limb and region");
            return new(
                f.RequiredName(Field.Wound, p?.Wound),
                f.Word(Field.Limb, p?.Limb),
                f.Word(Field.Region, p?.Region),
                f.RequiredWord(Field.Nature, p?.Nature),
                f.Text(Field.Note, p?.Note),
                f.Word(Field.Side, p?.Side),
                f.Word(Field.Face, p?.Face)
            );
        }

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.WoundFound(Wound, EntryWords.Place(Limb, Region), On, EntryWords.Word(Nature), EntryWords.Note(Note));

        /// <summary>", left, at the back"</summary>
        private string On =>
            (Side is { } side ? $", {EntryWords.Word(side)}" : "")
            + (Face is { } face ? RecordTexts.WoundAtFace(EntryWords.Word(face)) : "");
    }
}
