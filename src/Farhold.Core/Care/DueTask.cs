using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>Something due. <paramref name="Task"/> is what a <c>task.done</c> names.</summary>
public sealed record DueTask(Instant At, string Task, Limb? Limb, string Text, ImmutableArray<string> Sources, bool Overdue)
{
    /// <summary>Has to be done before anything else, such as tightening a bleeding limb.</summary>
    public bool AtOnce { get; init; }

    /// <summary>How long it goes on; null for what is done once it is done.</summary>
    public Instant? Until { get; init; }

    /// <summary>Why, in a short sentence; null where the text says it.</summary>
    public string? Reason { get; init; }

    public TaskGroup Group { get; init; }

    /// <summary>How many pairs of hands it takes.</summary>
    public int People { get; init; } = 1;

    /// <summary>What tells whether it has to be done; empty where that is known.</summary>
    public ImmutableArray<Input> LookFirst { get; init; } = [];

    /// <summary>How often now; null for what does not repeat.</summary>
    public Duration? Every { get; init; }

    /// <summary>Done only by logging what was seen; a tick would not count.</summary>
    public bool BySeeing { get; init; }

    /// <summary>A doubt about the record: it holds every attempt back, and comes right after what leads.</summary>
    public bool IsDoubt { get; init; }

    /// <summary>What the decision asks for next: comes before every other task but what has to be done at once.</summary>
    public bool Leads { get; init; }

    /// <summary>Ordered: the list of drugs says the doses.</summary>
    public bool ByDrugList { get; init; }

    /// <summary>Repeats, and was never done yet: it is asked for, and nobody is late with it.</summary>
    public bool First { get; init; }

    /// <summary>Moved to a change of watch so that people sleep.</summary>
    public bool Waits { get; init; }

    /// <summary>The task's sentence, with the time until which it goes on; a doubt's has words of the record in it.</summary>
    /// <param name="zone">For that time; null: UTC.</param>
    public string Said(DateTimeZone? zone = null) => Plain.Line(Until is { } until ? CareTexts.Until(Text, Say.Time(until, zone)) : Text);
}
