using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record PressureHeld(string Wound, double Minutes) : Payload
    {
        internal override Kind OfKind => Records.Kind.PressureHeld;

        internal static PressureHeld Through(FieldCodec f, PressureHeld? p) =>
            new(f.RequiredName(Field.Wound, p?.Wound), f.RequiredNumber(FieldRange.Minutes, Field.Minutes, p?.Minutes));

        internal override string Said(DateTimeZone? zone) => $"Pressure held on wound {Wound} for {Say.Number(Minutes)} min";
    }
}
