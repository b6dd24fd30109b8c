using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record UrineMeasured(double Millilitres) : Payload
    {
        internal override Kind OfKind => Records.Kind.UrineMeasured;

        internal static UrineMeasured Through(FieldCodec f, UrineMeasured? p) =>
            new(f.RequiredNumber(FieldRange.Millilitres, Field.Millilitres, p?.Millilitres));

        internal override string Said(DateTimeZone? zone) => RecordTexts.Urine(Say.Number(Millilitres));
    }
}
