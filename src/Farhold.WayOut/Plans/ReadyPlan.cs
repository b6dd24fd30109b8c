using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A plan with its tracks measured and its nights known: ready for trials.</summary>
public sealed record ReadyPlan(CompiledPlan Compiled, ImmutableArray<TrackFile> Tracks)
{
    /// <summary>What a person should know of its tracks, with file, line and column.</summary>
    public IEnumerable<Refusal> Oddities => Tracks.SelectMany(track => track.Oddities);

    /// <param name="read">A track the plan names, or why there is none.</param>
    public static Read<ReadyPlan> Of(Plan plan, Func<string, Read<TrackFile>> read) =>
        PlanTracks.Join(plan, read) switch
        {
            Read<MeasuredPlan>.Usable(var measured) => new Read<ReadyPlan>.Usable(
                new(CompiledPlan.Of(measured.Plan, Nightfall.Of(measured.Plan)), measured.Tracks)
            ),
            Read<MeasuredPlan>.Refused(var why) => new Read<ReadyPlan>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>The same plan with what is known of how it has gone; as it is where nothing is.</summary>
    public ReadyPlan Since(State state, Instant now) =>
        RecordSoFar.Of(state, Compiled.Plan, now, ground => Tracks.FirstOrDefault(t => t.Name == ground.Track)?.Track) is { } soFar
            ? this with
            {
                Compiled = CompiledPlan.Of(Compiled.Plan, Compiled.Darkness, soFar),
            }
            : this;

    /// <summary>The trials under way; a screen steps them, anything else runs them.</summary>
    public Simulation Start(Rng rng, SamplingLimits? limits = null, IEnumerable<Deadline>? deadlines = null) =>
        new(Compiled, rng, limits, deadlines?.Select(d => d.At));

    /// <summary>What the trials say, with what is doubtful of the tracks among the cautions.</summary>
    public Outlook Told(Simulation simulation, IEnumerable<Deadline> deadlines)
    {
        var outlook = Outlook.Of(simulation, deadlines);
        return outlook with { Cautions = [.. outlook.Cautions, .. Tracks.SelectMany(track => track.Cautions)] };
    }
}
