using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record FluidGiven(Fluid Fluid, double Millilitres, string Route) : Payload
    {
        internal override Kind OfKind => Records.Kind.FluidGiven;

        internal static FluidGiven Through(FieldCodec f, FluidGiven? p) =>
            new(
                f.RequiredWord(Field.Fluid, p?.Fluid),
                f.RequiredNumber(FieldRange.Millilitres, Field.Millilitres, p?.Millilitres),
                f.RequiredName(Field.Route, p?.Route)
            );

        internal override string Said(DateTimeZone? zone) => RecordTexts.FluidGiven(Say.Number(Millilitres), EntryWords.Word(Fluid), Route);
    }
}
