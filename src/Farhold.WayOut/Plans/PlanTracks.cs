using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>A plan whose tracks have been measured, and those tracks.</summary>
public sealed record MeasuredPlan(Plan Plan, ImmutableArray<TrackFile> Tracks);

/// <summary>Measures the tracks that a plan names.</summary>
public static class PlanTracks
{
    /// <param name="read">A track the plan names, or why there is none.</param>
    /// <returns>The plan with every track measured, and <c>from</c> at the first track's first point where the plan has none.</returns>
    public static Read<MeasuredPlan> Join(Plan plan, Func<string, Read<TrackFile>> read)
    {
        var refusals = ImmutableArray.CreateBuilder<Refusal>();
        var tracks = new Dictionary<string, TrackFile>();
        foreach (var name in plan.Tracks)
            switch (read(name))
            {
                case Read<TrackFile>.Usable(var track):
                    tracks[name] = track;
                    if (OnFoot(plan, name))
                        refusals.AddRange(track.AgainstWalking());
                    break;
                case Read<TrackFile>.Refused(var why):
                    refusals.AddRange(why);
                    break;
            }

        if (refusals.Count > 0)
            return new Read<MeasuredPlan>.Refused(refusals.ToImmutable());
        var measured = plan.WithTracks(name => tracks[name].Stretch());
        if (plan.From is null && plan.Tracks.FirstOrDefault() is { } first)
            measured = measured with { From = new(tracks[first].Start.Latitude, tracks[first].Start.Longitude) };
        return new Read<MeasuredPlan>.Usable(new(measured, [.. plan.Tracks.Select(name => tracks[name])]));
    }

    private static bool OnFoot(Plan plan, string track) =>
        plan
            .All.OfType<Travel>()
            .Any(leg => leg.Mode is TravelMode.Walk or TravelMode.Carry && leg.Extent is Measured m && m.Track == track);
}
