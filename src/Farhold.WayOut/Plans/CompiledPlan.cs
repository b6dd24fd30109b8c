using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A leg as results speak of it.</summary>
/// <param name="Path">Where it stands: "3" the third leg, "3.2.1" the first leg of its second way.</param>
/// <param name="Mode">Null for a choice between ways.</param>
public sealed record LegPlace(string Path, string Label, TravelMode? Mode);

/// <summary>Something a trial draws, and what it stands for.</summary>
/// <param name="Edges">For luck with few outcomes, the upper bounds between 0 and 1; null where every value differs.</param>
internal sealed record Draw(string Label, int Slot, int Place, ImmutableArray<double>? Edges)
{
    /// <summary>Whether the outcome also hangs on the weather that all share.</summary>
    public bool Weather { get; init; }
}

/// <summary>A plan made ready for trials: every leg timed, every assumption listed.</summary>
public sealed class CompiledPlan
{
    private CompiledPlan(Plan plan, Darkness? darkness, DarkClock? dark, SoFar? soFar, PlanCompiler compiler)
    {
        (Plan, Darkness, Dark, SoFar) = (plan, darkness, dark, soFar);
        Steps = compiler.Steps(plan.Legs);
        (Places, Draws) = ([.. compiler.Places], [.. compiler.Draws]);
        Learned = compiler.Clues.IsEmpty ? null : Learned.Of(compiler.Clues);
        MayReject = compiler.MayReject;
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

    /// <summary>How the plan has gone until now; null for a plan nobody has begun.</summary>
    public SoFar? SoFar { get; }

    internal Learned? Learned { get; }

    /// <summary>Whether a trial may contradict what is known.</summary>
    internal bool MayReject { get; }

    /// <summary>Where the last leg stands among <see cref="Places"/>: its end is higher care.</summary>
    internal int Last => Places.Length - Leg.Inside(Plan.Legs[^1]).Count();

    /// <summary>Where whoever takes a leg comes from, among <see cref="Places"/>; −1 for the start.</summary>
    internal int Before(int place)
    {
        for (var path = Places[place].Path; ; )
        {
            var dot = path.LastIndexOf('.');
            var row = path[..(dot + 1)];
            var number = int.Parse(path.AsSpan(dot + 1), CultureInfo.InvariantCulture);
            if (number > 1)
                return Array.FindIndex([.. Places], p => p.Path == $"{row}{number - 1}");
            if (dot < 0)
                return -1;
            // The first of a way: from where its choice is come to, or from what was waited for.
            var way = row.TrimEnd('.');
            path = way[..way.LastIndexOf('.')];
            if (Onward(path, way) is { } help)
                return Array.FindIndex([.. Places], p => p.Path == help);
        }
    }

    /// <summary>The end of what is waited for, where a way goes on from it.</summary>
    private string? Onward(string choice, string way) =>
        way.EndsWith(".2", StringComparison.Ordinal)
        && Plan.All.ElementAt(Array.FindIndex([.. Places], p => p.Path == choice)) is Choice { IsElse: true } waiting
            ? FormattableString.Invariant($"{choice}.1.{waiting.Ways[0].Legs.Length}")
            : null;

    /// <param name="darkness">Null where nobody knows it: then walking goes at its pace in the dark, the worse of the two.</param>
    /// <exception cref="ArgumentException">A track is unmeasured, or a leg waits for light and no darkness is given.</exception>
    public static CompiledPlan Of(Plan plan, Darkness? darkness, SoFar? soFar = null)
    {
        if (plan.NeedsLight && darkness is null)
            throw new ArgumentException("A stage of this plan waits for light: give the darkness along the way.", nameof(darkness));
        if (plan.Legs.IsEmpty)
            throw new ArgumentException("A plan without stages has no end.", nameof(plan));
        var dark = darkness?.Against(plan.Start);
        return new(plan, darkness, dark, soFar, new PlanCompiler(plan, dark, soFar));
    }
}
