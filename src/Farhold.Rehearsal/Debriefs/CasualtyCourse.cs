namespace Farhold.Rehearsal.Debriefs;

/// <summary>What the casualty went through.</summary>
/// <param name="LostMl">Since the trainee arrived.</param>
/// <param name="LowestPressure">Mean arterial, mmHg, since then.</param>
/// <param name="OccludedS">Of the modelled limb, since the injury, in seconds.</param>
/// <param name="DeadMuscle">Of the modelled limb, 0 to 1, at the end.</param>
/// <param name="HighestPotassium">mmol/L.</param>
/// <param name="LowestCore">°C.</param>
public sealed record CasualtyCourse(
    double LostMl,
    double LowestPressure,
    double OccludedS,
    double DeadMuscle,
    double HighestPotassium,
    double LowestCore,
    bool Arrested,
    bool BledAgain
)
{
    public static CasualtyCourse Of(RehearsalSession session)
    {
        var frames = session.Frames.Where(f => f.At >= 0).ToArray();
        if (frames.Length == 0)
            return new(0, 0, 0, 0, 0, 0, session.EndedBy == EndReason.Arrest, false);
        var last = frames[^1];
        return new(
            last.LostMl - frames[0].LostMl,
            frames.Min(f => f.Vitals.MeanArterialPressure),
            last.Occluded,
            last.DeadMuscle,
            frames.Max(f => f.Potassium),
            frames.Min(f => f.Vitals.CoreTemperature),
            session.EndedBy == EndReason.Arrest,
            session.Truth.Any(l => l is TruthLine.Failed { At: >= 0 })
        );
    }

    /// <summary>Chance that a limb is lost to a tourniquet of such a time, 0 to 1, at both ends of the fits.</summary>
    /// <remarks>
    /// Weibull, shape 2.8 to 5.2 and scale 7.5 to 11.5 h: fitted for this project to Samarskyi 2024 (92 of 2,496, mean 3.4 h) and
    /// Lukiianchuk 2025 (27 of 74, 4 h and more). With an artery that is not repaired the injury decides, not this.
    /// </remarks>
    public static (double Low, double High) LimbLost(double hours)
    {
        double[] all = [Weibull(hours, 2.8, 7.5), Weibull(hours, 2.8, 11.5), Weibull(hours, 5.2, 7.5), Weibull(hours, 5.2, 11.5)];
        return (all.Min(), all.Max());
    }

    /// <summary>Chance of a nerve palsy, most of which pass, 0 to 1; null beyond 300 minutes, which nobody counted.</summary>
    /// <remarks>Horlocker 2006: 7.7 % at 145 minutes, odds times 2.8 for each half hour more (a surgical cuff, which is wider).</remarks>
    public static double? Palsy(double minutes)
    {
        if (minutes > 300)
            return null;
        var odds = 0.083 * Math.Pow(2.8, (minutes - 145) / 30);
        return odds / (1 + odds);
    }

    private static double Weibull(double hours, double shape, double scale) => 1 - Math.Exp(-Math.Pow(hours / scale, shape));
}
