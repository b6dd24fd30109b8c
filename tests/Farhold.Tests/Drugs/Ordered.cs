using System.Collections.Immutable;
using System.Text;

namespace Farhold.Tests.Drugs;

/// <summary>Every drug ordered, by an invented authority: what then speaks against one is the record alone.</summary>
internal static class Ordered
{
    public static readonly Formulary Formulary = ShippedFormulary.Formulary;

    public static readonly Protocol Protocol = Assert
        .IsType<Read<Protocol>.Usable>(
            Protocols.LocalFile.Read(
                Encoding.UTF8.GetBytes(
                    $$"""
                    {"local":"x","version":"1","title":"X","over":"farhold-base",
                     "authority":{"name":"Dr Vigdis Holm (invented)","role":"medical lead","date":"2031-01-10"},
                     "orders":[{{string.Join(',', Formulary.Drugs.Select(d => $"\"{d.Id}\""))}}]}
                    """
                )
            )
        )
        .Value;

    public static readonly Rulebook Book = ShippedRules.Book.By(Protocol);

    public static DoseAnswer Dose(string drug, CareRecord record) => Dosing.Of(Formulary.Named(drug)!, record, Book, Case.Now);

    public static ImmutableArray<(Drug Drug, DoseAnswer Answer)> Doses(CareRecord record, Instant? now = null, Rulebook? by = null) =>
        Dosing.Of(Formulary.Drugs, record, Judge.At(record, by ?? Book, now ?? Case.Now));

    public static Judgement Judged(Case casualty) => Judge.At(casualty.Record, Book, Case.Now);

    public static DoseAnswer Dose(string drug, Case casualty) => Dose(drug, casualty.Record);

    /// <summary>
    /// In pain, bled, asked about everything, somebody watching, naloxone at hand: only age and mass speak for or against anything.
    /// </summary>
    public static Case Casualty(
        double? age = 30,
        double? mass = 70,
        Sex? sex = Sex.Male,
        string? history = "otherwise healthy",
        string[]? allergies = null,
        string[]? medicines = null
    ) =>
        Case
            .Well.With("person", new Payload.CasualtyOpened("Runa", sex, age, mass, [.. allergies ?? []], [.. medicines ?? []], history))
            .Signs(s => s with { Pain = 6 })
            .And("00:08", new Payload.SuppliesStated("naloxone", 2));

    /// <summary>Why a drug is not given, or what has to be looked at, or why advice is asked.</summary>
    public static string Reasons(DoseAnswer answer) =>
        answer switch
        {
            DoseAnswer.Not not => string.Join("; ", not.Because),
            DoseAnswer.LookFirst look => string.Join("; ", look.What),
            DoseAnswer.AskForAdvice ask => ask.Why,
            DoseAnswer.Wait wait => wait.Why,
            _ => "",
        };
}
