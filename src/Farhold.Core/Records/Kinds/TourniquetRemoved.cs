using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record TourniquetRemoved(string Tourniquet) : Payload
    {
        internal override Kind OfKind => Records.Kind.TourniquetRemoved;

        internal static TourniquetRemoved Through(FieldCodec f, TourniquetRemoved? p) =>
            new(f.RequiredName(Field.Tourniquet, p?.Tourniquet));

        internal override string Said(DateTimeZone? zone) => RecordTexts.TourniquetRemoved(Tourniquet);
    }
}
