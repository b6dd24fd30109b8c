using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut;

/// <summary>Tranter's table: Naismith hours corrected for fitness and tiredness over a day.</summary>
/// <remarks>
/// Source: gist.github.com/sunsided/fc2113e337d7ea9e76489517bdb862a9, except fitness 20 at 7 h, where that copy prints 6.7 and the
/// usual table 6.5 (from memory): uncertain by 0.2 h. Between columns it is interpolated, which is our choice. Made for unladen
/// parties; it models tiredness, not a carry.
/// </remarks>
public static class Tranter
{
    private static readonly double[] naismithHours = [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24];

    /// <summary>Hours by fitness, one per column of Naismith hours; a shorter row ends where it is too much to attempt.</summary>
    private static readonly ImmutableSortedDictionary<int, double[]> rows = new Dictionary<int, double[]>
    {
        [15] = [1, 1.5, 2, 2.75, 3.5, 4.5, 5.5, 6.75, 7.75, 10, 12.5, 14.5, 17, 19.5, 22, 24],
        [20] = [1.25, 2.25, 3.25, 4.5, 5.5, 6.5, 7.75, 8.75, 10, 12.5, 15, 17.5, 20, 23],
        [25] = [1.5, 3, 4.25, 5.5, 7, 8.5, 10, 11.5, 13.25, 15, 17.5],
        [30] = [2, 3.5, 5, 6.75, 8.5, 10.5, 12.5, 14.5],
        [40] = [2.75, 4.25, 5.75, 7.5, 9.5, 11.5],
        [50] = [3.25, 4.75, 6.5, 8.5],
    }.ToImmutableSortedDictionary();

    /// <summary>Minutes to climb 1000 ft in half a mile, the measure of fitness; a row for each.</summary>
    public static ImmutableArray<int> Fitness { get; } = [.. rows.Keys];

    /// <returns>Nothing where the table calls it too much to attempt, or starts only later (under 2 h).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The table has no row for this fitness.</exception>
    public static Duration? Time(Duration naismith, int fitnessMinutes)
    {
        if (!rows.TryGetValue(fitnessMinutes, out var row))
            throw new ArgumentOutOfRangeException(nameof(fitnessMinutes), fitnessMinutes, "Fitness is 15, 20, 25, 30, 40 or 50 min.");
        var hours = naismith.TotalHours;
        if (hours < naismithHours[0] || hours > naismithHours[row.Length - 1])
            return null;
        var right = Math.Max(1, Array.FindIndex(naismithHours, h => h >= hours));
        var share = (hours - naismithHours[right - 1]) / (naismithHours[right] - naismithHours[right - 1]);
        return Duration.FromHours(double.Lerp(row[right - 1], row[right], share));
    }
}
