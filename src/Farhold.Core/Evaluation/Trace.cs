using System.Collections.Immutable;

namespace Farhold.Evaluation;

/// <summary>A value that a criterion used, for showing.</summary>
/// <param name="Age">How long ago it was seen; null for what does not age.</param>
/// <param name="Stale">Too old to decide by.</param>
public sealed record Used(string Input, string Value, Elapsed? Age, bool Stale)
{
    /// <summary>It has to be looked at again: it can't be what it says, or says nothing of what is asked.</summary>
    public bool Doubtful { get; init; }

    /// <summary><c>heart rate 128 /min, 3 min old</c>; too old ones say so.</summary>
    public string Said
    {
        get
        {
            var age = Age is { } a ? EvaluationTexts.Old(Say.Elapsed(a)) : "";
            return $"{InputWords.Name(Input)} "
                + $"{InputWords.Value(Input, Value)}{age}{(Stale ? EvaluationTexts.TooOld : "")}{(Doubtful ? EvaluationTexts.LookAgain : "")}";
        }
    }
}

/// <summary>A condition as it was evaluated: its state and that of all its parts. Every explanation is rendered from this tree.</summary>
/// <param name="Needs">Where unknown: the input to look at.</param>
public sealed record Trace(Condition Condition, Truth State, ImmutableArray<Trace> Parts, ImmutableArray<Used> Used, Input? Needs)
{
    /// <summary>The leaves, left to right.</summary>
    public IEnumerable<Trace> Leaves => Parts.IsEmpty ? [this] : Parts.SelectMany(p => p.Leaves);

    /// <summary>Whether anything it rests on is too old to decide by.</summary>
    internal bool IsStale => Used.Any(static u => u.Stale) || Parts.Any(static p => p.IsStale);
}

/// <summary>A criterion with its evaluation.</summary>
public sealed record Finding(Criterion Criterion, Trace Trace)
{
    public Truth State => Trace.State;

    /// <summary>Whether it stands against an attempt, or (for <see cref="Role.Awaits"/>) makes one gain nothing.</summary>
    public Truth Against =>
        Lifted != Lift.None ? Truth.NotMet
        : Criterion.Role == Role.Requires ? State.Not()
        : State;

    /// <summary>
    /// How it weighs in the decision: what asks for something first leaves it open while it is met, and a soft sign counts only
    /// through the number of them, but has to be known.
    /// </summary>
    internal Truth Weighs =>
        (Criterion.Role, Against) switch
        {
            (Role.Asks, Truth.Met) => Truth.Unknown,
            (Role.Soft, Truth.Met) => Truth.NotMet,
            (_, var against) => against,
        };

    /// <summary>Why it does not stand against an attempt although it is met.</summary>
    public Lift Lifted { get; init; }

    public IEnumerable<Used> Used => Trace.Leaves.SelectMany(l => l.Used).Distinct();

    public Input? Needs => Trace.Leaves.FirstOrDefault(l => l.State == Truth.Unknown && State == Truth.Unknown)?.Needs;
}
