using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>Slackened and left loosely in place.</summary>
    public sealed record TourniquetSlackened(string Tourniquet) : Payload
    {
        internal override Kind OfKind => Records.Kind.TourniquetSlackened;

        internal static TourniquetSlackened Through(FieldCodec f, TourniquetSlackened? p) =>
            new(f.RequiredName(Field.Tourniquet, p?.Tourniquet));

        internal override string Said(DateTimeZone? zone) => RecordTexts.TourniquetSlackened(Tourniquet);
    }
}
