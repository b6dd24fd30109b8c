using System.Collections.Immutable;
using System.Text;
using NodaTime;

namespace Farhold.App.WayOut;

/// <summary>
/// Files taken in as a way: a plan with the tracks it names, or a track alone. Tracks are measured at once; only their figures are kept.
/// </summary>
public sealed record IncomingWay(Plan? Plan, Measured? Ground, PlanPlace? From, string Name, ImmutableArray<string> Cautions)
{
    /// <summary>Of the first track.</summary>
    public TrackLine Line { get; init; } = TrackLine.None;

    /// <param name="files">By name; one plan at most.</param>
    /// <param name="tracks">Those of the files that are tracks, as read.</param>
    public static Read<IncomingWay> Read(
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files,
        IReadOnlyDictionary<string, Read<TrackFile>> tracks
    )
    {
        var plans = files.Keys.Where(name => !TrackTaking.IsTrack(name)).ToArray();
        return plans switch
        {
            [] => OfTrack(tracks),
            [var name] => PlanReader.Read(files[name], name) switch
            {
                Read<Plan>.Usable(var plan) => Joined(plan, name, tracks),
                Read<Plan>.Refused(var why) => new Read<IncomingWay>.Refused(why),
                _ => throw new System.Diagnostics.UnreachableException(),
            },
            _ => new Read<IncomingWay>.Refused([new(plans[1], 1, 1, "One plan at a time, with the tracks it names.")]),
        };
    }

    private static Read<IncomingWay> Joined(Plan plan, string name, IReadOnlyDictionary<string, Read<TrackFile>> tracks) =>
        PlanTracks.Join(
            plan,
            track =>
                tracks.TryGetValue(track, out var read)
                    ? read
                    : new Read<TrackFile>.Refused([
                        new(name, 1, 1, $"The plan names the track '{track}': choose that file together with the plan."),
                    ])
        ) switch
        {
            Read<MeasuredPlan>.Usable(var measured) => new Read<IncomingWay>.Usable(
                new(
                    measured.Plan.Mapped(leg =>
                        leg is Travel { Extent: Measured { Track: { } track } m } travel
                            ? travel with
                            {
                                Name = travel.Name ?? track,
                                Extent = m with { Track = null },
                            }
                            : leg
                    ),
                    null,
                    null,
                    name,
                    [.. measured.Tracks.SelectMany(t => t.Cautions)]
                )
                {
                    Line = measured.Tracks.IsEmpty ? TrackLine.None : TrackLine.Of(measured.Tracks[0]),
                }
            ),
            Read<MeasuredPlan>.Refused(var why) => new Read<IncomingWay>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static Read<IncomingWay> OfTrack(IReadOnlyDictionary<string, Read<TrackFile>> tracks)
    {
        if (tracks.Count != 1)
            return new Read<IncomingWay>.Refused([
                new(tracks.Keys.FirstOrDefault() ?? "files", 1, 1, "One track at a time, or a plan with the tracks it names."),
            ]);
        var (name, read) = tracks.Single();
        return read switch
        {
            Read<TrackFile>.Usable(var track) when track.AgainstWalking().ToImmutableArray() is { IsEmpty: false } why =>
                new Read<IncomingWay>.Refused(why),
            Read<TrackFile>.Usable(var track) => new Read<IncomingWay>.Usable(
                new(
                    null,
                    new(null, track.Stretch(), null, null, 0, null, null, null, false, 0, false),
                    new(track.Start.Latitude, track.Start.Longitude),
                    track.Track.Name ?? name,
                    [.. track.Cautions]
                )
                {
                    Line = TrackLine.Of(track),
                }
            ),
            Read<TrackFile>.Refused(var why) => new Read<IncomingWay>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
