using System.Globalization;
using NodaTime;

namespace Farhold.Doses;

/// <summary>An answer about a drug, in lines.</summary>
public static class DoseWords
{
    /// <param name="zone">Of the times; null: UTC.</param>
    public static IEnumerable<string> Of(Drug drug, DoseAnswer answer, Formulary formulary, DateTimeZone? zone = null) =>
        answer switch
        {
            DoseAnswer.AskForAdvice ask => [DoseTexts.AskForAdvice(drug.Id, drug.OnBox), "  " + DoseTexts.Because(ask.Why)],
            DoseAnswer.Not not => [DoseTexts.DoNotGive(drug.Id, drug.OnBox), .. not.Because.Select(b => "  " + DoseTexts.Because(b))],
            DoseAnswer.LookFirst look => [DoseTexts.LookFirst(drug.Id, drug.OnBox), .. look.What.Select(w => $"  {w}")],
            DoseAnswer.Wait wait =>
            [
                DoseTexts.NotBefore(drug.Id, drug.OnBox, Say.Time(wait.Until, zone)),
                "  " + DoseTexts.Because(wait.Why),
            ],
            DoseAnswer.Give give => Give(drug, give, formulary, zone),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static IEnumerable<string> Give(Drug drug, DoseAnswer.Give give, Formulary formulary, DateTimeZone? zone)
    {
        yield return $"{drug.Id}{drug.OnBox}: {Amount(give.Mg)}, {give.Regimen.Route}";
        if (give.For.Length > 0)
            yield return "  " + DoseTexts.For(string.Join("; ", give.For));
        yield return $"  {give.Regimen.Text}";
        if (give.ByMassKg is { } mass)
            yield return "  " + DoseTexts.ForMass(BodyMass.InBothUnits(mass));
        foreach (var portion in give.Portions)
            yield return $"  {Portion(portion)}";
        if (give.ThenMgPerHour is { } rate)
            yield return "  " + DoseTexts.ThenRate(DrugUnit.Say(rate), give.Regimen.Then!.Text);
        yield return $"  {(give.GivenDayMg > 0 ? DoseTexts.GivenInDay(DrugUnit.Say(give.GivenDayMg)) : "")}"
            + (give.Regimen.Once ? DoseTexts.OnceOnly : DoseTexts.NotAgainBefore(Say.Time(give.NotBefore, zone)));
        foreach (var caution in give.Cautions)
            yield return "  " + DoseTexts.CautionLine(caution);
        yield return "  "
            + DoseTexts.AuthorisedBy(give.By.Name, give.By.Role, string.Create(CultureInfo.InvariantCulture, $"{give.By.Date:uuuu-MM-dd}"));
        foreach (var key in give.Regimen.Sources)
            yield return "  " + DoseTexts.SourceLine(formulary.Sources[key].Title, formulary.Sources[key].Known);
    }

    private static string Amount(Between mg) =>
        mg.IsExact ? DrugUnit.Say(mg.Low) : DoseTexts.LowerFirst(DrugUnit.Say(mg.Low), DrugUnit.Say(mg.High));

    /// <summary><c>2 × tablet of 500 mg = 1 g</c>.</summary>
    public static string Portion(Portion portion) =>
        portion.Pieces is { } pieces
            ? $"{Say.Number(pieces)} × {portion.Form.Text} = {DrugUnit.Say(portion.Mg)}"
            : DoseTexts.Portion(Say.Number(portion.Millilitres!.Value), portion.Form.Text, DrugUnit.Say(portion.Mg));
}
