using System.Collections.Immutable;

namespace Farhold.WayOut.Reach;

internal static class ReachStretches
{
    public static ImmutableArray<ReachStretch> Of(IReadOnlyList<ReachPoint> points, ImmutableArray<LimitAfter> limits)
    {
        var found = ImmutableArray.CreateBuilder<ReachStretch>();
        foreach (var limit in limits)
        foreach (var measure in Enum.GetValues<ReachMeasure>())
            for (var i = 0; i < points.Count; i++)
            {
                if (!Over(points[i], measure, limit))
                    continue;
                var first = i;
                while (i + 1 < points.Count && Over(points[i + 1], measure, limit))
                    i++;
                found.Add(
                    new(measure, limit, points[Math.Max(first - 1, 0)].AlongM, points[Math.Min(i + 1, points.Count - 1)].AlongM, first, i)
                );
            }

        return found.ToImmutable();
    }

    /// <summary>What never comes is over every limit.</summary>
    public static bool Over(ReachPoint point, ReachMeasure measure, LimitAfter limit) =>
        !((measure == ReachMeasure.Median ? point.Median : point.P90) is { } time && time <= limit.After);
}
