namespace Farhold.Physiology.Body;

public enum Sex
{
    Male,
    Female,
}

/// <summary>Who the casualty is. The default is a man of 30 years, 75 kg and 1.78 m.</summary>
/// <remarks>The factors at the end are 1 but in a cohort, where each person's is drawn once.</remarks>
public sealed record Person
{
    public double MassKg { get; init; } = 75;
    public double HeightM { get; init; } = 1.78;
    public double AgeYears { get; init; } = 30;
    public Sex Sex { get; init; } = Sex.Male;

    /// <summary>At rest, a minute.</summary>
    public double HeartRate { get; init; } = 65;

    /// <summary>Mean arterial pressure at rest, mmHg.</summary>
    public double ArterialPressure { get; init; } = 92;

    /// <summary>Share of red cells in blood, 0 to 1.</summary>
    public double Haematocrit { get; init; } = 0.43;

    /// <summary>Effect of a beta-blocker, 0 to 1.</summary>
    public double BetaBlockade { get; init; }

    /// <summary>Effect of an anticoagulant, 0 to 1.</summary>
    public double Anticoagulation { get; init; }

    /// <summary>How strongly the heart slows and vessels widen when it fills too little, 0 to 1.</summary>
    public double DepressorStrength { get; init; } = 0.6;

    /// <summary>Oxygen debt above which vessels fail for good, mL/kg.</summary>
    public double DebtThreshold { get; init; } = 115;

    /// <summary>Gain of the sympathetic drive.</summary>
    public double ReflexGain { get; init; } = 1;

    public double VenousToneFactor { get; init; } = 1;
    public double HeartRateReserveFactor { get; init; } = 1;
    public double FiltrationFactor { get; init; } = 1;
    public double ResistanceFactor { get; init; } = 1;
}
