using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

public enum TaskScope
{
    Casualty,

    /// <summary>Each limb with a tight tourniquet.</summary>
    Limb,

    /// <summary>Each limb whose tourniquets have all been loosened.</summary>
    Loosened,
}

/// <summary>What a task is part of, for a person who reads the list.</summary>
public enum TaskGroup
{
    /// <summary>Looks that find a warning sign.</summary>
    Check,

    /// <summary>Comfort, food and drink, keeping skin and mouth whole.</summary>
    Nursing,

    /// <summary>What follows the release of a limb that was long without blood.</summary>
    Release,

    /// <summary>Treatment that takes advice or an order, prompted once.</summary>
    Treat,
}

/// <summary>A task's words where an adult's figures do not fit; <see cref="Figures"/> stand for figures. Null: as for all.</summary>
public sealed record ChildWords(string? Text, string? Reason)
{
    public string? Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;

    public string? Reason
    {
        get => RuleTexts.Shown(field);
        init;
    } = Reason;

    /// <summary>What stands for a figure.</summary>
    public static readonly ImmutableArray<string> Figures = ["{drink}", "{urine}", "{kidneys}"];
}

/// <summary>Something to be done again and again.</summary>
/// <param name="Every">In a stable casualty; null: only when unstable.</param>
/// <param name="Unstable">While shock is suspected or unknown, or an attempt or the first hours of a watch are on.</param>
/// <param name="Once">Instead of repeating: once, this long after the limb was first tightened, or after the injury.</param>
/// <param name="DoneBy">Kinds of entries that count as doing it, besides a <c>task.done</c>.</param>
public sealed record CareTask(
    string Id,
    TaskScope Scope,
    string Text,
    Duration? Every,
    Duration? Unstable,
    Duration? Once,
    ImmutableArray<Kind> DoneBy,
    ImmutableArray<string> Sources
)
{
    public string Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;

    /// <summary>Further times, in order, at which what is done once is asked for anew; each takes the place of the one before.</summary>
    public ImmutableArray<Duration> Again { get; init; } = [];

    /// <summary>Why, in a short sentence.</summary>
    public string? Reason
    {
        get => RuleTexts.Shown(field);
        init;
    }

    public TaskGroup Group { get; init; }

    /// <summary>Not asked for before this long after the record begins.</summary>
    public Duration From { get; init; }

    /// <summary>The longest its source lets it wait; no interval of the task goes beyond. Null: no source says.</summary>
    public Duration? AtMost { get; init; }

    /// <summary>The longest it may wait for a change of watch at night, in a stable casualty. Null: it does not wait.</summary>
    public Duration? Night { get; init; }

    /// <summary>How many pairs of hands it takes.</summary>
    public int People { get; init; } = 1;

    /// <summary>When it has to be done at all. Unknown: what to look at comes first. Null: always.</summary>
    public Condition? Condition { get; init; }

    /// <summary>
    /// When it must not be done any more, though it would have to be: then <see cref="Instead"/> is said, and only then. Null: where
    /// the condition is not met.
    /// </summary>
    public Condition? Unless { get; init; }

    /// <summary>
    /// Drugs that it is about: ids, groups or kinds of the formulary, or a word of a drug's name. One that was given does it; where the
    /// record speaks against all of them it is not asked for.
    /// </summary>
    public ImmutableArray<string> Drugs { get; init; } = [];

    /// <summary>Not while the casualty is unstable.</summary>
    public bool OnlyStable { get; init; }

    /// <summary>What to say where it must not be done; null where it is simply not needed.</summary>
    public string? Instead
    {
        get => RuleTexts.Shown(field);
        init;
    }

    /// <summary>What to do at once after every move, until it is done; null: a move does not make it due.</summary>
    public string? AfterMove
    {
        get => RuleTexts.Shown(field);
        init;
    }

    /// <summary>Values that, once looked at, count as doing it.</summary>
    public ImmutableArray<Input> Seen { get; init; } = [];

    /// <summary>The task that takes its place wherever that one has to be done.</summary>
    public string? ReplacedBy { get; init; }

    /// <summary>Other words for a child, whose figures go by mass; null: the same words for all.</summary>
    public ChildWords? Child { get; init; }

    /// <summary>Whether a due task or a <c>task.done</c> of this name is the task, on any limb.</summary>
    public static bool Is(string id, string name) =>
        name.StartsWith(id, StringComparison.Ordinal) && (name.Length == id.Length || name[id.Length] == '.');
}
