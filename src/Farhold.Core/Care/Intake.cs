using NodaTime;

namespace Farhold.Care;

/// <summary>How much water and fluid a casualty needs.</summary>
public static class Intake
{
    /// <summary>Maintenance, mL/h: 4 mL/kg for the first 10 kg, 2 for the next 10, 1 for the rest.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0 or above 400 kg.</exception>
    /// <remarks>Source: Holliday and Segar 1957, Pediatrics 19:823 (from memory).</remarks>
    public static double MaintenanceMlPerHour(double massKg)
    {
        if (!(massKg is > 0 and <= 400))
            throw new ArgumentOutOfRangeException(nameof(massKg), massKg, "A mass is above 0, at most 400 kg.");
        return (4 * Math.Min(massKg, 10)) + (2 * Math.Clamp(massKg - 10, 0, 10)) + Math.Max(massKg - 20, 0);
    }

    /// <summary>
    /// Water of an adult at rest in no heat, mL in a day, as a range: 2.1 L (woman of 69 kg) to 2.6 L (man of 85 kg) by one
    /// table of the JTS nursing guideline, 100 to 125 mL/h by its text. The text's upper end is 3 L.
    /// </summary>
    public static Between AdultAtRestMlPerDay { get; } = new(2_100, 3_000);
}

/// <summary>Salt and sugar for a litre of clean water, by the spoon.</summary>
/// <remarks>
/// Half a level teaspoon of salt and six of sugar (World Health Organization 2005, The treatment of diarrhoea, from memory).
/// An older recipe has twice the salt and eight of sugar; too salty is dangerous, so it is not offered. To be thrown away
/// after 24 hours.
/// </remarks>
public static class HomeRehydration
{
    public const double SaltTeaspoonsPerLitre = 0.5;

    public const double SugarTeaspoonsPerLitre = 6;

    public static Duration KeepsFor { get; } = Duration.FromHours(24);

    /// <summary>What to stir into so much water.</summary>
    /// <param name="litres">Above 0, at most 20.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is outside its range.</exception>
    public static (double SaltTeaspoons, double SugarTeaspoons) For(double litres)
    {
        if (!(litres is > 0 and <= 20))
            throw new ArgumentOutOfRangeException(nameof(litres), litres, "A mix is above 0, at most 20 litres.");
        return (litres * SaltTeaspoonsPerLitre, litres * SugarTeaspoonsPerLitre);
    }
}
