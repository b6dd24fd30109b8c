using System.Runtime.CompilerServices;

namespace Farhold.Physiology.Body;

/// <summary>What the equations can take: beyond it they would divide by nothing, or mean nothing. Limits are this project's own.</summary>
internal static class Ranges
{
    /// <exception cref="ArgumentOutOfRangeException">A value is outside.</exception>
    public static void Check(Person p)
    {
        Within(p.MassKg, 30, 250);
        Within(p.HeightM, 1.2, 2.3);
        Within(p.AgeYears, 12, 100);
        Within(p.HeartRate, 30, 120);
        Within(p.ArterialPressure, 60, 140);
        Within(p.Haematocrit, 0.15, 0.65);
        Within(p.BetaBlockade, 0, 1);
        Within(p.Anticoagulation, 0, 1);
        Within(p.DepressorStrength, 0, 1);
        Within(p.DebtThreshold, 20, 300);
        Within(p.ReflexGain, 0, 5);
        Within(p.VenousToneFactor, 0.1, 5);
        Within(p.HeartRateReserveFactor, 0.1, 5);
        Within(p.FiltrationFactor, 0.1, 5);
        Within(p.ResistanceFactor, 0, 5);
    }

    /// <exception cref="ArgumentOutOfRangeException">A value is outside.</exception>
    public static void Check(Conditions c)
    {
        Within(c.AirTemperature, -60, 60);
        Within(c.Insulation, 0.02, 5);
        Within(c.Wetness, 0, 1);
        Within(c.Warming, 0, 500);
        Within(c.Pain, 0, 10);
        Within(c.Anxiety, 0, 1);
        Within(c.NociceptiveBlock, 0, 1);
        Within(c.ArterialOcclusion, 0, 1);
        Within(c.VenousOcclusion, 0, 1);
        Within(c.Withdrawal, 0, 100);
        Within(c.Infusion.Rate, 0, 50);
        Within(c.Infusion.Haematocrit, 0, 1);
        Within(c.Infusion.Protein, 0, 0.3);
        Within(c.Infusion.ClottingFactor, 0, 30);
        Within(c.Infusion.Temperature, 0, 45);
        Within(c.Drinking, 0, 5);
        Within(c.DrinkOutsideCells, 0, 1);
        Within(c.HeadUp, 0, 60);
        foreach (var wound in c.Wounds)
        {
            Within(wound.Conductance, 0, 20);
            Within(wound.Opening, 0, 10);
            Within(wound.OutsidePressure, 0, 400);
            Within(wound.ClotRate, 0, 20);
        }
    }

    private static void Within(double value, double low, double high, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, $"{low} to {high}.");
    }
}
