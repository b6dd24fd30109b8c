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
    /// <returns>A sentence for each doubt; empty where nothing looks odd.</returns>
    public static ImmutableArray<string> Doubts(Payload what, Payload.CasualtyOpened? person, Formulary formulary) => what switch
    {
        Payload.CasualtyOpened p => [.. Of(p)],
        Payload.DrugGiven p => [.. Of(p, person, formulary)],
        Payload.FluidGiven p => [.. Volume(p.Millilitres, 10, 2000, "at one time")],
        Payload.UrineMeasured p => [.. Volume(p.Millilitres, 5, 1500, "of urine at one time")],
        Payload.SuppliesStated { Count: > 0 and < 100 } p when p.Item.EndsWith("-ml", StringComparison.Ordinal) =>
            [$"{p.Count} mL is a few mouthfuls. It is counted in mL: 2 L are 2000."],
        Payload.SignsTaken p => [.. Implausible.Of(p, person?.AgeYears).Select(o => o.Text).Distinct()],
        _ => [],
    };

    private static IEnumerable<string> Of(Payload.CasualtyOpened p)
    {
        if (p.AgeYears is > 105)
            yield return $"{Say.Number(p.AgeYears.Value)} years is very old. Is it in years?";
        if (p.MassKg is not { } mass)
            yield break;
        var usual = MassBounds.Usual(p.AgeYears);
        var whom = p.AgeYears is { } years ? $" at {Say.Number(years)} years" : "";
        if (mass < usual.Low)
            yield return $"{Say.Number(mass)} kg is very light{whom}. Is the age in years, and the mass in the unit shown?";
        if (mass > usual.High)
            yield return $"{BodyMass.InBothUnits(mass)} is very heavy{whom}. If {Say.Number(mass)} lb was meant, it is {Say.Number(Math.Round(mass * BodyMass.KilogramsPerPound))} kg.";
    }

    private static IEnumerable<string> Of(Payload.DrugGiven p, Payload.CasualtyOpened? person, Formulary formulary)
    {
        if (p.Amount <= 0)
            yield return "The amount is 0.";
        if (DrugUnit.Milligrams(p.Amount, p.Unit) is not { } mg)
        {
            yield return $"{Plain.Line(p.Unit)} is no unit of mass. Only mg, g or µg can be added up.";
            yield break;
        }

        if (formulary.Named(p.Drug) is not { } drug)
        {
            if (mg > 10_000)
                yield return $"{DrugUnit.Say(mg)} is a great deal for any drug. Is it mg or g?";
            yield break;
        }

        var doses = drug.Regimens.Where(r => person?.AgeYears is not { } age || (age >= r.FromYears && age < r.UnderYears))
            .DefaultIfEmpty(drug.Regimens[0]).Select(r => Dose(r, person?.MassKg)).ToArray();
        var (least, most) = (doses.Min(d => d.Low), doses.Max(d => d.High));
        if (mg > MostDoses * most)
            yield return $"{DrugUnit.Say(mg)} is more than {Say.Number(MostDoses)} times the largest dose of {drug.Id} on the list. Is the unit right?";
        if (mg > 0 && mg < LeastDose * least)
            yield return $"{DrugUnit.Say(mg)} is less than a tenth of the smallest dose of {drug.Id} on the list. Is the unit right?";
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
            yield return $"{Say.Number(millilitres)} mL is very little. Half a litre is 500 mL.";
        if (millilitres > most)
            yield return $"{Say.Number(millilitres)} mL is a great deal {what}. Enter each time on its own.";
    }
}
