namespace Farhold.Signs;

/// <summary>A range of blood volumes per mass, mL/kg, and what it was published for.</summary>
public readonly record struct VolumePerMass(double LeastMlPerKg, double MostMlPerKg, string Source);

/// <summary>How much blood a person has, and what share of it a loss is.</summary>
public static class BloodVolume
{
    /// <summary>Preterm newborns: 90–105 mL/kg (anaesthesia texts, seen second-hand).</summary>
    public static VolumePerMass Preterm { get; } = new(90, 105, "anaesthesia texts, preterm newborn");

    /// <summary>Litres, for an adult.</summary>
    /// <param name="heightM">Metres, 1.2 to 2.3 (design): the usual slip is to give centimetres.</param>
    /// <param name="massKg">Kilograms, 25 to 350 (design).</param>
    /// <exception cref="ArgumentOutOfRangeException">Height or mass is outside its range.</exception>
    /// <remarks>
    /// Source: Nadler, Hidalgo and Bloch 1962, Surgery 51:224 (coefficients seen second-hand). Overstates the obese.
    /// </remarks>
    public static double Nadler(Sex sex, double heightM, double massKg)
    {
        if (!(heightM is >= 1.2 and <= 2.3))
            throw new ArgumentOutOfRangeException(nameof(heightM), heightM, "An adult's height is in metres, 1.2 to 2.3.");
        if (!(massKg is >= 25 and <= 350))
            throw new ArgumentOutOfRangeException(nameof(massKg), massKg, "An adult's mass is in kilograms, 25 to 350.");
        var cube = heightM * heightM * heightM;
        return sex == Sex.Male
            ? (0.3669 * cube) + (0.03219 * massKg) + 0.6041
            : (0.3561 * cube) + (0.03308 * massKg) + 0.1833;
    }

    /// <summary>The range published for this age and sex. Children's sources disagree, so theirs spans all of them.</summary>
    /// <param name="ageYears">Years; up to 28 days counts as a newborn at term, from 12 years as an adolescent (design).</param>
    /// <param name="sex">Counts from 12 years on; null spans both.</param>
    /// <exception cref="ArgumentOutOfRangeException">The age is negative or not finite.</exception>
    /// <remarks>
    /// Sources: child 70–80, ATLS 10 p. 49 (read); newborn 80–90, infant 75–80, child 70–75 or 80–90, from 12 years male
    /// 70–75 and female 60–65: common teaching, no primary text seen.
    /// </remarks>
    public static VolumePerMass PerMass(double ageYears, Sex? sex) => ageYears switch
    {
        < 0 or double.NaN or double.PositiveInfinity =>
            throw new ArgumentOutOfRangeException(nameof(ageYears), ageYears, "An age is finite and not negative."),
        <= AgeLimits.NewbornYears => new(80, 90, "common teaching, term newborn"),
        < 1 => new(75, 80, "common teaching, infant"),
        < 12 => new(70, 90, "child: ATLS 10 70–80, common teaching 70–75 or 80–90"),
        _ => sex switch
        {
            Sex.Male => new(70, 75, "common teaching, adolescent or adult male"),
            Sex.Female => new(60, 65, "common teaching, adolescent or adult female"),
            _ => new(60, 75, "common teaching, adolescent or adult, sex unknown"),
        },
    };

    /// <summary>
    /// A loss as percent of a volume, both in millilitres; may exceed 100, since losses are replaced as they go.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The loss is negative or the volume not above 0, or one is not finite.
    /// </exception>
    public static double LossPercent(double lossMl, double volumeMl)
    {
        if (!(double.IsFinite(lossMl) && lossMl >= 0))
            throw new ArgumentOutOfRangeException(nameof(lossMl), lossMl, "A loss is finite and not negative.");
        if (!(double.IsFinite(volumeMl) && volumeMl > 0))
            throw new ArgumentOutOfRangeException(nameof(volumeMl), volumeMl, "A blood volume is finite and above 0.");
        return 100 * lossMl / volumeMl;
    }

    /// <summary>The classes a loss allows, over the whole range of volumes this casualty may have.</summary>
    /// <exception cref="ArgumentOutOfRangeException">As for <see cref="LossPercent"/>.</exception>
    public static ClassRange ClassOfLoss(double lossMl, double massKg, VolumePerMass perMass) => ClassRange.Span([
        Atls9.ByLossPercent(LossPercent(lossMl, massKg * perMass.MostMlPerKg)),
        Atls9.ByLossPercent(LossPercent(lossMl, massKg * perMass.LeastMlPerKg)),
    ]);
}
