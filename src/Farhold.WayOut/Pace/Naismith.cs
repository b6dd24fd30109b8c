using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>An hour for every 5 km, and one more for every 600 m climbed.</summary>
/// <remarks>
/// Source: Naismith 1892 in its metric form, read at docsbay.net/naismiths-rule. Aitken walks 4 km/h off paths (same page).
/// </remarks>
public static class Naismith
{
    public static Duration Time(Stretch stretch, double flatKmh = 5) =>
        Duration.FromHours((stretch.DistanceKm / flatKmh) + (stretch.AscentM / 600));
}

/// <summary>Naismith as one equivalent flat distance: a metre up counts as so many along.</summary>
/// <remarks>Source: Scarf's 8 to 1, read at exl.pages.dev/Naismith's_Rule.</remarks>
public static class Scarf
{
    public static double EquivalentKm(Stretch stretch, double equivalence = 8) =>
        stretch.DistanceKm + (equivalence * stretch.AscentM / 1000);

    public static Duration Time(Stretch stretch, double equivalence = 8, double flatKmh = 5) =>
        Duration.FromHours(EquivalentKm(stretch, equivalence) / flatKmh);
}
