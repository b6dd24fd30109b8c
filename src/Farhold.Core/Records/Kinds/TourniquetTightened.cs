using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record TourniquetTightened(
        string Tourniquet,
        Limb Limb,
        string? Place = null,
        TourniquetMake? Make = null,
        string? Wound = null,
        TighteningReason? Why = null,
        TourniquetSite? Site = null,
        bool? OnSkin = null
    ) : Payload
    {
        internal override Kind OfKind => Records.Kind.TourniquetTightened;

        internal static TourniquetTightened Through(FieldCodec f, TourniquetTightened? p) =>
            new(
                f.RequiredName(Field.Tourniquet, p?.Tourniquet),
                f.RequiredWord(Field.Limb, p?.Limb),
                f.Text(Field.Place, p?.Place),
                f.Word(Field.Make, p?.Make),
                f.Name(Field.Wound, p?.Wound),
                f.Word(Field.Why, p?.Why),
                f.Word(Field.Site, p?.Site),
                f.Flag(Field.OnSkin, p?.OnSkin)
            );

        internal override string Said(DateTimeZone? zone)
        {
            var why = Why switch
            {
                TighteningReason.Bleeding => RecordTexts.TightenedItBled,
                TighteningReason.Precaution => RecordTexts.TightenedPrecaution,
                TighteningReason.ReSited => RecordTexts.TightenedReSited,
                _ => null,
            };
            var site = Site switch
            {
                TourniquetSite.AboveWound => RecordTexts.SiteAboveWound,
                TourniquetSite.High => RecordTexts.SiteHigh,
                TourniquetSite.OverJoint => RecordTexts.SiteOverJoint,
                _ => null,
            };
            var skin = OnSkin is { } bare ? (bare ? RecordTexts.OnSkin : RecordTexts.OverClothing) : null;
            var more = EntryWords.Listed(
                [Place, site, skin, Make is { } make ? EntryWords.Word(make) : null, Wound is { } w ? RecordTexts.ForWound(w) : null, why],
                "; "
            );
            return RecordTexts.TourniquetTightened(Tourniquet, Say.Limb(Limb), more.Length == 0 ? "" : $" ({more})");
        }
    }
}
