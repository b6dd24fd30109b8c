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
        string? Casualty = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.CasualtyOpened;

        internal static CasualtyOpened Through(FieldCodec f, CasualtyOpened? p) => new(
            Casualty: f.Name(Field.Casualty, p?.Casualty),
            Alias: f.RequiredText(Field.Alias, p?.Alias),
            Sex: f.Word(Field.Sex, p?.Sex),
            AgeYears: f.Number(FieldRange.AgeYears, Field.AgeYears, p?.AgeYears),
            MassKg: f.Number(FieldRange.MassKg, Field.MassKg, p?.MassKg),
            Allergies: f.Texts(Field.Allergies, p?.Allergies ?? default),
            Medicines: f.Texts(Field.Medicines, p?.Medicines ?? default),
            History: f.Text(Field.History, p?.History));

        internal override string Said(DateTimeZone? zone) => "Casualty " + EntryWords.Listed(
            [
                Alias,
                Sex is { } sex ? EntryWords.Word(sex) : null,
                AgeYears is { } age ? $"{Say.Number(age)} years" : null,
                MassKg is { } mass ? $"{Say.Number(mass)} kg" : null,
                All("allergies", Allergies),
                All("medicines", Medicines),
                History is { } history ? $"history: {history}" : null,
            ],
            ", ");

        private static string? All(string what, ImmutableArray<string> items) =>
            items.IsDefault ? null : items.IsEmpty ? $"{what}: none" : $"{what}: {string.Join(" and ", items)}";
    }
}
