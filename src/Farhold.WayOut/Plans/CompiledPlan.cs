using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A leg as results speak of it.</summary>
/// <param name="Path">Where it stands: "3" the third leg, "3.2.1" the first leg of its second way.</param>
/// <param name="Mode">Null for a choice between ways.</param>
public sealed record LegPlace(string Path, string Label, TravelMode? Mode);

/// <summary>Something a trial draws, and what it stands for.</summary>
/// <param name="Edges">For luck with few outcomes, the upper bounds between 0 and 1; null where every value differs.</param>
internal sealed record Draw(string Label, int Slot, int Place, ImmutableArray<double>? Edges);

/// <summary>A plan made ready for trials: every leg timed, every assumption listed.</summary>
public sealed class CompiledPlan
{
    private CompiledPlan(Plan plan, Darkness? darkness, DarkClock? dark, PlanCompiler compiler)
    {
        (Plan, Darkness, Dark) = (plan, darkness, dark);
        Steps = compiler.Steps(plan.Legs, "");
        (Places, Draws) = ([.. compiler.Places], [.. compiler.Draws]);
        Rests = [.. compiler.Rests.Distinct()];
    }

    public Plan Plan { get; }

    public Darkness? Darkness { get; }

    /// <summary>The legs in the order written, choices before what they hold.</summary>
    public ImmutableArray<LegPlace> Places { get; }

    /// <summary>What the times rest on, with the mark of each.</summary>
    public ImmutableArray<Basis> Rests { get; }

    internal ImmutableArray<Step> Steps { get; }

    internal ImmutableArray<Draw> Draws { get; }

    internal DarkClock? Dark { get; }

    /// <summary>Where the last leg stands among <see cref="Places"/>: its end is higher care.</summary>
    internal int Last => Places.Length - Leg.Inside(Plan.Legs[^1]).Count();

    /// <param name="darkness">Null where nobody knows it: then walking goes at its pace in the dark, the worse of the two.</param>
    /// <exception cref="ArgumentException">A track is unmeasured, or a leg waits for light and no darkness is given.</exception>
    public static CompiledPlan Of(Plan plan, Darkness? darkness)
    {
        if (plan.NeedsLight && darkness is null)
            throw new ArgumentException("A leg of this plan waits for light: give the darkness along the way.", nameof(darkness));
        if (plan.Legs.IsEmpty)
            throw new ArgumentException("A plan without legs has no end.", nameof(plan));
        var dark = darkness?.Against(plan.Start);
        return new(plan, darkness, dark, new PlanCompiler(plan, dark));
    }
}
