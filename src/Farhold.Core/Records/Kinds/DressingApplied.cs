using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record DressingApplied(string Wound, DressingKind Dressing) : Payload
    {
        internal override Kind OfKind => Records.Kind.DressingApplied;

        internal static DressingApplied Through(FieldCodec f, DressingApplied? p) =>
            new(f.RequiredName(Field.Wound, p?.Wound), f.RequiredWord(Field.Dressing, p?.Dressing));

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.DressingOn(Dressing == DressingKind.Pressure ? RecordTexts.DressingPressure : RecordTexts.DressingPlain, Wound);
    }
}
