using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.WayOut.Plans;

/// <summary>Suggested times, from the table of priors.</summary>
public static class Priors
{
    public static ImmutableArray<Prior> All => PriorTable.Times;

    /// <summary>A stage's name in the language that is spoken, where a suggested time gave it; else as it was written.</summary>
    public static string Titled(string name) => Translation.Prior(name) ?? name;

    /// <summary>Getting the casualty onto the litter.</summary>
    public static Prior Packaging { get; } = All.Single(p => p.Id == "packaging");

    /// <summary>Getting the casualty onto the litter, as something that a forecast rests on.</summary>
    internal static Basis OntoLitter =>
        new(
            PaceTexts.OntoLitter(Minutes(Packaging.P10Minutes), Minutes(Packaging.P90Minutes), Minutes(Packaging.P50Minutes)),
            Packaging.Mark,
            Packaging.Source
        );

    internal static string Minutes(double minutes) => minutes.ToString("0", CultureInfo.InvariantCulture);

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
