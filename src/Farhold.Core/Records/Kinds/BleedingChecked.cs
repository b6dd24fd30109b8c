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

        internal override string Said(DateTimeZone? zone) => $"Wound {Wound} looked at: " + Bleeding switch
        {
            Bleeding.None => "no bleeding",
            Bleeding.Oozing => "oozing",
            Bleeding.Active => "bleeding",
            _ => throw new UnreachableException(),
        };
    }
}
