namespace Farhold.App.Rehearse;

/// <summary>What is said of a scenario before it begins.</summary>
internal static class ScenarioWords
{
    /// <summary>Design: below it the air says something about what is to come.</summary>
    private const double ColdBelow = 5;

    private const double Child = 16;

    public static string Facts(ScenarioOffer offer, Texts texts) =>
        string.Join(
            ", ",
            new[]
            {
                texts.ScenarioLimbs(offer.Limbs.Length),
                offer.AgeYears < Child ? texts.ScenarioChild : null,
                offer.AirC < ColdBelow ? texts.ScenarioCold : null,
                offer.IsDark ? texts.ScenarioDark : null,
            }.OfType<string>()
        ) + ".";
}
