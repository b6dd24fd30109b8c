namespace Farhold.Signs;

/// <summary>Sums on one blood pressure, in mmHg.</summary>
/// <remarks>Each refuses a pressure whose diastolic is above its systolic, is negative, or is not finite.</remarks>
public static class Pressures
{
    /// <summary>(systolic + 2 × diastolic) / 3, mmHg: the usual estimate at the arm at an ordinary heart rate.</summary>
    /// <exception cref="ArgumentException">Not a pressure: see the remarks of <see cref="Pressures"/>.</exception>
    /// <remarks>Source: common practice; the same form is on the PALS card, later edition.</remarks>
    public static double MeanArterial(double systolicMmHg, double diastolicMmHg)
    {
        Check(systolicMmHg, diastolicMmHg);
        return (systolicMmHg + (2 * diastolicMmHg)) / 3;
    }

    /// <summary>Systolic less diastolic, mmHg.</summary>
    /// <exception cref="ArgumentException">Not a pressure: see the remarks of <see cref="Pressures"/>.</exception>
    public static double PulsePressure(double systolicMmHg, double diastolicMmHg)
    {
        Check(systolicMmHg, diastolicMmHg);
        return systolicMmHg - diastolicMmHg;
    }

    /// <summary>Whether the pulse pressure is narrow, as it becomes from class II on.</summary>
    /// <returns>
    /// Met below 30 mmHg or below a quarter of the systolic, not met from 40 mmHg, unknown between: the
    /// cut-offs in use differ.
    /// </returns>
    /// <exception cref="ArgumentException">Not a pressure: see the remarks of <see cref="Pressures"/>.</exception>
    /// <remarks>The trend is from the ATLS table; the numbers (30 to 40 mmHg, 25 %) are from memory.</remarks>
    public static Truth IsNarrow(double systolicMmHg, double diastolicMmHg) =>
        PulsePressure(systolicMmHg, diastolicMmHg) switch
        {
            var pulse when pulse < 30 || pulse < systolicMmHg / 4 => Truth.Met,
            >= 40 => Truth.NotMet,
            _ => Truth.Unknown,
        };

    private static void Check(double systolicMmHg, double diastolicMmHg)
    {
        if (!(double.IsFinite(systolicMmHg) && systolicMmHg > 0))
            throw new ArgumentOutOfRangeException(nameof(systolicMmHg), systolicMmHg, "A systolic pressure is above 0 mmHg.");
        if (!(diastolicMmHg >= 0 && diastolicMmHg <= systolicMmHg))
            throw new ArgumentOutOfRangeException(
                nameof(diastolicMmHg),
                diastolicMmHg,
                $"A diastolic pressure is from 0 to the systolic, here {systolicMmHg} mmHg."
            );
    }
}
