using System.Globalization;
using NodaTime;

namespace Farhold.Doses;

/// <summary>An answer about a drug, in lines.</summary>
public static class DoseWords
{
    /// <param name="zone">Of the times; null: UTC.</param>
    public static IEnumerable<string> Of(Drug drug, DoseAnswer answer, Formulary formulary, DateTimeZone? zone = null) => answer switch
    {
        DoseAnswer.AskForAdvice ask => [$"{drug.Id}: ask for advice; no dose is shown ({ask.Why})"],
        DoseAnswer.Not not => [$"{drug.Id}: do not give it", .. not.Because.Select(b => $"  because: {b}")],
        DoseAnswer.LookFirst look => [$"{drug.Id}: look first, then ask again", .. look.What.Select(w => $"  {w}")],
        DoseAnswer.Wait wait => [$"{drug.Id}: not before {Say.Time(wait.Until, zone)}", $"  because: {wait.Why}"],
        DoseAnswer.Give give => Give(drug, give, formulary, zone),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static IEnumerable<string> Give(Drug drug, DoseAnswer.Give give, Formulary formulary, DateTimeZone? zone)
    {
        yield return $"{drug.Id}: {Amount(give.Mg)}, {give.Regimen.Route}";
        yield return $"  {give.Regimen.Text}";
        if (give.ByMassKg is { } mass)
            yield return $"  for a mass of {BodyMass.InBothUnits(mass)}: is that right, and in the right unit?";
        foreach (var portion in give.Portions)
            yield return $"  {Portion(portion)}";
        yield return $"  {(give.GivenDayMg > 0 ? $"{DrugUnit.Say(give.GivenDayMg)} given in the last 24 hours; " : "")}given now, not again before {Say.Time(give.NotBefore, zone)}";
        yield return string.Create(CultureInfo.InvariantCulture, $"  authorised by {give.By.Name}, {give.By.Role}, {give.By.Date:uuuu-MM-dd}");
        foreach (var key in give.Regimen.Sources)
            yield return $"  source: {formulary.Sources[key].Title} ({formulary.Sources[key].Known})";
    }

    private static string Amount(Between mg) => mg.IsExact
        ? DrugUnit.Say(mg.Low)
        : $"{DrugUnit.Say(mg.Low)} to {DrugUnit.Say(mg.High)}, the lower first";

    /// <summary><c>2 × tablet of 500 mg = 1 g</c>.</summary>
    public static string Portion(Portion portion) => portion.Pieces is { } pieces
        ? $"{Say.Number(pieces)} × {portion.Form.Text} = {DrugUnit.Say(portion.Mg)}"
        : $"{Say.Number(portion.Millilitres!.Value)} mL of {portion.Form.Text} = {DrugUnit.Say(portion.Mg)}";
}
