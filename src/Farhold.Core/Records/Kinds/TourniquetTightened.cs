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
        TighteningReason? Why = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.TourniquetTightened;

        internal static TourniquetTightened Through(FieldCodec f, TourniquetTightened? p) => new(
            f.RequiredName(Field.Tourniquet, p?.Tourniquet),
            f.RequiredWord(Field.Limb, p?.Limb),
            f.Text(Field.Place, p?.Place),
            f.Word(Field.Make, p?.Make),
            f.Name(Field.Wound, p?.Wound),
            f.Word(Field.Why, p?.Why));

        internal override string Said(DateTimeZone? zone)
        {
            var why = Why switch
            {
                TighteningReason.Bleeding => "because it bled",
                TighteningReason.Precaution => "as a precaution",
                TighteningReason.ReSited => "re-sited",
                _ => null,
            };
            var more = EntryWords.Listed(
                [Place, Make is { } make ? EntryWords.Word(make) : null, Wound is { } w ? $"for wound {w}" : null, why], "; ");
            return $"Tourniquet {Tourniquet} tightened on the {Say.Limb(Limb)}{(more.Length == 0 ? "" : $" ({more})")}";
        }
    }
}
