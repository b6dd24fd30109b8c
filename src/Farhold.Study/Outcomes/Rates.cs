namespace Farhold.Study.Outcomes;

/// <summary>How outcomes go by time, from published series of people. Hours since tightening; shares from 0 to 1.</summary>
/// <remarks>
/// The casualty model has a dead share of muscle of its own, from rabbits and dogs: 85 % after six warm hours, where 14 to 33 % of limbs
/// were lost in the field. So limbs go by the series here, and the model's muscle is for teaching alone.
/// </remarks>
public static class Rates
{
    /// <summary>Limb lost to the tourniquet: Weibull in hours tied, fitted to Samarskyi 2024 and Lukiianchuk 2025.</summary>
    public static double LimbLost(double hours, double shape, double scale) => -double.ExpM1(-Math.Pow(hours / scale, shape));

    /// <summary>Limb lost to an unrepaired injury of its artery: 129 limbs, Perkins 2022. Steps, as printed.</summary>
    public static double LimbLostToArtery(double hours) =>
        hours switch
        {
            <= 1 => 0.140,
            <= 3 => 0.317,
            <= 6 => 0.437,
            _ => 0.933,
        };

    /// <summary>Death at release: none up to two hours, then by the square (design; Lukiianchuk 2025 is the treated floor).</summary>
    /// <param name="atEight">At eight hours.</param>
    public static double ReleaseDeath(double hours, double atEight) =>
        hours <= 2 ? 0 : Math.Min(1, atEight * (hours - 2) * (hours - 2) / 36);

    /// <summary>Palsy, for a time or for good: odds of a surgeon's cuff, Horlocker 2006, held from five hours on.</summary>
    public static double Palsy(double hours, double scale)
    {
        var odds = scale * 0.083 * Math.Pow(2.8, ((60 * Math.Min(hours, 5)) - 145) / 30);
        return odds / (1 + odds);
    }
}
