using System.Collections.Immutable;

namespace Farhold;

/// <summary>What in an entry looks like a slip or a mixed-up unit: asked back before it is logged, never refused.</summary>
/// <remarks>
/// The ranges are design, wide enough that hardly anyone is asked in vain and narrow enough for g taken for mg and lb for kg.
/// A child's mass is held against APLS 2011 (seen second-hand): 0.5 × months + 4, from one year 2 × years + 8, from six 3 × years + 7.
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
        Payload.SignsTaken p => [.. Of(p)],
        _ => [],
    };

    /// <summary>Mass at an age that nobody is asked about, kg.</summary>
    /// <param name="ageYears">0 to 130.</param>
    public static Between MassKg(double ageYears) => ageYears switch
    {
        < 1 => Around((0.5 * 12 * ageYears) + 4),
        < 6 => Around((2 * ageYears) + 8),
        < 13 => Around((3 * ageYears) + 7),
        < 16 => new(25, 110),
        _ => new(40, 120),
    };

    private static Between Around(double kilograms) => new(0.55 * kilograms, 1.8 * kilograms);

    private static IEnumerable<string> Of(Payload.CasualtyOpened p)
    {
        if (p.AgeYears is > 105)
            yield return $"{Say.Number(p.AgeYears.Value)} years is very old. Is it in years?";
        if (p.MassKg is not { } mass)
            yield break;
        var usual = p.AgeYears is { } age ? MassKg(age) : new(3, 120);
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

    private static IEnumerable<string> Of(Payload.SignsTaken p)
    {
        if (p.TemperatureC is < 30 or > 42)
            yield return $"{Say.Number(p.TemperatureC.Value)} °C is rarely seen alive. Is the unit right?";
        if (p.Diastolic >= p.Systolic)
            yield return "The lower blood pressure is not below the upper one. Are the two mixed up?";
        if (p.HeartRate is > 220 or < 25)
            yield return $"A pulse of {Say.Number(p.HeartRate.Value)} a minute is rarely seen. Count it again.";
        if (p.BreathRate is > 60 or < 4)
            yield return $"{Say.Number(p.BreathRate.Value)} breaths a minute is rarely seen. Count them again.";
        if (p.Spo2 is < 60)
            yield return $"{Say.Number(p.Spo2.Value)} % is seldom a true reading. Warm the finger and look again.";
    }
}
