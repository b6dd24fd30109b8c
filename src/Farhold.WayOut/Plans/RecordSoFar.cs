using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>How a plan has gone, read from the record's <c>stage.noted</c> and <c>position.noted</c>.</summary>
public static class RecordSoFar
{
    /// <summary>A position further from the track than this tells nothing of it, metres (design).</summary>
    private const double FurthestOffM = 300;

    /// <param name="state">What holds in the record.</param>
    /// <param name="track">The track of a leg under way; null where it is not at hand.</param>
    /// <returns>Null where nobody has noted anything of this plan: then it is a plan that may never have begun.</returns>
    public static SoFar? Of(State state, Plan plan, Instant now, Func<Measured, Track?>? track = null)
    {
        var marks = state
            .Of(Kind.StageNoted)
            .Where(d => d.When.Latest <= now)
            .Select(d => (d.When, Stage: d.As<Payload.StageNoted>()))
            .Where(x => x.Stage.Plan is null || x.Stage.Plan == plan.Id)
            .OrderBy(x => x.When.Latest)
            .Select(x => new LegMark(x.Stage.Stage, x.Stage.Became, x.When.Latest))
            .ToImmutableArray();
        if (marks.IsEmpty)
            return null;
        var soFar = new SoFar(marks, now);
        return track is null ? soFar : Placed(soFar, state, plan, track);
    }

    /// <summary>Of the leg under way, how much of its track lies behind the last position noted since it was begun.</summary>
    private static SoFar Placed(SoFar soFar, State state, Plan plan, Func<Measured, Track?> track)
    {
        for (var i = 0; i < plan.Legs.Length; i++)
        {
            var path = FormattableString.Invariant($"{i + 1}");
            if (
                plan.Legs[i] is not Travel { Extent: Measured ground }
                || Begun(soFar, i) is not { } begun
                || soFar.Of(path, StageState.Done) is not null
                || track(ground) is not { } line
            )
                continue;
            var noted = state
                .Of(Kind.PositionNoted)
                .Where(d => d.When.Latest <= soFar.Now && d.When.Earliest > begun)
                .OrderBy(d => d.When.Latest)
                .LastOrDefault();
            if (noted is null)
                continue;
            var at = noted.As<Payload.PositionNoted>();
            var spot = TrackSpot.Nearest(line, new(at.Lat, at.Lon));
            var share = spot.AlongM / Math.Max(1, line.Metres());
            if (spot.OffM <= FurthestOffM && share is > 0 and < 1)
                return soFar with { Marks = soFar.Marks.Add(new(path, StageState.Begun, noted.When.Latest, share) { Since = begun }) };
        }

        return soFar;
    }

    /// <summary>When it was begun: where nobody said, when the one before was done.</summary>
    private static Instant? Begun(SoFar soFar, int leg) =>
        (
            soFar.Of(FormattableString.Invariant($"{leg + 1}"), StageState.Begun)
            ?? soFar.Of(FormattableString.Invariant($"{leg}"), StageState.Done)
        )?.At;
}
