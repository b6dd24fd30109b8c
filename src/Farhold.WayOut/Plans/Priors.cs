using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>Suggested times, from the table of priors.</summary>
public static class Priors
{
    public static ImmutableArray<Prior> All => PriorTable.Times;

    /// <summary>Getting the casualty onto the litter.</summary>
    public static Prior Packaging { get; } = All.Single(p => p.Id == "packaging");

    /// <summary>The prior that a leg was taken from, unchanged; null where its times are somebody's own.</summary>
    public static Prior? Behind(Travel leg) =>
        leg.Extent is Percentiles { P50: { } middle } tenths
            ? All.FirstOrDefault(p =>
                p.What == leg.Name
                && p.P10Minutes == tenths.P10.TotalMinutes
                && p.P50Minutes == middle.TotalMinutes
                && p.P90Minutes == tenths.P90.TotalMinutes
            )
            : null;
}
