namespace Farhold.Signs;

/// <summary>A body's mass in both units that people weigh in: mixed up, they make a dose more than twice too large or too small.</summary>
public static class BodyMass
{
    /// <remarks>Exact by definition: international pound (1959 agreement).</remarks>
    public const double KilogramsPerPound = 0.45359237;

    /// <summary><c>50 kg (110 lb)</c>; tenths of a pound below 10 kg.</summary>
    public static string InBothUnits(double massKg) =>
        SignTexts.Mass(Say.Number(massKg), Say.Number(Math.Round(massKg / KilogramsPerPound, massKg < 10 ? 1 : 0)));
}
