using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record SuppliesStated(string Item, int Count) : Payload
    {
        internal override Kind OfKind => Records.Kind.SuppliesStated;

        internal static SuppliesStated Through(FieldCodec f, SuppliesStated? p) =>
            new(f.RequiredName(Field.Item, p?.Item), (int)f.RequiredNumber(FieldRange.Count, Field.Count, p?.Count));

        internal override string Said(DateTimeZone? zone) => RecordTexts.Supplies(Count, Item.Replace('-', ' '));
    }
}
