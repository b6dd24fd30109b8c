using NodaTime;

namespace Farhold.Reserves;

/// <summary>How full a battery was; <paramref name="Level"/> from 0 to 1.</summary>
public readonly record struct BatteryLevel(Instant At, double Level);

/// <summary>How long a battery lasts at the use since it was last charged.</summary>
/// <remarks>
/// Browsers tell the level in hundredths, so a drop of so many may be one more or one less: hence a range. A cold battery may
/// stop at any level (common practice); no figure says when.
/// </remarks>
public static class BatteryDrain
{
    /// <summary>Levels closer together than this tell no use (design).</summary>
    public static Duration Shortest { get; } = Duration.FromMinutes(20);

    private const double Step = 0.01;

    /// <param name="levels">In order of time; those before the last rise are left out.</param>
    /// <returns>Hours left, from the least to the most; the most is infinite while no drop is seen. Null: not told yet.</returns>
    public static Between? HoursLeft(IReadOnlyList<BatteryLevel> levels)
    {
        var from = levels.Count - 1;
        while (from > 0 && levels[from - 1].Level >= levels[from].Level && levels[from - 1].At <= levels[from].At)
            from--;
        if (from < 0 || levels[^1].At - levels[from].At < Shortest)
            return null;
        var hours = (levels[^1].At - levels[from].At).TotalHours;
        var drop = levels[from].Level - levels[^1].Level;
        var (slow, fast) = (Math.Max(0, drop - Step) / hours, (drop + Step) / hours);
        var left = levels[^1].Level;
        return new(Math.Max(0, left - Step) / fast, slow > 0 ? left / slow : double.PositiveInfinity);
    }
}
