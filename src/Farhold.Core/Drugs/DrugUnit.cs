namespace Farhold.Drugs;

/// <summary>Units of drug amounts in a record.</summary>
public static class DrugUnit
{
    /// <summary>Milligrams, or null for a unit that is no mass.</summary>
    public static double? Milligrams(double amount, string unit) =>
        unit.Trim().ToUpperInvariant() switch
        {
            "MG" or "MILLIGRAM" or "MILLIGRAMS" => amount,
            "G" or "GRAM" or "GRAMS" => amount * 1000,
            "UG" or "MCG" or "ΜG" or "MICROGRAM" or "MICROGRAMS" => amount / 1000, // the sign for micro, and the Greek letter
            _ => null,
        };

    /// <summary><c>50 µg</c>, <c>400 mg</c>, <c>1.5 g</c>: in the unit that needs no long number.</summary>
    public static string Say(double mg) =>
        mg switch
        {
            < 1 => $"{Farhold.Text.Say.Number(mg * 1000)} µg",
            < 1000 => $"{Farhold.Text.Say.Number(mg)} mg",
            _ => $"{Farhold.Text.Say.Number(mg / 1000)} g",
        };
}
