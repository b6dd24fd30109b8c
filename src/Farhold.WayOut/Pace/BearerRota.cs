using System.Collections.Immutable;

namespace Farhold.WayOut.Pace;

/// <summary>One turn of a litter carry.</summary>
/// <param name="Carry">Numbers of the bearers who carry, from 1.</param>
/// <param name="Rest">Those who walk ahead or behind without a load.</param>
public sealed record BearerTurn(ImmutableArray<int> Carry, ImmutableArray<int> Rest);

/// <summary>Who carries when: three pairs at most; at every change the one that has carried longest gives way to a rested one.</summary>
/// <param name="Minutes">Between two changes, or between two rests where nobody is there to take over.</param>
/// <param name="Turns">One full round; then it begins anew. One turn: all carry, and the litter is set down instead.</param>
/// <remarks>
/// Six at a time, pairs that rotate in: Medicine for Mountaineering, part 108. No bearer carries longer at a stretch than the mean less one
/// standard deviation of the endurance read for the means (Knapik 2000, Rice 1996), at 4.8 km/h on the level; on a slope it is less.
/// By hand no figure was read for more than two, so theirs is kept (design, the safer side).
/// </remarks>
public sealed record BearerRota(int Minutes, ImmutableArray<BearerTurn> Turns, LitterEndurance By)
{
    private const int MostPairs = 3;

    /// <summary>An odd bearer belongs to no pair and takes the place of whoever tires.</summary>
    public int? Spare { get; private init; }

    /// <summary>The litter has to be set down at every change.</summary>
    public bool SetsDown => Turns.Length == 1;

    /// <exception cref="ArgumentOutOfRangeException">Fewer than two bearers.</exception>
    public static BearerRota Of(int bearers, bool straps)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bearers, LitterTeam.Fewest);
        var pairs = Enumerable.Range(0, bearers / 2).Select(p => (ImmutableArray<int>)[(2 * p) + 1, (2 * p) + 2]).ToArray();
        var at = Math.Min(MostPairs, pairs.Length);
        var by = Endurance(at, straps);
        var stretch = Math.Max(1, (int)Math.Floor(by.Minutes - by.Sd));
        ImmutableArray<BearerTurn> turns =
            at == pairs.Length
                ? [new([.. pairs.SelectMany(p => p)], [])]
                : [.. Enumerable.Range(0, pairs.Length).Select(first => Turn(pairs, first, at))];
        return new(turns.Length == 1 ? stretch : Math.Max(1, stretch / at), turns, by) { Spare = bearers % 2 == 1 ? bearers : null };
    }

    private static BearerTurn Turn(ImmutableArray<int>[] pairs, int first, int at)
    {
        var order = Enumerable.Range(0, pairs.Length).Select(p => pairs[(first + p) % pairs.Length]).ToArray();
        return new([.. order.Take(at).SelectMany(p => p)], [.. order.Skip(at).SelectMany(p => p)]);
    }

    /// <summary>Of those read for the means, the most people that are no more than carry at once; of several the shortest.</summary>
    private static LitterEndurance Endurance(int pairs, bool straps) =>
        LitterEndurance
            .All.Where(e => e.People <= 2 * pairs && e.ByHand != straps)
            .OrderByDescending(e => e.People)
            .ThenBy(e => e.Minutes - e.Sd)
            .First();
}
