using System.Collections.Immutable;

namespace Farhold.Drugs;

/// <summary>What in an entry looks like a slip or a mixed-up unit: asked back before it is logged, never refused.</summary>
/// <remarks>
/// The ranges are design, wide enough that hardly anyone is asked in vain and narrow enough for g taken for mg and lb for kg. Those of
/// signs and masses are in <see cref="SignBounds"/> and <see cref="MassBounds"/>, which the judging of the record goes by too.
/// </remarks>
public static class Plausible
{
    /// <summary>Times the largest dose known that a dose may be before it is asked about.</summary>
    public const double MostDoses = 2;

    /// <summary>Part of the smallest dose known below which a dose is asked about.</summary>
    public const double LeastDose = 0.1;

    /// <param name="person">Who it is given to, as far as known.</param>
    /// <returns>A sentence for each slip; empty where nothing looks odd.</returns>
    public static ImmutableArray<string> Slips(Payload what, Payload.CasualtyOpened? person, Formulary formulary) =>
        what switch
        {
            Payload.CasualtyOpened p => [.. Of(p)],
            Payload.DrugGiven p => [.. Of(p, person, formulary)],
            Payload.FluidGiven p => [.. Volume(p.Millilitres, 10, 2000, DrugTexts.AtOneTime)],
            Payload.UrineMeasured p => [.. Volume(p.Millilitres, 5, 1500, DrugTexts.UrineAtOneTime)],
            Payload.SuppliesStated { Count: > 0 and < 100 } p when p.Item.EndsWith("-ml", StringComparison.Ordinal) =>
            [
                DrugTexts.FewMouthfuls(p.Count),
            ],
            Payload.SignsTaken p => [.. Implausible.Of(p, person?.AgeYears).Select(o => o.Text).Distinct()],
            _ => [],
        };

    private static IEnumerable<string> Of(Payload.CasualtyOpened p)
    {
        if (p.AgeYears is > 105)
            yield return DrugTexts.VeryOld(Say.Number(p.AgeYears.Value));
        if (p.MassKg is not { } mass)
            yield break;
        var usual = MassBounds.Usual(p.AgeYears);
        var whom = p.AgeYears is { } years ? DrugTexts.AtYears(Say.Number(years)) : "";
        if (mass < usual.Low)
            yield return DrugTexts.VeryLight(Say.Number(mass), whom);
        if (mass > usual.High)
            yield return DrugTexts.VeryHeavy(
                BodyMass.InBothUnits(mass),
                whom,
                Say.Number(mass),
                Say.Number(Math.Round(mass * BodyMass.KilogramsPerPound))
            );
    }

    private static IEnumerable<string> Of(Payload.DrugGiven p, Payload.CasualtyOpened? person, Formulary formulary)
    {
        if (p.Amount <= 0)
            yield return DrugTexts.AmountZero;
        if (DrugUnit.Milligrams(p.Amount, p.Unit) is not { } mg)
        {
            yield return DrugTexts.NoUnitOfMass(Plain.Line(p.Unit));
            yield break;
        }

        if (formulary.Named(p.Drug) is not { } drug)
        {
            if (mg > 10_000)
                yield return DrugTexts.GreatDeal(DrugUnit.Say(mg));
            yield break;
        }

        var doses = drug
            .Regimens.Where(r => person?.AgeYears is not { } age || (age >= r.FromYears && age < r.UnderYears))
            .DefaultIfEmpty(drug.Regimens[0])
            .Select(r => Dose(r, person?.MassKg))
            .ToArray();
        var (least, most) = (doses.Min(d => d.Low), doses.Max(d => d.High));
        if (mg > MostDoses * most)
            yield return DrugTexts.MoreThanLargest(DrugUnit.Say(mg), Say.Number(MostDoses), drug.Id);
        if (mg > 0 && mg < LeastDose * least)
            yield return DrugTexts.LessThanSmallest(DrugUnit.Say(mg), drug.Id);
    }

    /// <summary>By mass without a mass: from that of a newborn to the cap.</summary>
    private static Between Dose(Regimen regimen, double? massKg)
    {
        if (regimen.FixedMg is { } fixedMg)
            return new(Math.Min(fixedMg.Low, regimen.MostMg), Math.Min(fixedMg.High, regimen.MostMg));
        var perKg = regimen.MgPerKg!.Value;
        return massKg is { } mass
            ? new(Math.Min(perKg.Low * mass, regimen.MostMg), Math.Min(perKg.High * mass, regimen.MostMg))
            : new(Math.Min(perKg.Low * 3, regimen.MostMg), regimen.MostMg);
    }

    private static IEnumerable<string> Volume(double millilitres, double least, double most, string what)
    {
        if (millilitres < least)
            yield return DrugTexts.VeryLittleVolume(Say.Number(millilitres));
        if (millilitres > most)
            yield return DrugTexts.GreatVolume(Say.Number(millilitres), what);
    }
}
