namespace Farhold.WayOut.Pace;

/// <summary>What the size of the party does to a litter carry.</summary>
/// <remarks>The steps are an assumption, drawn from the endurance of bearers (Knapik 2000, Rice 1996) and reported carries of 20 to 40 people.</remarks>
public static class LitterTeam
{
    public const int Fewest = 2;

    /// <summary>Speed against a full party of 18 or more.</summary>
    /// <param name="wheelRuns">A wheel on smooth ground: four to six people then suffice (from memory).</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two.</exception>
    public static double SpeedFactor(int bearers, double distanceKm, bool wheelRuns = false) => bearers switch
    {
        < Fewest => throw new ArgumentOutOfRangeException(nameof(bearers), bearers, "A litter needs at least two bearers."),
        >= 4 when wheelRuns => 1,
        >= 18 => 1,
        >= 12 => 0.8,
        >= 6 => 0.5,
        >= 4 => distanceKm > 0.5 ? 0.3 : 0.5,
        // Two or three tire within minutes (2.7 min by hand, 14.5 to 25.4 with straps: Knapik 2000); half of four is a guess.
        _ => 0.15,
    };

    /// <summary>People wanted for a distance: a team of six to 0.4 km, two to 1.6 km, three or four beyond.</summary>
    /// <remarks>Rule of thumb, from memory; the reported carries of 3 to 9 km used 20 to 40.</remarks>
    public static int Wanted(double distanceKm) => distanceKm switch
    {
        <= 0.4 => 6,
        <= 1.6 => 12,
        _ => 18,
    };
}
