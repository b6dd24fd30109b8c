using System.Collections.Immutable;

namespace Farhold.Physiology.Reference;

/// <summary>A casualty and what happens to it, by the second.</summary>
/// <param name="Changes">In order of time, on the grid of steps.</param>
/// <param name="End">In seconds; the circulation may stop before.</param>
internal sealed record Course(string Id, Person Person, Conditions Start, ImmutableArray<Change> Changes, double End)
{
    /// <summary>The simulation from the start to the end; <paramref name="seen"/> is called at the start and after each piece.</summary>
    /// <param name="every">Length of a piece in seconds, a multiple of the step; a change makes a shorter one.</param>
    public CasualtySimulation Run(ModelConstants model, double every, Action<CasualtySimulation> seen, double step = 0.5)
    {
        CasualtySimulation? last = null;
        foreach (var now in Pieces(model, every, step))
            seen(last = now);
        return last!;
    }

    /// <summary>One simulation, at the start and after each piece; the last one is at the end.</summary>
    /// <param name="every">As for <see cref="Run"/>.</param>
    public IEnumerable<CasualtySimulation> Pieces(ModelConstants model, double every, double step = 0.5)
    {
        var simulation = new CasualtySimulation(model, Person, step: step) { Conditions = Start };
        var next = 0;
        while (true)
        {
            yield return simulation;
            for (; next < Changes.Length && Changes[next].At <= simulation.Time; next++)
                simulation.Conditions = Changes[next].To(simulation.Conditions);
            if (simulation.IsArrested || simulation.Time >= End)
                yield break;
            var until = Math.Min((Math.Floor(simulation.Time / every) + 1) * every, End);
            if (next < Changes.Length)
                until = Math.Min(until, Changes[next].At);
            simulation.Advance((int)Math.Round((until - simulation.Time) / step));
        }
    }
}

internal sealed record Change(double At, Func<Conditions, Conditions> To);
