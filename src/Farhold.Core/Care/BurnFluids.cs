namespace Farhold.Care;

/// <summary>Fluid for a burn, as starting points to be steered by urine. All in millilitres.</summary>
/// <remarks>Superficial redness is not counted in the burned surface (JSOM Winter 2025; JTS burn flow sheet).</remarks>
public static class BurnFluids
{
    /// <summary>Burned surface, percent, above which fluid by formula is started in an adult (JSOM Winter 2025, JTS burn care).</summary>
    public const double StartsAbovePercent = 20;

    /// <summary>The same under 16 years (RCEM, burn care).</summary>
    public const double ChildStartsAbovePercent = 10;

    /// <summary>
    /// Adult starting rate by the rule of tens, mL/h: ten times the burned percent up to 80 kg, and 100 mL/h more for every
    /// whole 10 kg above. Part steps are not defined in any source; whole steps start lower (design: start low, titrate).
    /// </summary>
    /// <param name="massKg">Kilograms, at least 40.</param>
    /// <param name="burnedPercent">Of body surface, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 40 kg the rule is not made; or a value is out of range.</exception>
    /// <remarks>Source: Chung et al. 2010, J Trauma 69 (abstract); figures as in JSOM Winter 2025 and the JTS burn guideline.</remarks>
    public static double RuleOfTensMlPerHour(double massKg, double burnedPercent)
    {
        if (!(massKg is >= 40 and <= 400))
            throw new ArgumentOutOfRangeException(nameof(massKg), massKg, "The rule of tens is for 40 kg and more.");
        Check(burnedPercent);
        return (10 * burnedPercent) + (massKg <= 80 ? 0 : 100 * Math.Floor((massKg - 80) / 10));
    }

    /// <summary>What a formula by mass and surface gives over the first 24 hours from the burn.</summary>
    /// <param name="mlPerKgPercent">4 Parkland (US Army subcourse MD0576); 2 adults, 3 children, 4 electrical in ABLS 2018 (from memory,
    /// the child's 3 read).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static BurnDay FirstDay(double mlPerKgPercent, double massKg, double burnedPercent)
    {
        if (!(mlPerKgPercent is > 0 and <= 4))
            throw new ArgumentOutOfRangeException(nameof(mlPerKgPercent), mlPerKgPercent, "Formulas use 2 to 4 mL per kg and percent.");
        if (!(massKg is > 0 and <= 400))
            throw new ArgumentOutOfRangeException(nameof(massKg), massKg, "A mass is above 0, at most 400 kg.");
        Check(burnedPercent);
        return new(mlPerKgPercent * massKg * burnedPercent);
    }

    private static void Check(double burnedPercent)
    {
        if (!(burnedPercent is >= 0 and <= 100))
            throw new ArgumentOutOfRangeException(nameof(burnedPercent), burnedPercent, "A burned surface is 0 to 100 percent.");
    }
}

/// <summary>A first day of burn fluid: half in the first eight hours from the time of the burn, half in the sixteen after.</summary>
/// <remarks>
/// A late start is not made up for (rescue handbook): the rate stays that of the hour, and nobody gives the missed part at once.
/// </remarks>
public readonly record struct BurnDay(double TotalMl)
{
    public double FirstMlPerHour => TotalMl / 2 / 8;

    public double LaterMlPerHour => TotalMl / 2 / 16;
}
