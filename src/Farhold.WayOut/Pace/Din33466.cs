using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>4 km/h along, 300 m/h up, 500 m/h down; the longer of along and height, plus half the shorter.</summary>
/// <remarks>
/// Source: DIN 33466 as alpine clubs print it, read at wanderndeluxe.de, mountainista.de and bergkind.at. Not additive: it belongs
/// to legs, not to their pieces.
/// </remarks>
public static class Din33466
{
    public static Duration Time(Stretch leg)
    {
        var along = leg.DistanceKm / 4;
        var height = (leg.AscentM / 300) + (leg.DescentM / 500);
        return Duration.FromHours(Math.Max(along, height) + (Math.Min(along, height) / 2));
    }
}
