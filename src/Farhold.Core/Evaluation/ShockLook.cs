using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>What the readings taken within a few minutes before one entry of signs come to.</summary>
/// <param name="When">Of the entry with which the look ends.</param>
/// <param name="Complete">Every sign that has to be known was taken within those minutes for certain.</param>
/// <param name="Strong">Ids of the strong signs that are, or may be, there.</param>
/// <param name="Soft">Ids of the soft signs likewise.</param>
/// <param name="Open">Some sign can't be judged, such as a rate without an age.</param>
/// <param name="Known">How many of the signs that have to be known are.</param>
/// <param name="HeartRate">The highest of the look, beats a minute; null where none was counted.</param>
/// <param name="Systolic">The lowest of the look, mmHg.</param>
internal sealed record ShockLook(
    Happened When,
    bool Complete,
    ImmutableArray<string> Strong,
    ImmutableArray<string> Soft,
    bool Open,
    int Known,
    double? HeartRate,
    double? Systolic
)
{
    public bool ShowsNothing => Strong.IsEmpty && Soft.IsEmpty;

    /// <summary>Complete and without any sign of shock, those set aside not counted.</summary>
    public bool IsClear(ImmutableArray<string> setAside) => Complete && !Open && ShowsNoMoreThan(setAside);

    public bool ShowsNoMoreThan(ImmutableArray<string> setAside) => Strong.IsEmpty && Soft.All(setAside.Contains);

    /// <summary>The least time from an earlier look to this one.</summary>
    public Duration Since(ShockLook earlier) => When.Earliest - earlier.When.Latest;
}
