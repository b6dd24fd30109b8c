using System.Diagnostics;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record BleedingChecked(string Wound, Bleeding Bleeding) : Payload
    {
        internal override Kind OfKind => Records.Kind.BleedingChecked;

        internal static BleedingChecked Through(FieldCodec f, BleedingChecked? p) =>
            new(f.RequiredName(Field.Wound, p?.Wound), f.RequiredWord(Field.Bleeding, p?.Bleeding));

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.WoundLooked(Wound)
            + Bleeding switch
            {
                Bleeding.None => RecordTexts.NoBleeding,
                Bleeding.Oozing => RecordTexts.Oozing,
                Bleeding.Active => RecordTexts.Bleeding,
                _ => throw new UnreachableException(),
            };
    }
}
