namespace Farhold.Signs;

/// <summary>Heart rate over systolic pressure. A pointer, never a verdict on its own.</summary>
/// <remarks>
/// Poor alone: for massive transfusion sensitivity 0.68, specificity 0.84; for death 0.36 and 0.74 (Critical Care 2023,
/// meta-analysis). A slow heart can go with severe bleeding, and then a low index reassures falsely.
/// </remarks>
public static class ShockIndex
{
    /// <summary>Above this before hospital, an independent predictor of death in 628 patients.</summary>
    /// <remarks>Source: Kim 2019, J Trauma Inj 32:17. Exactly 0.9 is not above.</remarks>
    public const double OutcomeCutOff = 0.9;

    /// <summary>The index, per minute and mmHg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Either is not above 0: no heart beat has no index.</exception>
    public static double Of(double heartRatePerMinute, double systolicMmHg)
    {
        if (!(double.IsFinite(heartRatePerMinute) && heartRatePerMinute > 0))
            throw new ArgumentOutOfRangeException(nameof(heartRatePerMinute), heartRatePerMinute, "A heart rate is above 0/min.");
        if (!(double.IsFinite(systolicMmHg) && systolicMmHg > 0))
            throw new ArgumentOutOfRangeException(nameof(systolicMmHg), systolicMmHg, "A systolic pressure is above 0 mmHg.");
        return heartRatePerMinute / systolicMmHg;
    }

    /// <summary>Class by index: I below 0.6, II from 0.6, III from 1.0, IV from 1.4. For adults.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The index is not above 0.</exception>
    /// <remarks>
    /// Source: Mutschler 2013, Critical Care 17:R172 (place from memory); validated 2016 in 40,888 patients.
    /// Every edge belongs to the worse class; whole numbers on an edge (66 over 110) meet it exactly.
    /// </remarks>
    public static HaemorrhageClass ClassOf(double index) =>
        index switch
        {
            <= 0 or double.NaN => throw new ArgumentOutOfRangeException(nameof(index), index, "A shock index is above 0."),
            < 0.6 => HaemorrhageClass.I,
            < 1.0 => HaemorrhageClass.II,
            < 1.4 => HaemorrhageClass.III,
            _ => HaemorrhageClass.IV,
        };

    /// <summary>
    /// Whether the index is high for a child: above 1.22 at 4–6 years, 1.0 at 7–12, 0.9 at 13–16 (completed years).
    /// </summary>
    /// <returns>Unknown at other ages: nothing is published for them.</returns>
    /// <remarks>
    /// Source: Acker et al. 2015, J Pediatr Surg 50:331 (place from memory). Pooled sensitivity 0.58, specificity 0.72 (PLOS ONE,
    /// e0307367).
    /// </remarks>
    public static Truth IsHighForChild(double index, double ageYears) =>
        ageYears switch
        {
            >= 4 and < 7 => Kleene.Of(index > 1.22),
            >= 7 and < 13 => Kleene.Of(index > 1.0),
            >= 13 and < 17 => Kleene.Of(index > 0.9),
            _ => Truth.Unknown,
        };
}
