namespace Farhold.WayOut.Pace;

/// <summary>What the size of the party does to a litter carry.</summary>
/// <remarks>
/// Speed grows with a power of the bearers up to a full party: no steps, and the length of a leg plays no part, so that cutting a carry
/// in pieces changes nothing. The figures are in the table of priors.
/// </remarks>
public static class LitterTeam
{
    public const int Fewest = 2;

    /// <summary>Beyond it more hands only relieve each other.</summary>
    public static int Full { get; } = (int)PriorTable.Figure("litter-full-party").Value;

    private static readonly double Power = PriorTable.Figure("litter-team-power").Value;
    private static readonly double SpreadOfSmall = PriorTable.Figure("litter-team-spread").Value;
    private static readonly double FullWithWheel = PriorTable.Figure("litter-wheel-party").Value;

    /// <summary>Speed against a full party.</summary>
    /// <param name="wheelRuns">A wheel on smooth ground.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two.</exception>
    public static double SpeedFactor(int bearers, bool wheelRuns = false) =>
        bearers < Fewest
            ? throw new ArgumentOutOfRangeException(nameof(bearers), bearers, "A litter needs at least two bearers.")
            : Math.Pow(Math.Min(1, bearers / (wheelRuns ? FullWithWheel : Full)), Power);

    /// <summary>What a small party adds to the spread of its pace (log): little enough that one more bearer is never later.</summary>
    /// <remarks>
    /// A trial at score z takes e^(−ln f(n) + σ(n) z). From n to n + 1 the first term falls by power · ln((n + 1) / n) and the spread by
    /// this figure times the same logarithm; the sum never rises while |z| stays below power over figure, which is 5.5 scores.
    /// </remarks>
    public static double AddedSpread(int bearers, bool wheelRuns = false) =>
        SpreadOfSmall * Math.Max(0, Math.Log((wheelRuns ? FullWithWheel : Full) / bearers));

    /// <summary>People wanted for a distance: a team of six to 0.4 km, two to 1.6 km, three or four beyond.</summary>
    /// <remarks>Rule of thumb, from memory; the reported carries of 3 to 9 km used 20 to 40.</remarks>
    public static int Wanted(double distanceKm) =>
        distanceKm switch
        {
            <= 0.4 => 6,
            <= 1.6 => 12,
            _ => 18,
        };
}
