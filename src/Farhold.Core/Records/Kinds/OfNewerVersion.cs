using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>An entry of a kind this version does not know: kept, shown, and counted in nothing.</summary>
    public sealed record OfNewerVersion(string Kind) : Payload
    {
        internal override Kind OfKind => Records.Kind.OfNewerVersion;

        internal static OfNewerVersion Through(FieldCodec f, OfNewerVersion? p) => new(f.UnknownKind(p?.Kind));

        internal override string Said(DateTimeZone? zone) => RecordTexts.OfNewerVersion(Kind);
    }
}
