using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>The rest of the casualty, looked over; what was not looked at is null.</summary>
    public sealed record CasualtyLookedOver(
        bool? BleedingElsewhere = null,
        bool? TrunkWound = null,
        bool? BreathingHard = null,
        bool? VeryCold = null,
        bool? BloodThinner = null
    ) : Payload
    {
        internal override Kind OfKind => Records.Kind.CasualtyLookedOver;

        internal static CasualtyLookedOver Through(FieldCodec f, CasualtyLookedOver? p) =>
            new(
                f.Flag(Field.BleedingElsewhere, p?.BleedingElsewhere),
                f.Flag(Field.TrunkWound, p?.TrunkWound),
                f.Flag(Field.BreathingHard, p?.BreathingHard),
                f.Flag(Field.VeryCold, p?.VeryCold),
                f.Flag(Field.BloodThinner, p?.BloodThinner)
            );

        internal override string Said(DateTimeZone? zone)
        {
            var all = EntryWords.Listed(
                [
                    YesNo(RecordTexts.BleedingElsewhere, BleedingElsewhere),
                    YesNo(RecordTexts.TrunkWound, TrunkWound),
                    YesNo(RecordTexts.BreathingHard, BreathingHard, RecordTexts.Not),
                    YesNo(RecordTexts.VeryCold, VeryCold, RecordTexts.Not),
                    YesNo(RecordTexts.BloodThinner, BloodThinner),
                ],
                ", "
            );
            return RecordTexts.LookedOver(all.Length == 0 ? RecordTexts.NothingRecorded : all);

            // The answer first: cut short, a "no" behind its question reads as what it denies.
            static string? YesNo(string what, bool? flag, string? no = null) =>
                flag is { } known
                    ? known
                        ? what
                        : $"{no ?? RecordTexts.NoAnswer} {what}"
                    : null;
        }
    }
}
