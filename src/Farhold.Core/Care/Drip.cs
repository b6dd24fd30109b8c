namespace Farhold.Care;

/// <summary>Rates and volumes of what runs in or is drawn up.</summary>
public static class Drip
{
    /// <summary>Drops a minute.</summary>
    /// <param name="dropsPerMl">Of the giving set, usually 10, 15, 20 or 60; printed on it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0.</exception>
    public static double DropsPerMinute(double millilitres, double minutes, double dropsPerMl)
    {
        Positive(millilitres, nameof(millilitres));
        Positive(minutes, nameof(minutes));
        Positive(dropsPerMl, nameof(dropsPerMl));
        return millilitres * dropsPerMl / minutes;
    }

    /// <summary>Volume, mL, that holds an amount at a concentration (the same unit per mL).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0.</exception>
    public static double VolumeMl(double amount, double perMl)
    {
        Positive(amount, nameof(amount));
        Positive(perMl, nameof(perMl));
        return amount / perMl;
    }

    private static void Positive(double value, string name)
    {
        if (!(double.IsFinite(value) && value > 0))
            throw new ArgumentOutOfRangeException(name, value, "A rate or volume needs numbers above 0.");
    }
}
