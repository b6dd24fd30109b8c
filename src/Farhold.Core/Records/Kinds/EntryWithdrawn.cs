using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record EntryWithdrawn(EntryId Target, string Reason) : Payload
    {
        internal override Kind OfKind => Records.Kind.EntryWithdrawn;

        internal static EntryWithdrawn Through(FieldCodec f, EntryWithdrawn? p) =>
            new(f.RequiredId(Field.Target, p?.Target), f.RequiredText(Field.Reason, p?.Reason));

        internal override string Said(DateTimeZone? zone) => RecordTexts.Withdraws(Target.ToString(), Reason);
    }
}
