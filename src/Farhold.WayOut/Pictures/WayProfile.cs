using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Pictures;

/// <summary>One stage of a way over ground, as the profile shows it.</summary>
/// <param name="FromKm">From the start of the way.</param>
/// <param name="Likely">When its end is reached in the middle of the trials.</param>
/// <param name="Late">When it is reached in nine of ten; null where fewer get there.</param>
public sealed record ProfileStage(string Label, double FromKm, double ToKm, double UpM, double DownM, Instant? Likely, Instant? Late);

/// <summary>The ground of a plan's stages one after another, with when each ends.</summary>
/// <remarks>
/// Of a choice the way with most ground is taken: that is where a profile helps. Heights within a stage are not kept, so each climbs
/// first and falls then; the picture says so.
/// </remarks>
public sealed record WayProfile(ImmutableArray<ProfileStage> Stages)
{
    public double Km => Stages[^1].ToKm;

    /// <returns>Null where no stage is measured by its ground.</returns>
    public static WayProfile? Of(Outlook outlook)
    {
        var stages = ImmutableArray.CreateBuilder<ProfileStage>();
        Walk(outlook, outlook.Plan.Legs, "", stages);
        return stages.Count == 0 ? null : new(stages.ToImmutable());
    }

    private static void Walk(Outlook outlook, ImmutableArray<Leg> legs, string path, ImmutableArray<ProfileStage>.Builder stages)
    {
        for (var i = 0; i < legs.Length; i++)
        {
            var here = FormattableString.Invariant($"{path}{i + 1}");
            if (legs[i] is Choice choice)
            {
                var w = Enumerable.Range(0, choice.Ways.Length).MaxBy(w => Ground(choice.Ways[w].Legs));
                Walk(outlook, choice.Ways[w].Legs, FormattableString.Invariant($"{here}.{w + 1}."), stages);
            }
            else if (
                legs[i] is Travel { Mode: TravelMode.Walk or TravelMode.Carry, Extent: Measured { Stretch: { DistanceKm: > 0 } ground } }
                && outlook.Legs.FirstOrDefault(l => l.Place.Path == here) is { } arrival
            )
            {
                var from = stages.Count == 0 ? 0 : stages[^1].ToKm;
                stages.Add(
                    new(
                        arrival.Place.Label,
                        from,
                        from + ground.DistanceKm,
                        ground.AscentM,
                        ground.DescentM,
                        At(arrival, 0.5),
                        At(arrival, 0.9)
                    )
                );
            }
        }
    }

    private static double Ground(ImmutableArray<Leg> legs) =>
        legs.SelectMany(Leg.Inside)
            .OfType<Travel>()
            .Where(leg => leg.Mode is TravelMode.Walk or TravelMode.Carry)
            .Sum(leg => (leg.Extent as Measured)?.Stretch?.DistanceKm ?? 0);

    private static Instant? At(LegArrival leg, double p) => leg.Quantiles.FirstOrDefault(q => q.P == p)?.At;
}
