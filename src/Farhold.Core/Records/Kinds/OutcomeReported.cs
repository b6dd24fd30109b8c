using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>What came of it, as <paramref name="From"/> reports later; may come after care has ended.</summary>
    /// <param name="Limb">Set together with <paramref name="LimbOutcome"/>.</param>
    public sealed record OutcomeReported(
        string From,
        bool? Survived = null,
        Limb? Limb = null,
        LimbFate? LimbOutcome = null,
        string? Note = null,
        string? Level = null,
        bool? Fasciotomy = null,
        NerveFate? Nerve = null,
        KidneyFate? Kidney = null,
        bool? Infection = null,
        double? HospitalDays = null
    ) : Payload
    {
        internal override Kind OfKind => Records.Kind.OutcomeReported;

        internal static OutcomeReported Through(FieldCodec f, OutcomeReported? p)
        {
            f.Together(Field.Limb, Field.LimbOutcome);
            return new(
                f.RequiredText(Field.From, p?.From),
                f.Flag(Field.Survived, p?.Survived),
                f.Word(Field.Limb, p?.Limb),
                f.Word(Field.LimbOutcome, p?.LimbOutcome),
                f.Text(Field.Note, p?.Note),
                f.Text(Field.Level, p?.Level),
                f.Flag(Field.Fasciotomy, p?.Fasciotomy),
                f.Word(Field.Nerve, p?.Nerve),
                f.Word(Field.Kidney, p?.Kidney),
                f.Flag(Field.Infection, p?.Infection),
                f.Number(FieldRange.HospitalDays, Field.HospitalDays, p?.HospitalDays)
            );
        }

        internal override string Said(DateTimeZone? zone)
        {
            var all = EntryWords.Listed(
                [
                    Survived is { } survived ? (survived ? RecordTexts.Survived : RecordTexts.Died) : null,
                    Limb is { } limb && LimbOutcome is { } outcome
                        ? $"{Say.Limb(limb)} {EntryWords.Word(outcome)}{(Level is null ? "" : $", {Level}")}"
                        : null,
                    Fasciotomy is { } opened ? (opened ? RecordTexts.FasciotomyDone : RecordTexts.NoFasciotomy) : null,
                    Nerve switch
                    {
                        NerveFate.Unharmed => RecordTexts.NervesUnharmed,
                        NerveFate.Recovered => RecordTexts.NervesRecovered,
                        NerveFate.Lasting => RecordTexts.NervesLasting,
                        _ => null,
                    },
                    Kidney switch
                    {
                        KidneyFate.Unharmed => RecordTexts.KidneysUnharmed,
                        KidneyFate.Injured => RecordTexts.KidneysInjured,
                        KidneyFate.Dialysis => RecordTexts.Dialysis,
                        _ => null,
                    },
                    Infection is { } infected ? (infected ? RecordTexts.WoundInfected : RecordTexts.NoInfection) : null,
                    HospitalDays is { } days ? RecordTexts.HospitalDays(Say.Number(days)) : null,
                ],
                ", "
            );
            return RecordTexts.Outcome(From, all.Length == 0 ? RecordTexts.NothingRecorded : all, EntryWords.Note(Note));
        }
    }
}
