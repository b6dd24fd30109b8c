using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>Replaces fields of another entry; the replacing values are kept as the JSON they came in.</summary>
    public sealed record EntryAmended(EntryId Target, JsonText Replace) : Payload
    {
        internal override Kind OfKind => Records.Kind.EntryAmended;

        internal static EntryAmended Through(FieldCodec f, EntryAmended? p) =>
            new(f.RequiredId(Field.Target, p?.Target), f.RequiredJsonObject(Field.Replace, p?.Replace));

        internal override string Said(DateTimeZone? zone) => RecordTexts.Corrects(Target.ToString(), AmendmentWords.InWords(Replace, zone));
    }
}
