using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <param name="Casualty">128 random bits in base32: who this is, on whatever device; null in records that have none.</param>
    public sealed record CasualtyOpened(
        string Alias,
        Sex? Sex = null,
        double? AgeYears = null,
        double? MassKg = null,
        ImmutableArray<string> Allergies = default,
        ImmutableArray<string> Medicines = default,
        string? History = null,
        string? Casualty = null,
        bool? Pregnant = null
    ) : Payload
    {
        internal override Kind OfKind => Records.Kind.CasualtyOpened;

        internal static CasualtyOpened Through(FieldCodec f, CasualtyOpened? p) =>
            new(
                Casualty: f.Name(Field.Casualty, p?.Casualty),
                Alias: f.RequiredText(Field.Alias, p?.Alias),
                Sex: f.Word(Field.Sex, p?.Sex),
                AgeYears: f.Number(FieldRange.AgeYears, Field.AgeYears, p?.AgeYears),
                MassKg: f.Number(FieldRange.MassKg, Field.MassKg, p?.MassKg),
                Allergies: f.Texts(Field.Allergies, p?.Allergies ?? default),
                Medicines: f.Texts(Field.Medicines, p?.Medicines ?? default),
                History: f.Text(Field.History, p?.History),
                Pregnant: f.Flag(Field.Pregnant, p?.Pregnant)
            );

        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.Casualty
            + EntryWords.Listed(
                [
                    Alias,
                    Sex is { } sex ? EntryWords.Word(sex) : null,
                    AgeYears is { } age ? RecordTexts.Years(Say.Number(age)) : null,
                    MassKg is { } mass ? RecordTexts.Kilograms(Say.Number(mass)) : null,
                    Pregnant is { } pregnant ? (pregnant ? RecordTexts.Pregnant : RecordTexts.NotPregnant) : null,
                    All(RecordTexts.Allergies, Allergies),
                    All(RecordTexts.Medicines, Medicines),
                    History is { } history ? RecordTexts.History(history) : null,
                ],
                ", "
            );

        private static string? All(string what, ImmutableArray<string> items) =>
            items.IsDefault ? null
            : items.IsEmpty ? RecordTexts.ListNone(what)
            : $"{what}: {string.Join(RecordTexts.And, items)}";
    }
}
