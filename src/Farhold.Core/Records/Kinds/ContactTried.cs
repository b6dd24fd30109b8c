using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>Somebody tried to reach medical advice.</summary>
    /// <param name="How">By phone, radio, satellite message.</param>
    public sealed record ContactTried(bool Reached, string? Who = null, string? How = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.ContactTried;

        internal static ContactTried Through(FieldCodec f, ContactTried? p) =>
            new(f.RequiredFlag(Field.Reached, p?.Reached), f.Text(Field.Who, p?.Who), f.Text(Field.How, p?.How));

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.ContactTried(
                Who is null ? "" : $" ({Who})",
                How is null ? "" : RecordTexts.ContactBy(How),
                Reached ? RecordTexts.Reached : RecordTexts.NobodyReached
            );
    }
}
