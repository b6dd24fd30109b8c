namespace Farhold.Signs;

/// <summary>Reasons for which the score says little about this casualty; each is shown beside the number.</summary>
/// <param name="Under16">The score was made for 16 years and over (from memory of the 2017 report).</param>
/// <param name="Pregnancy">Not for pregnancy (from memory of the 2017 report).</param>
/// <param name="Altitude">Saturation is low in health up here, so a well person can score up to 3 for it.</param>
public sealed record News2Caution(Truth Under16, Truth Pregnancy, Truth Altitude)
{
    /// <summary>
    /// From this height on a healthy saturation may already score: above 90 % is expected at 1,500–2,500 m (Hackett and
    /// Roach, as printed in a device manual) and the chart scores below 96 %. Taking the lower end is a design choice.
    /// </summary>
    public const double AltitudeFromM = 1500;

    /// <summary>
    /// Met: none of the cautions holds. Not met: one does. Unknown: not enough is known of the casualty or the place.
    /// </summary>
    public Truth Valid => Under16.Or(Pregnancy).Or(Altitude).Not();

    /// <param name="pregnant">Unknown unless someone said; a male casualty is taken as not pregnant.</param>
    /// <param name="altitudeM">Metres above sea level.</param>
    public static News2Caution For(double? ageYears, Sex? sex, Truth pregnant, double? altitudeM) =>
        new(
            ageYears is { } age ? Kleene.Of(age < 16) : Truth.Unknown,
            sex == Sex.Male ? Truth.NotMet : pregnant,
            altitudeM is { } height ? Kleene.Of(height >= AltitudeFromM) : Truth.Unknown
        );
}
