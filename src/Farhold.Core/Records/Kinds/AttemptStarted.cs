using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record AttemptStarted(string Wound, string Tourniquet) : Payload
    {
        internal override Kind OfKind => Records.Kind.AttemptStarted;

        internal static AttemptStarted Through(FieldCodec f, AttemptStarted? p) =>
            new(f.RequiredName(Field.Wound, p?.Wound), f.RequiredName(Field.Tourniquet, p?.Tourniquet));

        internal override string Said(DateTimeZone? zone) => RecordTexts.AttemptStarted(Tourniquet, Wound);
    }
}
