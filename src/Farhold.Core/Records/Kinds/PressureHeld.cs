using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <param name="Minutes">At least so long.</param>
    /// <param name="Counted">Counted by the phone from what came before, since both hands were on the wound; nobody said it.</param>
    public sealed record PressureHeld(string Wound, double Minutes, bool? Counted = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.PressureHeld;

        internal static PressureHeld Through(FieldCodec f, PressureHeld? p) =>
            new(
                f.RequiredName(Field.Wound, p?.Wound),
                f.RequiredNumber(FieldRange.Minutes, Field.Minutes, p?.Minutes),
                f.Flag(Field.Counted, p?.Counted)
            );

        internal override string Said(DateTimeZone? zone) =>
            Counted == true
                ? RecordTexts.PressureCounted(Wound, Say.Number(Minutes))
                : RecordTexts.PressureHeld(Wound, Say.Number(Minutes));
    }
}
