using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Limits of normal signs, awake, below 16 years.</summary>
/// <param name="HeartRateLower">Beats per minute.</param>
/// <param name="HeartRateUpper">Beats per minute.</param>
/// <param name="RespiratoryRateLower">Breaths per minute.</param>
/// <param name="RespiratoryRateUpper">Breaths per minute.</param>
/// <param name="SystolicLower">mmHg; below it is hypotension, a late sign in children.</param>
/// <remarks>
/// Sources: rates, the PALS vital-sign card of the 2015/2020 edition (the 2006 edition differs, for example heart rate up
/// to 140 from 2 to 10 years); systolic, PALS: 60 to 28 days, 70 to 12 months, 70 + 2 × age to 10 years, then 90. All
/// seen second-hand. Where an age is in two of the card's bands or between two, the narrower limits of both count
/// (design): more false alarms, none missed. The card prints no breath rate for newborns: they take the infant's (design).
/// </remarks>
public sealed record AgeLimits(
    double HeartRateLower, double HeartRateUpper, double RespiratoryRateLower, double RespiratoryRateUpper, double SystolicLower)
{
    public const string Source = "PALS vital-sign card, 2015/2020 edition; PALS definition of hypotension";

    /// <summary>28 days in years of 365.25 days.</summary>
    internal const double NewbornYears = 28 / 365.25;

    /// <summary>From this age on adult limits apply: the card ends with the adolescent of 15 (design).</summary>
    internal const double AdultYears = 16;

    private static readonly ImmutableArray<Band> card =
    [
        new(0, NewbornYears, 100, 205, 30, 53),
        new(1.0 / 12, 1, 100, 180, 30, 53),
        new(1, 2, 98, 140, 22, 37),
        new(3, 5, 80, 120, 20, 28),
        new(6, 9, 75, 118, 18, 25),
        new(10, 12, 75, 118, 18, 25), // heart rate: the card's school-age band
        new(12, 15, 60, 100, 12, 20),
    ];

    /// <summary>The limits at an age, or null from 16 years: an adult's are the protocol's matter.</summary>
    /// <param name="ageYears">Years; a part of a year counts.</param>
    /// <exception cref="ArgumentOutOfRangeException">The age is negative or not finite.</exception>
    public static AgeLimits? For(double ageYears)
    {
        if (!(double.IsFinite(ageYears) && ageYears >= 0))
            throw new ArgumentOutOfRangeException(nameof(ageYears), ageYears, "An age is finite and not negative.");
        if (ageYears >= AdultYears)
            return null;
        var touching = card.Where(b => b.From <= ageYears && ageYears <= b.To).ToImmutableArray();
        if (touching.IsEmpty)
            touching = [.. card.Where(b => b.To < ageYears).TakeLast(1), .. card.Where(b => ageYears < b.From).Take(1)];
        return new(
            touching.Max(b => b.HeartLower),
            touching.Min(b => b.HeartUpper),
            touching.Max(b => b.BreathLower),
            touching.Min(b => b.BreathUpper),
            HypotensionBelow(ageYears));
    }

    private static double HypotensionBelow(double ageYears) => ageYears switch
    {
        <= NewbornYears => 60,
        < 1 => 70,
        <= 10 => 70 + (2 * ageYears),
        _ => 90,
    };

    private readonly record struct Band(
        double From, double To, double HeartLower, double HeartUpper, double BreathLower, double BreathUpper);
}
